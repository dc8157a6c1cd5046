import type { LanguageWords } from '../language-words.ts';

export const names: LanguageWords['names'] = {
  truck: 'truck trucks semi trailer unit rig',
  truckInShort: 't',
  the: '',
  number: 'number num',
  inLine: 'in (?:the )?line',
  self: '',
  and: 'and',
  misheard: { to: '2', too: '2', tree: '3', for: '4', won: '1', ate: '8' },
  afterMisheard: 'is has loaded loading in leaving left empty dumped parked broke down back full',
  notMoreTrucks: 'ahead|trucks',
  field: 'field',
  station: 'station piler scale',
  compass: 'north south east west',
  counted: 'ahead truck trucks in deep waiting min minutes',
};
