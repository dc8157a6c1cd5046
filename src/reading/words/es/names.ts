import type { LanguageWords } from '../language-words.ts';

export const names: LanguageWords['names'] = {
  truck: 'troca trocas troka camion camiones unidad camioneta',
  numbered: 'viaje vuelta carga pilera piladora piler boleto en',
  truckInShort: 't',
  the: 'la el del al',
  number: 'numero num',
  inLine: 'en (?:la )?(?:fila|linea|cola)',
  self: 'soy',
  countingMyself: 'contandome contando conmigo',
  and: 'y',
  misheard: {},
  afterMisheard: '',
  notMoreTrucks: 'adelante|trocas',
  field: 'campo fil lote',
  station: 'estacion bascula',
  compass: 'norte sur este oeste',
  beforeFieldNumber: 'la el al del las',
  counted:
    'troca trocas troques trailas muebles camiones camion en enfrente adelante delante antes esperando',
};
