import type { LanguageWords } from '../language-words.ts';

export const teaching: LanguageWords['teaching'] = {
  teach: 'teach|learn',
  means: 'means|is',
  forget: 'forget|unlearn',
};
