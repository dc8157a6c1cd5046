import type { LanguageWords } from '../language-words.ts';

export const lists: LanguageWords['lists'] = {
  add: 'add new',
  remove: 'remove delete',
  article: 'a an the',
  sorts: {
    truck: 'truck',
    field: 'field',
    station: 'station',
    driver: 'driver',
    foreman: 'foreman',
    grower: 'grower owner',
    'digger-operator': 'digger lifter',
    'topper-operator': 'topper defoliator',
    person: 'person hand worker',
  },
  operator: 'operator',
  afterName: 'truck limit tare to at speaks',
  keys: {
    limit: 'limit',
    tare: 'tare',
    line: 'line wait',
    air: 'air heat',
    acres: 'acre acres ac',
    hectares: 'hectare hectares ha',
    celsius: 'celsius',
  },
  weight: 'weight',
  filler: `set change gross lb lbs pounds min mins minutes fahrenheit degrees and speaks hauls driver loads go to between
    max`,
  known: `add new remove delete driver foreman grower digger topper operator person truck field station limit acres acre
    hectares air line tare minutes`,
};
