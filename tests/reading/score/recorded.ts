/** What the bot recorded, answered and offers, as the intents that it comes to. */
import { z } from 'zod';
import type { Fact } from '../../../src/core/book/facts.ts';
import type { Intent, Question } from '../../../src/core/intent.ts';
import type { BotReply, Played } from './play.ts';

/** The intent that `accept` makes such a fact of. What it has filled in cannot be told from what was stated. */
const intentOfFact = (fact: Fact): Intent | null => {
  const atMs = fact.timeStated ? fact.atMs : null;
  switch (fact.kind) {
    case 'truck-reported': {
      const { truck, step, field, station, grossLb, words, untilMs = null } = fact;
      return grossLb === null
        ? { do: 'report', step, truck, field, station, atMs, ahead: null, words, untilMs }
        : {
            ...{ do: 'book-ticket', serial: null, truck, field, station, atMs },
            ...{ firstWeighedMs: null, grossLb, tareLb: null, netLb: null },
          };
    }
    case 'ticket-booked':
      return { do: 'book-ticket', ...fact.ticket, atMs };
    case 'line-seen':
      return { do: 'see-line', station: fact.station, ahead: fact.ahead, atMs };
    case 'pilers-seen':
      return { do: 'see-pilers', station: fact.station, open: fact.open, down: fact.down, atMs };
    case 'station-reported': {
      const { station, open, untilMs } = fact;
      return { do: 'report-station', station, open, untilMs, atMs };
    }
    case 'loads-turned-away':
      return {
        do: 'report-turned-away',
        station: fact.station,
        truck: fact.truck,
        words: fact.words,
        atMs,
      };
    case 'root-measured': {
      const { field, station, temperatureF } = fact;
      return { do: 'measure-root', field, station, temperatureF, atMs };
    }
    case 'crown-checked':
      return { do: 'check-crown', field: fact.field, sound: fact.sound, atMs };
    case 'field-dug':
      return { do: 'dig-field', field: fact.field, atMs };
    case 'acres-told': {
      const { machine, field, acres } = fact;
      return { do: 'report-acres', machine, field, acres, atMs };
    }
    case 'machine-reported': {
      const { machine, runs, untilMs, words } = fact;
      return { do: 'report-machine', machine, runs, atMs, untilMs, words };
    }
    case 'truck-taken':
      return { do: 'take-truck', person: fact.person, truck: fact.truck };
    case 'entry-withdrawn':
      return { do: 'withdraw', target: fact.target };
    case 'entry-corrected':
      return { do: 'correct', target: fact.target, set: fact.set };
    case 'notice-raised': {
      const { step, sentMs } = fact;
      if (step.source === 'drill') return { do: 'drill', ends: step.stage === 'all-clear' };
      const laterMs = (ms: number | null): number | null => (ms === sentMs ? null : ms);
      return step.stage === 'all-clear'
        ? { do: 'order-resume', atMs: laterMs(step.resumeAtMs), words: step.words }
        : {
            ...{ do: 'order-stop', hold: step.notice, stopAtMs: laterMs(step.stopAtMs), words: step.words },
            ...(step.resumeAtMs === null ? {} : { untilMs: step.resumeAtMs }),
          };
    }
    case 'words-passed': {
      const { to, words, soundsLikeOrder } = fact;
      return { do: 'pass-on', to, words, soundsLikeOrder };
    }
    case 'notice-seen':
      return { do: 'acknowledge' };
    case 'shift-told':
      return { do: 'tell-shift', off: fact.off, noticesWhenOff: fact.noticesWhenOff, atMs };
    case 'emergency-called':
      return { do: 'call-emergency', words: fact.words };
    case 'language-chosen':
      return { do: 'choose-language', language: fact.language };
    case 'word-taught':
      return { do: 'teach', said: fact.said, means: fact.means };
    case 'list-changed':
      return { do: 'use-room', use: true };
    case 'forecast-issued':
    case 'air-observed':
    case 'reading-offered':
    case 'reading-chosen':
    case 'forecast-warned':
    case 'line-warned':
    case 'stranger-heard':
      return null;
  }
};

const wait = z.object({ leaveInMin: z.number().nullable() });
const tally = z.object({
  span: z.enum(['today', 'yesterday', 'week', 'season']),
  truck: z.string().nullable(),
  field: z.string().nullable(),
});
const left = z.object({ fields: z.array(z.object({ field: z.string() })) });
const truck = z.object({ truck: z.string() });

/** The question that such a telling answers; null = it answers none. */
const questionOf = ({ kind, data }: BotReply): Question | null => {
  switch (kind) {
    case 'wait':
      return { about: 'line', station: null, leaveInMin: wait.parse(data).leaveInMin };
    case 'tally': {
      const told = tally.parse(data);
      return { about: 'tons', field: told.field, truck: told.truck, span: told.span };
    }
    case 'left': {
      const { fields } = left.parse(data);
      return { about: 'left', field: fields.length === 1 ? (fields[0]?.field ?? null) : null };
    }
    case 'board':
      return { about: 'board' };
    case 'truck':
      return { about: 'truck', truck: truck.parse(data).truck };
    case 'may-dig':
      return { about: 'may-dig' };
    case 'unseen':
      return { about: 'unseen-notice' };
    case 'tickets':
      return { about: 'tickets', truck: null };
    case 'outlook':
      return { about: 'outlook', station: null, of: null };
    case 'list':
      return { about: 'lists', list: 'people' };
    case 'ticket-form':
    case 'help':
    case 'where-to':
    case 'fleet':
      return { about: kind };
    default:
      return null;
  }
};

/** What was recorded, then what was answered. */
export const takenAs = ({ facts, replies }: Played): Intent[] => [
  ...facts.flatMap((fact) => intentOfFact(fact) ?? []),
  ...replies.flatMap((reply): Intent[] => {
    const question = questionOf(reply);
    return question === null ? [] : [{ do: 'ask', question }];
  }),
];

/** The readings that the bot offers to choose from, best first. */
export const offeredReadings = ({ facts }: Played): readonly (readonly Intent[])[] =>
  facts.flatMap((fact) => (fact.kind === 'reading-offered' ? fact.readings : []));
