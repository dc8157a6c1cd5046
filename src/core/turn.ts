/** What one message comes to: facts and tells. Pure, but for the reading's and the core's own work: no clock, no store. */
import { accept } from './accept/accept.ts';
import { factsHitBy } from './accept/changes.ts';
import type { Speaking } from './accept/speaking.ts';
import { answer, asksCount } from './answers/answer.ts';
import { withFacts } from './harvest/fold.ts';
import type { Fact } from './book/facts.ts';
import type { Intent, Reading } from './intent.ts';
import type { ForecastWait } from './line/types.ts';
import { newestStep } from './notices/notices.ts';
import type { Load } from './haul/load.ts';
import type { Roster, TruckId } from './roster.ts';
import type { Telling } from './telling.ts';
import type { ZoneClock } from './zone-clock.ts';
import type { Harvest } from './harvest/harvest.ts';
import type { Refusal, Warning } from './refusal.ts';

export interface Means {
  roster: Roster;
  clock: ZoneClock;
  forecastWait: ForecastWait;
}

export interface Understood {
  /** New facts, in order. */
  facts: readonly Fact[];
  answers: readonly Telling[];
  /** The day with the new facts. */
  harvest: Harvest;
}

/** Talk that is not meant for the bot. */
export const nothing = (harvest: Harvest): Understood => ({ facts: [], answers: [], harvest });

interface Progress {
  facts: readonly Fact[];
  harvest: Harvest;
  receipt: { facts: Fact[]; warnings: Warning[] };
  answers: Telling[];
}

/** In a shared room "got it" is often said to somebody else. */
const isSilent = (refusal: Refusal, addressed: boolean): boolean =>
  refusal.refused === 'nothing-to-see' && !addressed;

/** What is said of facts that have just been taken, other than by the common receipt. */
const ownTelling = (
  facts: readonly Fact[],
  before: Progress,
  after: Harvest,
  warnings: readonly Warning[],
): Telling | null => {
  const fact = facts[0];
  if (!fact) return null;
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
    case 'notice-seen': {
      const event = before.harvest.notices.at(-1);
      return event ? { tell: 'seen', step: newestStep(event).step } : null;
    }
    case 'list-changed':
      return { tell: 'list-changed', change: fact.change };
    case 'language-chosen':
      return { tell: 'language', language: fact.language };
    case 'emergency-called':
      return { tell: 'emergency-answer' };
    case 'truck-reported':
    case 'ticket-booked':
    case 'line-seen':
    case 'pilers-seen':
    case 'station-reported':
    case 'root-measured':
    case 'crown-checked':
    case 'field-dug':
    case 'truck-taken':
    case 'forecast-issued':
    case 'air-observed':
    case 'notice-raised':
    case 'line-warned':
    case 'shift-told':
    case 'stranger-heard':
      return null;
  }
};

const step = (
  intent: Intent,
  progress: Progress,
  speaking: Speaking,
  means: Means,
  addressed: boolean,
): Progress => {
  if (intent.do === 'ask') {
    const asking = { asker: speaking.speaker, nowMs: speaking.heardMs, ...means };
    return { ...progress, answers: [...progress.answers, answer(intent.question, progress.harvest, asking)] };
  }
  const own = { ...speaking, factsSoFar: speaking.factsSoFar + progress.facts.length };
  const accepted = accept(intent, progress.harvest, own);
  if (accepted.outcome === 'refused') {
    if (isSilent(accepted.refusal, addressed)) return progress;
    return { ...progress, answers: [...progress.answers, { tell: 'refusal', refusal: accepted.refusal }] };
  }
  const { facts, warnings } = accepted;
  const harvest = withFacts(progress.harvest, facts);
  const telling = ownTelling(facts, progress, harvest, warnings);
  const receipt = telling
    ? progress.receipt
    : {
        facts: [...progress.receipt.facts, ...facts.map((fact) => withField(fact, harvest))],
        warnings: [...progress.receipt.warnings, ...warnings],
      };
  return {
    facts: [...progress.facts, ...facts],
    harvest,
    receipt,
    answers: telling ? [...progress.answers, telling] : progress.answers,
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

/** Notices go to everybody; whoever ordered one needs no receipt besides. */
const hasReceipt = (fact: Fact): boolean => fact.kind !== 'notice-raised';

/** Nobody says more in one message; a few hundred would hold up everybody else's. Chosen. An emergency comes first. */
const MOST_INTENTS = 12;

const TOO_MUCH: Telling = { tell: 'refusal', refusal: { refused: 'too-many', taken: MOST_INTENTS } };

export const understand = (
  reading: Reading,
  said: string,
  harvest: Harvest,
  speaking: Speaking,
  means: Means,
  addressed: boolean,
): Understood => {
  switch (reading.found) {
    case 'chatter':
      return nothing(harvest);
    case 'unclear':
      return { facts: [], answers: [{ tell: 'question', problem: reading.problem, said }], harvest };
    case 'intents': {
      const start: Progress = { facts: [], harvest, receipt: { facts: [], warnings: [] }, answers: [] };
      const end = reading.intents
        .slice(0, MOST_INTENTS)
        .reduce((progress, intent) => step(intent, progress, speaking, means, addressed), start);
      const { warnings } = end.receipt;
      const facts = end.receipt.facts.filter(hasReceipt);
      const asking = { asker: speaking.speaker, nowMs: speaking.heardMs, ...means };
      const isCountAsked = facts.some(
        (fact) => fact.kind === 'truck-reported' && asksCount(fact, end.harvest, asking),
      );
      const receipt: Telling[] =
        facts.length > 0 ? [{ tell: 'receipt', facts, warnings, asksCount: isCountAsked }] : [];
      const tooMuch = reading.intents.length > MOST_INTENTS ? [TOO_MUCH] : [];
      const answers = [...receipt, ...end.answers, ...tooMuch];
      return { facts: end.facts, answers, harvest: end.harvest };
    }
  }
};
