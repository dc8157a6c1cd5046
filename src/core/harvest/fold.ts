/**
 * The fold: facts -> the state of the harvest. Facts are sorted by when they happened, so that late, repeated and
 * shuffled messages end in the same state. All facts of the season are folded anew for each question; that is cheap
 * (a season is some ten thousand facts) and leaves no second truth to keep in step.
 */
import { standingFacts } from '../book/entries.ts';
import type { Fact, FactOf } from '../book/facts.ts';
import { asBooked } from '../haul/load.ts';
import type { BookedTicket } from '../haul/load.ts';
import { applyReport, applyTicket, freshTruck } from '../haul/truck.ts';
import type { Surroundings, TruckState } from '../haul/truck.ts';
import { changeRoster, fieldById, personById } from '../roster.ts';
import type { FieldId, PersonId, Roster, StationId, TruckId } from '../roster.ts';
import type { EpochMs } from '../units.ts';
import { NO_FILLING, filledOn } from './fills.ts';
import type { Filling } from './fills.ts';
import type { NoticeEvent, Harvest, Shift } from './harvest.ts';
import { ON_SHIFT, NOTHING_SHARED } from './harvest.ts';

interface Draft {
  roster: Roster;
  trucks: Map<TruckId, TruckState>;
  tickets: BookedTicket[];
  serials: Set<string>;
  dugField: FieldId | null;
  filling: Filling;
  headCounts: FactOf<'line-seen'>[];
  pilerReports: FactOf<'pilers-seen'>[];
  stationReports: FactOf<'station-reported'>[];
  rootReadings: FactOf<'root-measured'>[];
  crownChecks: FactOf<'crown-checked'>[];
  forecasts: Map<StationId, FactOf<'forecast-issued'>[]>;
  notices: NoticeEvent[];
  lineWarnings: FactOf<'line-warned'>[];
  shifts: Map<PersonId, Shift>;
  strangers: Set<string>;
}

const surroundings = (draft: Draft): Surroundings => ({
  shortestCycleMin: draft.roster.limits.shortestCycleMin,
  dugField: draft.dugField,
  stationOf: (field) =>
    (field === null ? undefined : fieldById(draft.roster, field))?.station ??
    draft.roster.stations[0]?.id ??
    null,
});

const truckState = (draft: Draft, truck: TruckId, atMs: EpochMs): TruckState => {
  const known = draft.trucks.get(truck);
  if (known) return known;
  const fresh = freshTruck(truck, atMs);
  draft.trucks.set(truck, fresh);
  return fresh;
};

/** Who reports a truck is at work again. */
const endOffShift = (draft: Draft, by: PersonId | null): void => {
  const shift = by === null ? undefined : draft.shifts.get(by);
  if (by !== null && shift && shift.offSinceMs !== null) draft.shifts.set(by, { ...shift, offSinceMs: null });
};

const applyTruckReport = (draft: Draft, fact: FactOf<'truck-reported'>): void => {
  if (fact.step !== 'parked') endOffShift(draft, fact.by);
  draft.filling = filledOn(draft.filling, fact);
  if (fact.field !== null && fact.step !== 'joined-line') draft.dugField = fact.field;
  applyReport(truckState(draft, fact.truck, fact.atMs), fact, surroundings(draft));
};

const applyTicketFact = (draft: Draft, fact: FactOf<'ticket-booked'>): void => {
  const { serial, station, truck } = fact.ticket;
  // `accept` refuses a known serial; a correction that was heard late could still bring one in twice.
  if (serial !== null && draft.serials.has(`${station} ${serial}`)) return;
  if (serial !== null) draft.serials.add(`${station} ${serial}`);
  draft.tickets.push(asBooked(fact));
  applyTicket(truckState(draft, truck, fact.atMs), fact, surroundings(draft));
};

const applyNotice = (draft: Draft, fact: FactOf<'notice-raised'>): void => {
  const entry = { step: fact.step, atMs: fact.atMs, heardMs: fact.heardMs, by: fact.by };
  const { event } = fact.step;
  const fresh: NoticeEvent = { event, steps: [], seen: new Map() };
  const known = draft.notices.find((notice) => notice.event === event) ?? fresh;
  known.steps.push(entry);
  if (fact.step.stage !== 'all-clear') known.seen.clear();
  if (fact.by !== null) known.seen.set(fact.by, fact.atMs);
  draft.notices = [...draft.notices.filter((notice) => notice !== known), known];
};

/** "Got it" is for all that has been told by then. */
const applySeen = (draft: Draft, fact: FactOf<'notice-seen'>): void => {
  for (const { seen } of draft.notices) if (!seen.has(fact.person)) seen.set(fact.person, fact.atMs);
};

const applyShift = (draft: Draft, fact: FactOf<'shift-told'>): void => {
  const before = draft.shifts.get(fact.person) ?? ON_SHIFT;
  const offSinceMs = fact.off === null ? before.offSinceMs : fact.off ? fact.atMs : null;
  draft.shifts.set(fact.person, {
    offSinceMs,
    noticesWhenOff: fact.noticesWhenOff ?? before.noticesWhenOff,
  });
};

const applyForecast = (draft: Draft, fact: FactOf<'forecast-issued'>): void => {
  const known = draft.forecasts.get(fact.place) ?? [];
  // The same issue again brings newer alerts.
  const others = known.filter((f) => f.issuedMs !== fact.issuedMs);
  draft.forecasts.set(fact.place, [...others, fact].sort((a, b) => a.issuedMs - b.issuedMs).slice(-48));
};

const changePerson = (
  draft: Draft,
  id: PersonId,
  change: { truck: TruckId } | { language: 'en' | 'es' },
): void => {
  const person = personById(draft.roster, id);
  if (person) draft.roster = changeRoster(draft.roster, { list: 'people', put: { ...person, ...change } });
};

const apply = (draft: Draft, fact: Fact): void => {
  switch (fact.kind) {
    case 'truck-reported':
      applyTruckReport(draft, fact);
      return;
    case 'ticket-booked':
      applyTicketFact(draft, fact);
      return;
    case 'line-seen':
      draft.headCounts.push(fact);
      return;
    case 'pilers-seen':
      draft.pilerReports.push(fact);
      return;
    case 'station-reported':
      draft.stationReports.push(fact);
      return;
    case 'root-measured':
      draft.rootReadings.push(fact);
      return;
    case 'crown-checked':
      draft.crownChecks.push(fact);
      return;
    case 'field-dug':
      draft.dugField = fact.field;
      return;
    case 'truck-taken':
      changePerson(draft, fact.person, { truck: fact.truck });
      return;
    case 'forecast-issued':
      applyForecast(draft, fact);
      return;
    case 'notice-raised':
      applyNotice(draft, fact);
      return;
    case 'line-warned':
      draft.lineWarnings.push(fact);
      return;
    case 'notice-seen':
      applySeen(draft, fact);
      return;
    case 'shift-told':
      applyShift(draft, fact);
      return;
    case 'stranger-heard':
      draft.strangers.add(`${fact.platform}:${fact.user}`);
      return;
    case 'language-chosen':
      changePerson(draft, fact.person, { language: fact.language });
      return;
    case 'list-changed':
      draft.roster = changeRoster(draft.roster, fact.change);
      return;
    // Resolved before the fold (entries.ts), or of no lasting effect.
    case 'entry-withdrawn':
    case 'entry-corrected':
    case 'emergency-called':
    // Compared with what was forecast (weather/forecast-pairs.ts).
    case 'air-observed':
      return;
  }
};

/** Two steps of one moment happened in the order of the round trip; a truck is parked or down after all else. */
const stepOrder = [
  'up',
  'at-field',
  'loading',
  'left-field',
  'joined-line',
  'first-weighed',
  'dumped',
  'ticket',
  'returning',
  'parked',
  'down',
] as const;

const stepRank = (fact: Fact): number => {
  if (fact.kind === 'ticket-booked') return stepOrder.indexOf('ticket');
  return fact.kind === 'truck-reported' ? stepOrder.indexOf(fact.step) : -1;
};

const inOrderOfHappening = (a: Fact, b: Fact): number =>
  a.atMs - b.atMs || stepRank(a) - stepRank(b) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** The state of the harvest after these facts. `roster` is the operation file, before any change made in chat. */
export const foldHarvest = (roster: Roster, facts: readonly Fact[]): Harvest => {
  const draft: Draft = {
    roster,
    trucks: new Map(),
    tickets: [],
    serials: new Set(),
    dugField: null,
    filling: NO_FILLING,
    headCounts: [],
    pilerReports: [],
    stationReports: [],
    rootReadings: [],
    crownChecks: [],
    forecasts: new Map(),
    notices: [],
    lineWarnings: [],
    shifts: new Map(),
    strangers: new Set(),
  };
  for (const fact of standingFacts(facts).sort(inOrderOfHappening)) apply(draft, fact);
  const { filling, ...state } = draft;
  return { ...state, fills: filling.fills, fileRoster: roster, facts, othersTickets: NOTHING_SHARED };
};

/** The harvest with these facts besides. */
export const withFacts = (harvest: Harvest, facts: readonly Fact[]): Harvest =>
  facts.length === 0
    ? harvest
    : {
        ...foldHarvest(harvest.fileRoster, [...harvest.facts, ...facts]),
        othersTickets: harvest.othersTickets,
      };
