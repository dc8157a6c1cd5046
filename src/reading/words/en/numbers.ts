import type { LanguageWords } from '../language-words.ts';

export const numbers: LanguageWords['numbers'] = {
  zero: 'zero',
  from1: 'one two three four five six seven eight nine',
  from10: 'ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen',
  from21: '',
  tens: 'twenty thirty forty/fourty fifty sixty seventy eighty ninety',
  afterTens: '',
  hundreds: '',
  hundred: 'hundred',
  afterHundreds: 'and',
  thousand: 'thousand',
  loneThousand: '',
  counts: { 'half a dozen': 6, 'a half dozen': 6, 'a dozen': 12, 'a couple of': 2, 'a couple': 2 },
  ordinals: 'first second third fourth',
  ordinalEnds: 'st|nd|rd|th',
  // "No one" is nobody.
  unlessAfter: { one: 'no' },
  onlyAfter: {},
};
