import type { LanguageWords } from '../language-words.ts';

export const numbers: LanguageWords['numbers'] = {
  zero: 'zero',
  from1: 'one two three four five six seven eight nine/niner',
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
  // "No one" is nobody, and "the last one" counts nothing.
  misheard: {
    ate: 'eight',
    for: 'four',
    fore: 'four',
    to: 'two',
    too: 'two',
    free: 'three',
    tree: 'three',
    won: 'one',
    sex: 'six',
    sicks: 'six',
    nein: 'nine',
  },
  unlessAfter: {
    one: 'no this that the last next other another good bad big heavy light new old red blue green white which every each',
  },
  onlyAfter: {},
};
