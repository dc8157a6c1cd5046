import type { LanguageWords } from '../language-words.ts';

export const teaching: LanguageWords['teaching'] = {
  teach: 'aprende|aprenda|ensena|ensene',
  means: 'quiere decir|significa|es',
  forget: 'olvida|olvide',
};
