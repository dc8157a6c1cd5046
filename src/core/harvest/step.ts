/** One fact further: the state before -> the state after it. */
import type { Fact, FactOf } from '../book/facts.ts';
import { isUndoable } from '../book/kinds.ts';
import { asBooked } from '../haul/load.ts';
import { freshTruck, withReport, withTicket } from '../haul/truck.ts';
import type { Surroundings, TruckState } from '../haul/truck.ts';
import { changeRoster, fieldById, personById } from '../roster.ts';
import type { Language, PersonId, Roster, TruckId } from '../roster.ts';
import { emptyShared, got, withPut } from '../shared-map.ts';
import type { EpochMs } from '../units.ts';
import { asksAnew } from '../weather/steps.ts';
import { NO_FILLING, filledOn } from './fills.ts';
import type { NoticeEvent, SeasonState } from './harvest.ts';
import { ON_SHIFT } from './harvest.ts';

/** Before the first fact. `roster` is the operation file, before any change made in chat. */
export const seasonStart = (roster: Roster): SeasonState => ({
  roster,
  trucks: new Map(),
  tickets: [],
  serials: emptyShared(),
  dugField: null,
  taught: new Map(),
  acresTold: [],
  machinesDown: new Map(),
  filling: NO_FILLING,
  headCounts: [],
  pilerReports: [],
  stationReports: [],
  turnedAway: [],
  rootReadings: [],
  crownChecks: [],
  forecasts: new Map(),
  issued: new Map(),
  observed: new Map(),
  forecastWarnings: new Map(),
  notices: [],
  passedWords: [],
  lineWarnings: [],
  shifts: new Map(),
  offers: new Map(),
  offersMade: 0,
  strangers: new Set(),
});

const surroundings = ({ roster, dugField }: SeasonState): Surroundings => ({
  shortestCycleMin: roster.limits.shortestCycleMin,
  dugField,
  stationOf: (field) =>
    (field === null ? undefined : fieldById(roster, field))?.station ?? roster.stations[0]?.id ?? null,
});

const withTruck = (
  state: SeasonState,
  truck: TruckId,
  atMs: EpochMs,
  changed: (known: TruckState, around: Surroundings) => TruckState,
): SeasonState => {
  const after = changed(state.trucks.get(truck) ?? freshTruck(truck, atMs), surroundings(state));
  return { ...state, trucks: new Map(state.trucks).set(truck, after) };
};

/** Who reports a truck is at work again. */
const backAtWork = (state: SeasonState, by: PersonId | null): SeasonState => {
  const shift = by === null ? undefined : state.shifts.get(by);
  if (by === null || shift === undefined) return state;
  return { ...state, shifts: new Map(state.shifts).set(by, { ...shift, offSinceMs: null }) };
};

const onTruckReport = (before: SeasonState, fact: FactOf<'truck-reported'>): SeasonState => {
  const state = fact.step === 'parked' ? before : backAtWork(before, fact.by);
  const filling = filledOn(state.filling, fact);
  const dugField = fact.step === 'joined-line' ? state.dugField : (fact.field ?? state.dugField);
  return withTruck({ ...state, filling, dugField }, fact.truck, fact.atMs, (truck, around) =>
    withReport(truck, fact, around),
  );
};

const onTicket = (state: SeasonState, fact: FactOf<'ticket-booked'>): SeasonState => {
  const { serial, station, truck } = fact.ticket;
  const key = `${station} ${serial ?? ''}`;
  // `accept` refuses a known serial; a correction that was heard late could still bring one in twice.
  if (serial !== null && got(state.serials, key)) return state;
  const serials = serial === null ? state.serials : withPut(state.serials, [[key, true]]);
  const booked = { ...state, serials, tickets: [...state.tickets, asBooked(fact)] };
  return withTruck(booked, truck, fact.atMs, (known, around) => withTicket(known, fact, around));
};

const onNotice = (state: SeasonState, fact: FactOf<'notice-raised'>): SeasonState => {
  const { step, atMs, heardMs, by } = fact;
  const fresh: NoticeEvent = { event: step.event, steps: [], seen: new Map() };
  const known = state.notices.find((notice) => notice.event === step.event) ?? fresh;
  const seen = new Map(asksAnew(step, known.steps.at(-1)?.step ?? null) ? [] : known.seen);
  if (by !== null) seen.set(by, atMs);
  const event = { ...known, steps: [...known.steps, { step, atMs, heardMs, by }], seen };
  return { ...state, notices: [...state.notices.filter((notice) => notice !== known), event] };
};

/** "Got it" is for all that has been told by then. */
const onSeen = (state: SeasonState, { person, atMs }: FactOf<'notice-seen'>): SeasonState => {
  const confirmed = <T extends { seen: ReadonlyMap<PersonId, EpochMs> }>(told: T): T =>
    told.seen.has(person) ? told : { ...told, seen: new Map(told.seen).set(person, atMs) };
  return {
    ...state,
    notices: state.notices.map(confirmed),
    passedWords: state.passedWords.map(confirmed),
  };
};

const onShift = (state: SeasonState, fact: FactOf<'shift-told'>): SeasonState => {
  const before = state.shifts.get(fact.person) ?? ON_SHIFT;
  const offSinceMs = fact.off === null ? before.offSinceMs : fact.off ? fact.atMs : null;
  const noticesWhenOff = fact.noticesWhenOff ?? before.noticesWhenOff;
  return { ...state, shifts: new Map(state.shifts).set(fact.person, { offSinceMs, noticesWhenOff }) };
};

const onOffer = (state: SeasonState, fact: FactOf<'reading-offered'>): SeasonState => ({
  ...state,
  offers: new Map(state.offers).set(fact.person, fact),
  offersMade: Math.max(state.offersMade, fact.number),
});

const onChoice = (state: SeasonState, { person, number }: FactOf<'reading-chosen'>): SeasonState => {
  const offers = new Map(state.offers);
  if (offers.get(person)?.number === number) offers.delete(person);
  return { ...state, offers };
};

const withListed = <F extends { place: string }>(
  lists: ReadonlyMap<string, readonly F[]>,
  fact: F,
): ReadonlyMap<string, readonly F[]> =>
  new Map(lists).set(fact.place, [...(lists.get(fact.place) ?? []), fact]);

const onMachine = (state: SeasonState, fact: FactOf<'machine-reported'>): SeasonState => {
  const machinesDown = new Map(state.machinesDown);
  if (fact.runs) machinesDown.delete(fact.machine);
  else machinesDown.set(fact.machine, fact);
  return { ...state, machinesDown };
};

const onTaught = (state: SeasonState, { said, means }: FactOf<'word-taught'>): SeasonState => {
  const taught = new Map(state.taught);
  if (means === null) taught.delete(said);
  else taught.set(said, means);
  return { ...state, taught };
};

/** Two days of hourly ones. */
const FORECASTS_KEPT = 48;

const onForecast = (state: SeasonState, fact: FactOf<'forecast-issued'>): SeasonState => {
  const known = state.forecasts.get(fact.place) ?? [];
  // The same issue again brings newer alerts.
  const others = known.filter(({ issuedMs }) => issuedMs !== fact.issuedMs);
  const kept = [...others, fact].sort((a, b) => a.issuedMs - b.issuedMs).slice(-FORECASTS_KEPT);
  const issued = withListed(state.issued, fact);
  return { ...state, issued, forecasts: new Map(state.forecasts).set(fact.place, kept) };
};

const withPerson = (
  state: SeasonState,
  id: PersonId,
  change: { truck: TruckId } | { language: Language },
): SeasonState => {
  const person = personById(state.roster, id);
  if (!person) return state;
  return { ...state, roster: changeRoster(state.roster, { list: 'people', put: { ...person, ...change } }) };
};

/** Who reports the next thing no longer answers what was asked of the one before. */
const withoutOffer = (state: SeasonState, fact: Fact): SeasonState => {
  if (fact.by === null || !isUndoable(fact) || !state.offers.has(fact.by)) return state;
  const offers = new Map(state.offers);
  offers.delete(fact.by);
  return { ...state, offers };
};

export const stepped = (state: SeasonState, fact: Fact): SeasonState =>
  onFact(withoutOffer(state, fact), fact);

const onFact = (state: SeasonState, fact: Fact): SeasonState => {
  switch (fact.kind) {
    case 'truck-reported':
      return onTruckReport(state, fact);
    case 'ticket-booked':
      return onTicket(state, fact);
    case 'line-seen':
      return { ...state, headCounts: [...state.headCounts, fact] };
    case 'pilers-seen':
      return { ...state, pilerReports: [...state.pilerReports, fact] };
    case 'station-reported':
      return { ...state, stationReports: [...state.stationReports, fact] };
    case 'loads-turned-away':
      return { ...state, turnedAway: [...state.turnedAway, fact] };
    case 'root-measured':
      return { ...state, rootReadings: [...state.rootReadings, fact] };
    case 'crown-checked':
      return { ...state, crownChecks: [...state.crownChecks, fact] };
    case 'field-dug':
      return { ...state, dugField: fact.field };
    case 'acres-told':
      return { ...state, acresTold: [...state.acresTold, fact] };
    case 'word-taught':
      return onTaught(state, fact);
    case 'machine-reported':
      return onMachine(state, fact);
    case 'reading-offered':
      return onOffer(state, fact);
    case 'reading-chosen':
      return onChoice(state, fact);
    case 'truck-taken':
      return withPerson(state, fact.person, { truck: fact.truck });
    case 'forecast-issued':
      return onForecast(state, fact);
    case 'air-observed':
      return { ...state, observed: withListed(state.observed, fact) };
    case 'forecast-warned':
      return { ...state, forecastWarnings: new Map(state.forecastWarnings).set(fact.place, fact) };
    case 'words-passed':
      return { ...state, passedWords: [...state.passedWords, { fact, seen: new Map() }] };
    case 'notice-raised':
      return onNotice(state, fact);
    case 'line-warned':
      return { ...state, lineWarnings: [...state.lineWarnings, fact] };
    case 'notice-seen':
      return onSeen(state, fact);
    case 'shift-told':
      return onShift(state, fact);
    case 'stranger-heard':
      return { ...state, strangers: new Set(state.strangers).add(`${fact.platform}:${fact.user}`) };
    case 'language-chosen':
      return withPerson(state, fact.person, { language: fact.language });
    case 'list-changed':
      return { ...state, roster: changeRoster(state.roster, fact.change) };
    // Resolved before the fold (book/changes.ts), or of no lasting effect.
    case 'entry-withdrawn':
    case 'entry-corrected':
    case 'emergency-called':
      return state;
  }
};
