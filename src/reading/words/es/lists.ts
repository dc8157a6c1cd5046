import type { LanguageWords } from '../language-words.ts';

export const lists: LanguageWords['lists'] = {
  add: 'agrega agregar anade anadir nuevo nueva',
  remove: 'quita quitar borra borrar elimina',
  article: 'un una al el la',
  sorts: {
    truck: 'troca camion',
    field: 'campo lote fil',
    station: 'estacion',
    driver: 'chofer conductor manejador',
    foreman: 'capataz mayordomo',
    grower: 'productor dueno',
    'digger-operator': 'sacadora cosechadora',
    'topper-operator': 'deshojadora topeadora',
    person: 'persona trabajador',
  },
  operator: 'operador',
  afterName: 'troca camion limite tara habla',
  keys: {
    limit: 'limite',
    tare: 'tara',
    line: 'fila',
    air: 'aire calor',
    acres: 'acre acres',
    hectares: 'hectareas',
    celsius: 'centigrados',
  },
  weight: 'peso',
  filler: 'bruto minutos grados y habla chofer',
  known: `agrega agregar anade nuevo nueva quita quitar borra elimina chofer conductor capataz mayordomo operador persona
    troca camion campo lote estacion limite hectareas fila aire tara minutos`,
};
