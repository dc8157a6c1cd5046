import type { Unclear } from '../core/intent.ts';
import type { FieldId, PersonId, Roster, StationId, TruckId } from '../core/roster.ts';
import { fieldById, personById, stationById } from '../core/roster.ts';
import { addMinutes } from '../core/units.ts';
import type { EpochMs } from '../core/units.ts';
import { BREAK_MIN } from './assumptions.ts';
import { resolveClock } from './clock.ts';
import { clockOfNumber } from './clock-words.ts';
import { isDown } from './draft.ts';
import type { Draft } from './draft.ts';
import type { Hearing } from './hearing.ts';
import { slotsOf } from './sign.ts';
import type { ClockWords, Named, Sign, Slot, SlotOf } from './sign.ts';

/** A draft with ids for names and instants for clock words. */
export interface Resolved {
  draft: Draft;
  /** All slots, those in the phrase first. */
  slots: readonly Slot[];
  /** Empty where none was named. */
  trucks: readonly TruckId[];
  field: FieldId | null;
  station: StationId | null;
  person: PersonId | null;
  atMs: EpochMs | null;
  /** The clock of "in 10:05 out 10:31". */
  inMs: EpochMs | null;
  /** The end, of what can have one: a stop, a break, a breakdown, a closure. */
  untilMs: EpochMs | null;
  /** Bare numbers that are no clock. */
  numbers: readonly string[];
}

const unknownName = (
  sort: 'truck' | 'field' | 'station',
  said: string,
  ids: readonly string[],
  roster: Roster,
) => {
  const list = { truck: roster.trucks, field: roster.fields, station: roster.stations }[sort];
  const candidates = ids.length > 0 ? list.filter(({ id }) => ids.includes(id)) : list;
  return { problem: 'unknown-name', sort, said, known: candidates.map(({ name }) => name) } as const;
};

/** Where "north" may be a field or a station, talk of the line and the scale means the station. */
const meansStation = (sign: Sign): boolean =>
  sign.topic === 'haul'
    ? ['joined-line', 'first-weighed', 'dumped'].includes(sign.step)
    : ['line', 'pilers', 'station', 'turned-away'].includes(sign.topic) ||
      (sign.topic === 'ask' && ['line', 'leave'].includes(sign.about));

interface Places {
  field: FieldId | null;
  station: StationId | null;
}

const placesOf = (draft: Draft, slots: readonly Slot[], roster: Roster): Places | Unclear => {
  let places: Places = { field: null, station: null };
  for (const { fields, stations, said } of slotsOf(slots, 'place')) {
    const [isField, isStation] = [fields.length > 0, stations.length > 0];
    const sort = (isField === isStation ? meansStation(draft.sign) : isStation) ? 'station' : 'field';
    const ids = sort === 'station' ? stations : fields;
    const [only] = ids;
    if (only === undefined || ids.length > 1) return unknownName(sort, said, ids, roster);
    // The first one counts: "south 80, not north 40".
    places =
      sort === 'station'
        ? { ...places, station: places.station ?? only }
        : { ...places, field: places.field ?? only };
  }
  return places;
};

const trucksOf = (named: readonly Named[], roster: Roster): TruckId[] | Unclear => {
  const wrong = named.find(({ ids }) => ids.length !== 1);
  if (wrong !== undefined) return unknownName('truck', wrong.said, wrong.ids, roster);
  return named.flatMap(({ ids }) => ids);
};

const zoneOf = ({ field, station }: Places, { roster, zone }: Hearing): string =>
  fieldById(roster, field ?? '')?.zone ?? stationById(roster, station ?? '')?.zone ?? zone;

interface Said {
  clock: ClockWords;
  said: string;
}

/** Bare numbers such as 1015 are clocks in reports, never in tickets, counts or temperatures. */
const readsBareClock = (sign: Sign): boolean =>
  ['haul', 'dig', 'resume', 'stop', 'correct', 'shift'].includes(sign.topic);

/** In these, a number after "at" may be the thing itself: "root at 57", "line at 14". */
const clockOfSlot = ({ text, lead }: SlotOf<'number'>, sign: Sign): ClockWords | null => {
  if (sign.topic === 'root' || sign.topic === 'line') return null;
  if (sign.topic === 'ticket') return lead === null ? null : clockOfNumber(text, true);
  return lead !== null || readsBareClock(sign) ? clockOfNumber(text, lead !== null) : null;
};

const clockSaid = (draft: Draft, slots: readonly Slot[], isIn: boolean): Said | null => {
  const [clock] = slotsOf(slots, 'clock').filter(
    ({ lead }) => (lead === 'in' && draft.sign.topic === 'ticket') === isIn,
  );
  if (clock !== undefined || isIn) return clock ?? null;
  const numbers = slotsOf(draft.slots, 'number').map((slot) => ({
    clock: clockOfSlot(slot, draft.sign),
    said: slot.said,
  }));
  return (
    numbers.flatMap(({ clock: words, said }) => (words === null ? [] : [{ clock: words, said }]))[0] ?? null
  );
};

const isTillLed = (slot: Slot): boolean =>
  (slot.slot === 'clock' || slot.slot === 'number') && slot.lead === 'till';

const isStanding = (sign: Sign): boolean =>
  (sign.topic === 'haul' && (sign.step === 'parked' || sign.step === 'down')) || isDown(sign);

/** The time that is told of a break or a breakdown is its end. */
const isBreakEnd = (said: Said | null, sign: Sign, zone: string, hearing: Hearing): boolean => {
  if (said === null || 'fromNowMin' in said.clock || !isStanding(sign)) return false;
  const { sentMs } = hearing;
  const backMs = resolveClock(said.clock, 'back', { ...hearing, zone });
  const aheadMs = resolveClock(said.clock, 'ahead', { ...hearing, zone });
  const isSoon = aheadMs !== null && aheadMs <= addMinutes(sentMs, BREAK_MIN.soon);
  return isSoon && (backMs === null || backMs < addMinutes(sentMs, 0 - BREAK_MIN.longAgo));
};

/** What has an end of its own, beside when it began. */
const hasEnd = (sign: Sign): boolean =>
  sign.topic === 'stop' || (sign.topic === 'station' && !sign.ahead) || isStanding(sign);

/** Stops, the way ahead and "till 6" look forward; reports look back. */
const towardOf = (sign: Sign, isTill: boolean): 'back' | 'ahead' => {
  if (isTill || sign.topic === 'stop' || sign.topic === 'resume' || sign.topic === 'ask') return 'ahead';
  return sign.topic === 'station' && sign.ahead ? 'ahead' : 'back';
};

/** The instant of the clock words; undefined where there is none that they can mean. */
const instantOf = (
  said: Said | null,
  toward: 'back' | 'ahead',
  zone: string,
  hearing: Hearing,
): EpochMs | null | undefined =>
  said === null ? null : (resolveClock(said.clock, toward, { ...hearing, zone }) ?? undefined);

/** When it was or is to be, and until when. */
const timesSaid = (
  draft: Draft,
  slots: readonly Slot[],
  zone: string,
  hearing: Hearing,
): { said: Said | null; end: Said | null } => {
  const said = clockSaid(draft, slots, false);
  if (!hasEnd(draft.sign)) return { said, end: null };
  if (isBreakEnd(said, draft.sign, zone, hearing)) return { said: null, end: said };
  const only = (isEnd: boolean): Said | null => {
    const kept = (all: readonly Slot[]): Slot[] =>
      all.filter((slot) => !(slot.slot === 'clock' || slot.slot === 'number') || isTillLed(slot) === isEnd);
    return clockSaid({ ...draft, slots: kept(draft.slots) }, kept(slots), false);
  };
  return { said: only(false), end: only(true) };
};

export const resolveDraft = (draft: Draft, hearing: Hearing): Resolved | Unclear => {
  const { roster } = hearing;
  const slots = [...draft.named, ...draft.slots];
  const trucks = trucksOf(
    slotsOf(slots, 'truck').flatMap((slot) => slot.trucks),
    roster,
  );
  if ('problem' in trucks) return trucks;
  const places = placesOf(draft, slots, roster);
  if ('problem' in places) return places;
  const person = slotsOf(slots, 'person')[0]?.id ?? null;
  const zone = zoneOf(places, hearing);
  const { said, end } = timesSaid(draft, slots, zone, hearing);
  const isTill = said !== null && slots.some(isTillLed);
  const atMs = instantOf(said, towardOf(draft.sign, isTill && end === null), zone, hearing);
  const untilMs = instantOf(end, 'ahead', zone, hearing);
  const saidIn = clockSaid(draft, slots, true);
  const inMs = instantOf(saidIn, 'back', zone, hearing);
  // "Loaded in 20 minutes" is a plan, not a report.
  if (atMs === undefined && said !== null && 'fromNowMin' in said.clock) return { problem: 'not-understood' };
  if (atMs === undefined) return { problem: 'which-time', said: said?.said ?? '' };
  if (untilMs === undefined) return { problem: 'which-time', said: end?.said ?? '' };
  if (inMs === undefined) return { problem: 'which-time', said: saidIn?.said ?? '' };
  const numbers = slotsOf(draft.slots, 'number').filter((slot) => clockOfSlot(slot, draft.sign) === null);
  const texts = numbers.map(({ text }) => text);
  return { draft, slots, trucks, ...places, person, atMs, untilMs, inMs, numbers: texts };
};

export const truckOf = (person: PersonId | null, roster: Roster): TruckId | null =>
  personById(roster, person ?? '')?.truck ?? null;

/** Whole numbers as counts of trucks or pilers. */
export const countOf = (text: string | undefined): number | null => {
  const count = Number(text ?? NaN);
  return Number.isInteger(count) && count >= 0 && count < 1000 ? count : null;
};
