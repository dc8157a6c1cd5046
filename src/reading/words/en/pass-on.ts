import type { LanguageWords } from '../language-words.ts';

export const passOn: LanguageWords['passOn'] = {
  tell: 'tell|message',
  tellAll: '',
  everybody:
    'all (?:of )?(?:the |my )?(?:drivers|guys|boys|crew)|all of them|everybody|everyone|all|(?:the )?(?:whole )?crew|the (?:guys|boys)|them|em',
  to: '',
  that: 'that',
  known: 'tell message everybody everyone crew',
};
