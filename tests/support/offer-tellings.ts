/** What a message may mean, as it is asked. */
import type { Question } from '../../src/core/intent.ts';
import type { Telling } from '../../src/core/telling.ts';
import { at } from './given.ts';
import { receiptFacts } from './receipts.ts';
import { sampleRoster } from './roster.ts';

const [field] = sampleRoster.fields;
const [truck] = sampleRoster.trucks;
if (!field || !truck) throw new Error('the sample has one of each');

const offeredQuestions: readonly Question[] = [
  { about: 'line', station: null, leaveInMin: null },
  ...(['tons', 'loads'] as const).flatMap((about) =>
    [null, field.id].map((of): Question => ({ about, field: of, truck: null, span: 'today' })),
  ),
  { about: 'left', field: null },
  { about: 'left', field: field.id },
  { about: 'truck', truck: truck.id },
  { about: 'outlook', station: null, of: null },
  { about: 'tickets', truck: null },
  { about: 'lists', list: 'people' },
  ...(['fleet', 'board', 'may-dig', 'unseen-notice', 'ticket-form', 'help'] as const).map(
    (about): Question => ({ about }),
  ),
];

type OfferTellings = {
  [T in 'offer' | 'danger-unclear' | 'nothing-taken']: readonly Extract<Telling, { tell: T }>[];
};

export const offerTellings: OfferTellings = {
  offer: [
    {
      tell: 'offer',
      number: 1,
      said: 'got my first one on, she is heaped',
      readings: [{ facts: receiptFacts.slice(0, 1), changed: [], asks: [] }],
      danger: false,
    },
    {
      tell: 'offer',
      number: 2,
      said: 'a message of more letters than are quoted, so that one sees where it is cut',
      readings: [
        { facts: receiptFacts.slice(1, 2), changed: [], asks: [] },
        ...offeredQuestions.map((asked) => ({ facts: [], changed: [], asks: [asked] })),
      ],
      danger: true,
    },
  ],
  'danger-unclear': [
    { tell: 'danger-unclear', name: 'Ben', words: 'come quick to the pit', truck: '2', atMs: at('10:40') },
  ],
  'nothing-taken': [{ tell: 'nothing-taken' }],
};
