import { slotWords } from './elements.ts';
import { emergencyWords } from './emergency.ts';
import { haulPhrases } from './haul-words.ts';
import { listWords } from './list-words.ts';
import { numberWords } from './numbers.ts';
import { orderPhrases, ticketPhrases } from './order-words.ts';
import { wordsOf } from './phrases.ts';
import type { Phrase } from './phrases.ts';
import { questionPhrases } from './question-words.ts';
import { roomWords } from './room-words.ts';
import { stationPhrases } from './station-words.ts';
import { troublePhrases } from './trouble-words.ts';
import { ticketWords } from './ticket-serial.ts';
import { weightWords } from './weights.ts';
import { functionWords } from './words.ts';

/** All that can be said; where two phrases take as many words, the earlier one counts. */
export const allPhrases: readonly Phrase[] = [
  ...questionPhrases,
  ...stationPhrases,
  ...orderPhrases,
  ...haulPhrases,
  ...troublePhrases,
  ...ticketPhrases,
];

/** Every word that means something here, apart from the names of an operation. */
export const vocabulary: readonly string[] = [
  ...new Set([
    ...wordsOf(allPhrases),
    ...functionWords,
    ...numberWords,
    ...weightWords,
    ...ticketWords,
    ...slotWords,
    ...listWords,
    ...roomWords,
    ...emergencyWords,
  ]),
];
