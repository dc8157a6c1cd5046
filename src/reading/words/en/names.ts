import type { LanguageWords } from '../language-words.ts';

export const names: LanguageWords['names'] = {
  truck: 'truck trucks semi trailer unit rig',
  numbered: 'load trip run field piler ticket',
  truckInShort: 't',
  the: '',
  number: 'number num',
  inLine: 'in (?:the )?line',
  self: 'im i am',
  countingMyself: 'counting including',
  and: 'and',
  misheard: { to: '2', too: '2', tree: '3', for: '4', won: '1', ate: '8' },
  afterMisheard: 'is has loaded loading in leaving left empty dumped parked broke down back full',
  notMoreTrucks: 'ahead|trucks',
  field: 'field',
  station: 'station piler scale',
  compass: 'north south east west',
  beforeFieldNumber: 'the',
  counted: 'ahead ahd trk truck trucks rig rigs semi semis in infront front deep waiting before min minutes',
};
