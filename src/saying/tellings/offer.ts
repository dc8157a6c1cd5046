import type { Fact } from '../../core/book/facts.ts';
import type { Question } from '../../core/intent.ts';
import { OFFER_HOLDS_MIN } from '../../core/accept/assumptions.ts';
import type { OfferedReading } from '../../core/telling.ts';
import { entriesData, factLines } from '../parts/facts.ts';
import { never } from '../telling-kind.ts';
import type { Data, Iso, TellingKind } from '../telling-kind.ts';
import { fieldName, phrase, time, truckName } from '../voice.ts';
import type { Voice } from '../voice.ts';

const askLine = (question: Question, voice: Voice): string => {
  switch (question.about) {
    case 'truck':
      return phrase(voice, 'offer.asks.truck', { truck: truckName(voice, question.truck ?? '') });
    case 'left':
    case 'tons':
    case 'loads':
      return question.field === null
        ? phrase(voice, `offer.asks.${question.about}`)
        : phrase(voice, `offer.asks.${question.about}-of`, { field: fieldName(voice, question.field) });
    case 'line':
    case 'fleet':
    case 'board':
    case 'where-to':
    case 'may-dig':
    case 'unseen-notice':
    case 'outlook':
    case 'tickets':
    case 'lists':
    case 'ticket-form':
    case 'help':
      return phrase(voice, `offer.asks.${question.about}`);
  }
};

/** What receipts have no line for, because its answer is one of its own. */
const ownLine = (fact: Fact, changed: readonly Fact[], voice: Voice): string[] => {
  const what = factLines(changed, voice).join(' ');
  switch (fact.kind) {
    case 'entry-withdrawn':
      return [phrase(voice, 'offer.takes-back', { what })];
    case 'entry-corrected':
      return [phrase(voice, 'offer.corrects', { what })];
    case 'notice-raised': {
      const at = time(voice, fact.step.stopAtMs ?? fact.atMs);
      return [phrase(voice, fact.step.stage === 'all-clear' ? 'offer.resumes' : 'offer.stops', { time: at })];
    }
    case 'notice-seen':
      return [phrase(voice, 'offer.seen')];
    case 'emergency-called':
      return [phrase(voice, 'offer.emergency')];
    case 'acres-told':
    case 'air-observed':
    case 'crown-checked':
    case 'field-dug':
    case 'forecast-issued':
    case 'forecast-warned':
    case 'language-chosen':
    case 'line-seen':
    case 'line-warned':
    case 'list-changed':
    case 'loads-turned-away':
    case 'machine-reported':
    case 'pilers-seen':
    case 'reading-chosen':
    case 'reading-offered':
    case 'root-measured':
    case 'shift-told':
    case 'station-reported':
    case 'stranger-heard':
    case 'ticket-booked':
    case 'truck-reported':
    case 'truck-taken':
    case 'words-passed':
    case 'word-taught':
      return factLines([fact], voice);
  }
};

/** Enough to know one's own message by. */
const QUOTED_LETTERS = 60;

const shortened = (said: string): string =>
  said.length <= QUOTED_LETTERS ? said : `${said.slice(0, QUOTED_LETTERS).trimEnd()} …`;

const readingText = ({ facts, changed, asks }: OfferedReading, voice: Voice): string =>
  [
    ...facts.flatMap((fact) => ownLine(fact, changed, voice)),
    ...asks.map((question) => askLine(question, voice)),
  ].join(' ');

const readingData = ({ facts, asks }: OfferedReading, iso: Iso): Data => ({
  entries: entriesData(facts, iso),
  asks: asks.map(({ about }) => about),
});

/** Which reading was meant: the sender taps, or answers with its number; "yes" is the first. */
export const offer: TellingKind<'offer'> = {
  text: ({ said, readings, danger }, voice) => {
    const lines = readings.map((reading, at) => {
      const what = readingText(reading, voice);
      return readings.length === 1 ? what : phrase(voice, 'offer.reading', { number: at + 1, what });
    });
    const question = phrase(voice, readings.length === 1 ? 'offer.is-it' : 'offer.which');
    const quoted = phrase(voice, 'offer.you-wrote', { said: shortened(said) });
    return [quoted, ...(danger ? [phrase(voice, 'offer.danger')] : []), question, ...lines].join('\n');
  },
  data: ({ number, said, readings, danger }, iso) => ({
    number,
    said,
    danger,
    readings: readings.map((reading) => readingData(reading, iso)),
  }),
  buttons: ({ number, readings }, voice) => [
    ...readings.map((_, at) => ({
      label:
        readings.length === 1
          ? phrase(voice, 'button.offer-yes')
          : phrase(voice, 'button.offer-reading', { number: at + 1 }),
      words: phrase(voice, 'words.choose', { number: `${number}.${at + 1}` }),
    })),
    {
      label: phrase(voice, 'button.offer-none'),
      words: phrase(voice, 'words.choose', { number: `${number}.0` }),
    },
  ],
  rings: ({ danger }) => danger,
  restsOnForecast: never,
  holdsMin: OFFER_HOLDS_MIN,
};
