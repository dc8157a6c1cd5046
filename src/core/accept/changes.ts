import { askedBy, isChange } from '../book/changes.ts';
import type { Entry } from '../book/entries.ts';
import { standingFactsOf, targetOf } from '../book/standing.ts';
import type { Correction, EntryTarget, Fact } from '../book/facts.ts';
import type { IntentTarget } from '../intent.ts';
import { mayManage, truckById } from '../roster.ts';
import { netOf, reweigh, setsWeight } from '../book/weights.ts';
import { isAhead, refused, taken } from './speaking.ts';
import type { Accepted, IntentOf, Speaking } from './speaking.ts';
import type { Harvest } from '../harvest/harvest.ts';
import type { BookedTicket } from '../haul/load.ts';
import type { Warning } from '../refusal.ts';
import { weightWarnings } from './weight-warnings.ts';

const fullTarget = (target: IntentTarget, speaking: Speaking): EntryTarget =>
  target.by === 'latest' ? { ...target, person: speaking.speaker.id } : target;

type Hit = Pick<Entry, 'cause' | 'by'>;

/** The entry that an undo or a correction refers to, among those heard by now. */
const entryOf = (
  target: EntryTarget,
  set: Correction | null,
  harvest: Harvest,
  { sentMs, heardMs, cause }: Speaking,
): Hit | undefined => targetOf(harvest.standing, { target, sentMs, heardMs, cause, set });

const mayChange = (entry: Hit, speaking: Speaking): boolean =>
  entry.by === speaking.speaker.id || mayManage(speaking.speaker);

export const acceptWithdrawal = (
  intent: IntentOf<'withdraw'>,
  harvest: Harvest,
  speaking: Speaking,
): Accepted => {
  const target = fullTarget(intent.target, speaking);
  const entry = entryOf(target, null, harvest, speaking);
  if (!entry) return refused({ refused: 'nothing-to-undo' });
  if (!mayChange(entry, speaking)) return refused({ refused: 'not-allowed', what: 'correct-others' });
  return taken(speaking, null, [{ kind: 'entry-withdrawn', target }]);
};

/** Corrected weights of a booked ticket must pass the same checks as those of a new one. */
const reweighed = (set: Correction, entry: Hit, harvest: Harvest): { warnings: Warning[] } | Accepted => {
  const fact = standingFactsOf(harvest.standing, entry.cause).find(({ kind }) => kind === 'ticket-booked');
  if (fact?.kind !== 'ticket-booked' || !setsWeight(set)) return { warnings: [] };
  const weights = reweigh(fact.ticket, set);
  const net = netOf(weights);
  if ('refusal' in net) return refused(net.refusal);
  const truck = set.truck ?? fact.ticket.truck;
  const earlier = harvest.tickets.filter((t) => t.truck === truck && t.cause !== entry.cause);
  return {
    warnings: weightWarnings({ ...weights, netLb: net.netLb }, truckById(harvest.roster, truck), earlier),
  };
};

/** Another ticket that has the serial already. */
const ticketOfSerial = (
  serial: string | undefined,
  { cause }: Hit,
  { tickets }: Harvest,
): BookedTicket | undefined =>
  serial === undefined
    ? undefined
    : tickets.find((ticket) => ticket.serial === serial && ticket.cause !== cause);

export const acceptCorrection = (
  intent: IntentOf<'correct'>,
  harvest: Harvest,
  speaking: Speaking,
): Accepted => {
  const target = fullTarget(intent.target, speaking);
  const entry = entryOf(target, intent.set, harvest, speaking);
  if (!entry) return refused({ refused: 'nothing-to-correct' });
  if (!mayChange(entry, speaking)) return refused({ refused: 'not-allowed', what: 'correct-others' });
  const { atMs } = intent.set;
  if (atMs !== null && isAhead(atMs, speaking)) return refused({ refused: 'time-ahead', atMs });
  const known = ticketOfSerial(intent.set.serial, entry, harvest);
  if (known !== undefined) return refused({ refused: 'serial-known', ticket: known });
  const checked = reweighed(intent.set, entry, harvest);
  if ('outcome' in checked) return checked;
  return taken(speaking, null, [{ kind: 'entry-corrected', target, set: intent.set }], checked.warnings);
};

/** The facts in force of the entry that was withdrawn (as before it) or corrected (as after it). */
export const factsHitBy = (change: Fact, before: Harvest, after: Harvest): readonly Fact[] => {
  if (!isChange(change)) return [];
  const entry = targetOf(before.standing, askedBy(change));
  if (!entry) return [];
  const { standing } = change.kind === 'entry-withdrawn' ? before : after;
  return standingFactsOf(standing, entry.cause);
};
