import { LANGUAGES } from '../core/roster.ts';
import { emergencyWords } from './emergency.ts';
import { listed } from './every-language.ts';
import { haulSigns, troubleSigns } from './haul-signs.ts';
import { functionWords } from './little-words.ts';
import { numberWords } from './numbers.ts';
import { orderSigns, ticketSigns } from './order-signs.ts';
import { phrases, phrasesFor, wordsOf } from './phrases.ts';
import type { Phrase } from './phrases.ts';
import { questionSigns } from './question-signs.ts';
import { stationSigns } from './station-signs.ts';
import { words } from './words/index.ts';

/** "Spanish", "in Spanish": a language by its name. */
const languagePhrases: readonly Phrase[] = LANGUAGES.flatMap((language) => {
  const names = words[language].calledBy.replaceAll(' ', '|');
  return phrases({ topic: 'language', language }, `${names}\n{speak} ${names}`);
});

/** All that can be said; where two phrases take as many words, the earlier one counts. */
export const allPhrases: readonly Phrase[] = [
  ...phrasesFor(questionSigns, ({ questions }) => questions),
  ...phrasesFor(stationSigns, ({ station }) => station),
  ...phrasesFor(orderSigns, ({ orders }) => orders),
  ...languagePhrases,
  ...phrasesFor(haulSigns, ({ haul }) => haul),
  ...phrasesFor(troubleSigns, ({ trouble }) => trouble),
  ...phrasesFor(ticketSigns, ({ tickets }) => tickets),
];

/** Every word that means something here, apart from the names of an operation. */
export const vocabulary: readonly string[] = [
  ...new Set([
    ...wordsOf(allPhrases),
    ...functionWords,
    ...numberWords,
    ...emergencyWords,
    ...listed(
      ({ calledBy }) => calledBy,
      ({ causes }) => Object.values(causes).join(' '),
      ({ clock }) => clock.known,
      ({ lists }) => lists.known,
      ({ passOn }) => passOn.known,
      ({ rooms }) => rooms.known,
      ({ tickets }) => tickets.known,
    ),
  ]),
];
