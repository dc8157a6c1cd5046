import type { LanguageWords } from '../language-words.ts';

export const tickets: LanguageWords['tickets'] = {
  weighed: `weighed|weighs|weight`,
  ticket: 'ticket|tkt|serial',
  button: 'ticket',
  number: 'number|num|no|serial',
  numberInShort: 'no',
  units: {
    tonnes: 'metric (?:tons?|tonnes?|t)|tons? metric|tonnes?|metric',
    'short tons': 'short tons?',
    tons: 'tons?|tns?',
    lb: 'lbs?|pounds?',
    kg: 'kgs?|kilos?|kilograms?',
  },
  roles: { gross: 'gross|1 weight', tare: 'tare|2 weight', net: 'net' },
  labels: {
    gross: 'gross|full|loaded|heavy|heavies|in|inbound|first',
    tare: 'tare|tear|empty|light|lite|out|outbound|second',
    net: 'net|nett|beets',
    serial: 'ticket|tickets|tkt|tckt|tix|slip|receipt|stub|serial|paper|number|num|no|#',
  },
  spokenZero: 'oh|o',
  thousandWord: 'thousand|thou',
  point: 'point',
  andQuarter: 'and a quarter|and 1 quarter',
  andThreeQuarters: 'and (?:a )?(?:3|three) quarters?',
  hundreds: '',
  thousands: 'k|thousand|thou|even|flat',
  afterRole: 'weight',
  between: 'of is was',
  known: `metric tons ton tonne tonnes short lb lbs pound pounds kg kgs kilo kilos kilograms gross weight tare net
    ticket tkt serial number`,
};
