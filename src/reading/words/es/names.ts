import type { LanguageWords } from '../language-words.ts';

export const names: LanguageWords['names'] = {
  truck: 'troca trocas troka camion camiones unidad camioneta',
  truckInShort: 't',
  the: 'la el',
  number: 'numero num',
  inLine: 'en (?:la )?(?:fila|linea|cola)',
  self: 'soy',
  and: 'y',
  misheard: {},
  afterMisheard: '',
  notMoreTrucks: 'adelante|trocas',
  field: 'campo fil lote',
  station: 'estacion bascula',
  compass: 'norte sur este oeste',
  counted: 'troca trocas camiones en adelante delante esperando',
};
