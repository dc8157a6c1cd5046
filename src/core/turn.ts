/** What one message of the crew comes to: facts, and replies to its sender. */
import { accept } from './accept/accept.ts';
import { factsHitBy } from './accept/changes.ts';
import { happened } from './accept/speaking.ts';
import type { Speaking } from './accept/speaking.ts';
import { previewed, timed } from './accept/offers.ts';
import { answer, asksCount, needsWaits } from './answers/answer.ts';
import { withFacts } from './harvest/fold.ts';
import type { Fact } from './book/facts.ts';
import { countsElsewhere, hasLine, hasOwnTelling } from './book/kinds.ts';
import type { Intent, Question, Reading } from './intent.ts';
import { hasUnseen, newestStep } from './notices/notices.ts';
import type { Load } from './haul/load.ts';
import type { TruckId } from './roster.ts';
import type { Telling } from './telling.ts';
import type { ZoneClock } from './zone-clock.ts';
import type { Harvest } from './harvest/harvest.ts';
import type { Refusal, Warning } from './refusal.ts';

/** One message of a crew member, and the harvest that it meets. */
export interface Turn {
  said: string;
  speaking: Speaking;
  harvest: Harvest;
  clock: ZoneClock;
  /** The bot is spoken to, by name or alone. */
  addressed: boolean;
}

/** What goes back to the sender: at once, or (`owe`) when the line has been forecast for the answer. */
export type Reply = { say: Telling } | { owe: Question };

export interface Understood {
  /** New facts, in order. */
  facts: readonly Fact[];
  replies: readonly Reply[];
  /** The harvest with the new facts. */
  harvest: Harvest;
}

/** Talk that is not meant for the bot. */
export const nothing = (harvest: Harvest): Understood => ({ facts: [], replies: [], harvest });

const isForAnyRoom = (reply: Reply): boolean => {
  if ('owe' in reply) return false;
  const { say } = reply;
  return (
    say.tell === 'emergency-answer' ||
    (say.tell === 'list-changed' && say.change.list === 'rooms') ||
    (say.tell === 'offer' && say.danger) ||
    (say.tell === 'refusal' && say.refusal.refused === 'room-not-used')
  );
};

/**
 * In a room that is not the crew's, only emergencies count, and a manager's word that makes it one: nothing else of the
 * operation is said or taken there.
 */
export const onlyElsewhere = ({ facts: all, replies: said }: Understood, before: Harvest): Understood => {
  const replies = said.filter(isForAnyRoom);
  const asksOfDanger = replies.some((reply) => 'say' in reply && reply.say.tell === 'offer');
  const facts = all.filter(
    (fact) => countsElsewhere(fact) || (asksOfDanger && fact.kind === 'reading-offered'),
  );
  return facts.length + replies.length === 0
    ? nothing(before)
    : { facts, replies, harvest: withFacts(before, facts) };
};

interface Progress {
  facts: readonly Fact[];
  harvest: Harvest;
  receipt: { facts: Fact[]; warnings: Warning[] };
  replies: Reply[];
}

/** In a shared room "got it" is often said to somebody else, and a thumb without a word needs no answer anywhere. */
const isSilent = (refusal: Refusal, { said, addressed }: Turn): boolean =>
  refusal.refused === 'nothing-to-see' && (!addressed || !/\p{L}/u.test(said));

/** What is said of facts that have just been taken, other than by the common receipt. */
const ownTelling = (
  facts: readonly Fact[],
  before: Progress,
  after: Harvest,
  warnings: readonly Warning[],
): Telling | null => {
  const fact = facts[0];
  if (!fact || !hasOwnTelling(fact)) return null;
  switch (fact.kind) {
    case 'entry-withdrawn':
      return {
        tell: 'taken-back',
        facts: factsHitBy(fact, before.harvest, after).map((hit) => withField(hit, before.harvest)),
      };
    case 'entry-corrected':
      return {
        tell: 'corrected',
        facts: factsHitBy(fact, before.harvest, after).map((hit) => withField(hit, after)),
        warnings,
      };
    case 'words-passed':
      return { tell: 'words-passed', fact };
    case 'notice-seen': {
      if (!hasUnseen(before.harvest, fact.person)) return { tell: 'words-seen' };
      const event = before.harvest.notices.at(-1);
      return event ? { tell: 'seen', step: newestStep(event).step } : null;
    }
    case 'list-changed':
      return { tell: 'list-changed', change: fact.change };
    case 'language-chosen':
      return { tell: 'language', language: fact.language };
    case 'emergency-called':
      return { tell: 'emergency-answer' };
  }
};

/** The chosen reading is taken as if it had been said; none of them takes nothing down. */
const chosen = (
  intent: Extract<Intent, { do: 'choose' }>,
  before: Progress,
  after: Progress,
  turn: Turn,
): Progress => {
  const offer = before.harvest.offers.get(turn.speaking.speaker.id);
  if (intent.which === 0 || offer === undefined) return withReply(after, { say: { tell: 'nothing-taken' } });
  const meant = offer.readings[intent.which - 1] ?? [];
  return meant.reduce((progress, one) => step(one, progress, turn), after);
};

const withReply = (progress: Progress, reply: Reply): Progress => ({
  ...progress,
  replies: [...progress.replies, reply],
});

const asked = (question: Question, progress: Progress, { speaking, clock }: Turn): Progress => {
  if (needsWaits(question)) return withReply(progress, { owe: question });
  const asking = { asker: speaking.speaker, nowMs: speaking.heardMs, clock };
  return withReply(progress, { say: answer(question, progress.harvest, asking) });
};

const step = (intent: Intent, progress: Progress, turn: Turn): Progress => {
  if (intent.do === 'ask') return asked(intent.question, progress, turn);
  const { speaking } = turn;
  const own = { ...speaking, factsSoFar: speaking.factsSoFar + progress.facts.length };
  const accepted = accept(intent, progress.harvest, own);
  if (accepted.outcome === 'refused') {
    const { refusal } = accepted;
    return isSilent(refusal, turn) ? progress : withReply(progress, { say: { tell: 'refusal', refusal } });
  }
  const { facts, warnings } = accepted;
  const harvest = withFacts(progress.harvest, facts);
  const telling = ownTelling(facts, progress, harvest, warnings);
  const next = { ...progress, facts: [...progress.facts, ...facts], harvest };
  if (intent.do === 'choose') return chosen(intent, progress, next, turn);
  if (telling) return withReply(next, { say: telling });
  return {
    ...next,
    receipt: {
      facts: [...progress.receipt.facts, ...facts.map((fact) => withField(fact, harvest))],
      warnings: [...progress.receipt.warnings, ...warnings],
    },
  };
};

/**
 * A ticket or a "loaded" without a field is of the field of its load: what is said back shows which, so that a wrong
 * one is seen.
 */
const withField = (fact: Fact, harvest: Harvest): Fact => {
  const loadsOf = (truck: TruckId): readonly Load[] => harvest.trucks.get(truck)?.loads ?? [];
  if (fact.kind === 'ticket-booked' && fact.ticket.field === null) {
    const load = loadsOf(fact.ticket.truck).find((known) => known.ticket?.cause === fact.cause);
    return { ...fact, ticket: { ...fact.ticket, field: load?.field ?? null } };
  }
  if (fact.kind === 'truck-reported' && fact.step === 'left-field' && fact.field === null)
    return {
      ...fact,
      field: loadsOf(fact.truck).findLast((load) => load.startMs <= fact.atMs)?.field ?? null,
    };
  return fact;
};

const receiptOf = ({ receipt, harvest }: Progress, { speaking, clock }: Turn): Reply[] => {
  // A notice goes to everybody: whoever ordered it needs no receipt as well.
  const facts = receipt.facts.filter(hasLine);
  if (facts.length === 0) return [];
  const asking = { asker: speaking.speaker, nowMs: speaking.heardMs, clock };
  const isCountAsked = facts.some(
    (fact) => fact.kind === 'truck-reported' && asksCount(fact, harvest, asking),
  );
  return [{ say: { tell: 'receipt', facts, warnings: receipt.warnings, asksCount: isCountAsked } }];
};

/** Nobody says more in one message; a few hundred would hold up everybody else's. Grade: chosen. An emergency comes first. */
const MOST_INTENTS = 12;

const TOO_MANY: Reply = { say: { tell: 'refusal', refusal: { refused: 'too-many', taken: MOST_INTENTS } } };

const taking = (intents: readonly Intent[], turn: Turn): Understood => {
  const start: Progress = {
    facts: [],
    harvest: turn.harvest,
    receipt: { facts: [], warnings: [] },
    replies: [],
  };
  const end = intents
    .slice(0, MOST_INTENTS)
    .reduce((progress, intent) => step(intent, progress, turn), start);
  const rest = intents.length > MOST_INTENTS ? [TOO_MANY] : [];
  return {
    facts: end.facts,
    replies: [...receiptOf(end, turn), ...end.replies, ...rest],
    harvest: end.harvest,
  };
};

/** Which of the readings is meant? Only those that would be taken are offered; one that only asks is answered. */
const offering = (readings: readonly (readonly Intent[])[], turn: Turn): Understood => {
  const { harvest, speaking, said, addressed } = turn;
  const offered = readings.flatMap((reading) => {
    const intents = reading.slice(0, MOST_INTENTS).map((intent) => timed(intent, speaking.sentMs));
    const preview = previewed(intents, harvest, speaking, accept);
    return preview === null ? [] : [{ intents, preview }];
  });
  const [best, ...others] = offered;
  if (best === undefined) {
    const problem = { problem: 'not-understood' } as const;
    return addressed ? understand({ found: 'unclear', problem }, turn) : nothing(harvest);
  }
  if (others.length === 0 && best.preview.facts.length === 0) return taking(best.intents, turn);
  const number = harvest.offersMade + 1;
  const facts = happened(speaking, {
    kind: 'reading-offered',
    person: speaking.speaker.id,
    number,
    readings: offered.map(({ intents }) => intents),
  });
  const previews = offered.map(({ preview }) => preview);
  const danger = previews.some((one) => one.facts.some(({ kind }) => kind === 'emergency-called'));
  const say: Telling = { tell: 'offer', number, said, readings: previews, danger };
  return { facts, replies: [{ say }], harvest: withFacts(harvest, facts) };
};

export const understand = (reading: Reading, turn: Turn): Understood => {
  const { harvest, said } = turn;
  switch (reading.found) {
    case 'chatter':
      return nothing(harvest);
    case 'unclear':
      return { facts: [], replies: [{ say: { tell: 'question', problem: reading.problem, said } }], harvest };
    case 'likely':
      return offering(reading.readings, turn);
    case 'intents':
      return taking(reading.intents, turn);
  }
};
