import type { Day } from '../day.ts';
import { standingEntries, standingFacts, targetEntry } from '../entries.ts';
import type { Entry } from '../entries.ts';
import type { Correction, EntryTarget, Fact } from '../facts.ts';
import type { IntentTarget } from '../intent.ts';
import { mayManage, truckById } from '../roster.ts';
import { netOf, weightWarnings } from '../tally/weights.ts';
import type { Warning } from '../telling.ts';
import { refused, taken } from './speaking.ts';
import type { Accepted, IntentOf, Speaking } from './speaking.ts';

const fullTarget = (target: IntentTarget, speaking: Speaking): EntryTarget =>
  target.by === 'latest' ? { ...target, person: speaking.speaker.id } : target;

/** The entry that an undo or a correction will hit, as far as has been heard by now. */
const hit = (target: EntryTarget, undo: boolean, day: Day, speaking: Speaking): Entry | undefined => {
  const { entries, gone } = standingEntries(day.facts);
  return targetEntry(entries, gone, { target, sentMs: speaking.sentMs, cause: speaking.cause, undo });
};

const mayChange = (entry: Entry, speaking: Speaking): boolean =>
  entry.by === speaking.speaker.id || mayManage(speaking.speaker);

export const acceptWithdrawal = (intent: IntentOf<'withdraw'>, day: Day, speaking: Speaking): Accepted => {
  const target = fullTarget(intent.target, speaking);
  const entry = hit(target, true, day, speaking);
  if (!entry) return refused({ refused: 'nothing-to-undo' });
  if (!mayChange(entry, speaking)) return refused({ refused: 'not-allowed', what: 'correct-others' });
  return taken(speaking, null, [{ kind: 'entry-withdrawn', target }]);
};

/** New weights of a booked ticket must pass as those of a new one do. */
const reweighed = (set: Correction, entry: Entry, day: Day): { warnings: Warning[] } | Accepted => {
  const fact = standingFacts(day.facts).find((f) => f.cause === entry.cause && f.kind === 'ticket-booked');
  const changesWeight = set.grossLb !== null || set.tareLb !== null || set.netLb !== null;
  if (fact?.kind !== 'ticket-booked' || !changesWeight) return { warnings: [] };
  const grossLb = set.netLb === null ? (set.grossLb ?? fact.ticket.grossLb) : set.grossLb;
  const tareLb = set.netLb === null ? (set.tareLb ?? fact.ticket.tareLb) : set.tareLb;
  const net = netOf({ grossLb, tareLb, netLb: set.netLb });
  if ('refusal' in net) return refused(net.refusal);
  const truck = set.truck ?? fact.ticket.truck;
  const earlier = day.tickets.filter((t) => t.truck === truck && t.cause !== entry.cause);
  return {
    warnings: weightWarnings({ grossLb, tareLb, netLb: net.netLb }, truckById(day.roster, truck), earlier),
  };
};

export const acceptCorrection = (intent: IntentOf<'correct'>, day: Day, speaking: Speaking): Accepted => {
  const target = fullTarget(intent.target, speaking);
  const entry = hit(target, false, day, speaking);
  if (!entry) return refused({ refused: 'nothing-to-correct' });
  if (!mayChange(entry, speaking)) return refused({ refused: 'not-allowed', what: 'correct-others' });
  const checked = reweighed(intent.set, entry, day);
  if ('outcome' in checked) return checked;
  return taken(speaking, null, [{ kind: 'entry-corrected', target, set: intent.set }], checked.warnings);
};

/** The standing facts of the entry that a withdrawal or correction fact hit, before (undo) or after (correction) it. */
export const factsHitBy = (
  change: Fact,
  before: readonly Fact[],
  after: readonly Fact[],
): readonly Fact[] => {
  if (change.kind !== 'entry-withdrawn' && change.kind !== 'entry-corrected') return [];
  const { entries, gone } = standingEntries(before);
  const undo = change.kind === 'entry-withdrawn';
  const entry = targetEntry(entries, gone, {
    target: change.target,
    sentMs: change.sentMs,
    cause: change.cause,
    undo,
  });
  if (!entry) return [];
  return standingFacts(undo ? before : after).filter((fact) => fact.cause === entry.cause);
};
