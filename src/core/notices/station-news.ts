/** What happens at the station is told at once to foreman and grower, and to the trucks on their way to it or in its line. */
import type { FactOf } from '../book/facts.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { mayManage } from '../roster.ts';
import type { StationId, TruckId } from '../roster.ts';
import type { Tell } from '../telling.ts';
import { addMinutes, minutesBetween } from '../units.ts';
import type { EpochMs } from '../units.ts';
import { calendarDay } from '../zone-clock.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { NEWS_MIN, UNDER_WAY_MIN } from './assumptions.ts';
import { tellAll } from './audiences.ts';
import { isOffShift } from './shifts.ts';
import { pilersOf, pilersRunning } from './station-now.ts';
import type { StationFact } from './station-now.ts';

/** The word of that station before this one, of the same kind; null = none. Undefined = there is a newer one already. */
const wordBefore = <F extends StationFact>(fact: F, all: readonly F[]): F | null | undefined => {
  const words = all.filter(({ station }) => station === fact.station);
  const at = words.findIndex(({ id }) => id === fact.id);
  return at === words.length - 1 ? (words[at - 1] ?? null) : undefined;
};

/** The gate: another state, or another hour of opening. A closing that is over says nothing. */
const isGateNews = (fact: FactOf<'station-reported'>, harvest: Harvest, sinceMs: EpochMs): boolean => {
  const { open, untilMs, heardMs } = fact;
  const before = wordBefore(fact, harvest.stationReports);
  if (before === undefined) return false;
  if (!open && (untilMs === null ? fact.atMs < sinceMs : untilMs <= heardMs)) return false;
  const isKnown = before !== null && (before.atMs >= sinceMs || (before.untilMs ?? 0) > fact.atMs);
  return !isKnown || before.open !== open || before.untilMs !== untilMs;
};

const isPilerNews = (fact: FactOf<'pilers-seen'>, harvest: Harvest, sinceMs: EpochMs): boolean => {
  const before = wordBefore(fact, harvest.pilerReports);
  if (before === undefined) return false;
  const all = pilersOf(harvest, fact.station);
  const ran = before === null || before.atMs < sinceMs ? all : pilersRunning(before, all);
  return pilersRunning(fact, all) !== ran;
};

const isNews = (fact: StationFact, harvest: Harvest, sinceMs: EpochMs): boolean => {
  const isFresh = minutesBetween(fact.atMs, fact.heardMs) <= NEWS_MIN;
  switch (fact.kind) {
    case 'station-reported':
      return (isFresh || !fact.open) && isGateNews(fact, harvest, sinceMs);
    case 'pilers-seen':
      return isFresh && isPilerNews(fact, harvest, sinceMs);
    case 'loads-turned-away':
      return isFresh;
  }
};

const trucksBound = ({ trucks }: Harvest, station: StationId, nowMs: EpochMs): Set<TruckId | null> =>
  new Set(
    [...trucks.values()]
      .filter(({ phase }) => phase === 'hauling' || phase === 'in-line')
      .filter(({ sinceMs }) => addMinutes(sinceMs, UNDER_WAY_MIN) >= nowMs)
      .filter(({ loads }) => loads.at(-1)?.station === station)
      .map(({ truck }) => truck),
  );

/** Whoever said it knows it. */
export const stationTells = (fact: StationFact, harvest: Harvest, clock: ZoneClock): Tell[] => {
  const { station, heardMs, by } = fact;
  const { people, zone } = harvest.roster;
  if (!isNews(fact, harvest, calendarDay(clock, zone, heardMs).fromMs)) return [];
  const moment = { harvest, clock, nowMs: heardMs };
  const bound = trucksBound(harvest, station, heardMs);
  const hearers = people.filter(
    (person) =>
      person.id !== by && (mayManage(person) || (bound.has(person.truck) && !isOffShift(moment, person))),
  );
  const of = pilersOf(harvest, station);
  const running = fact.kind === 'pilers-seen' ? pilersRunning(fact, of) : of;
  return tellAll(
    hearers.map(({ id }) => ({ to: 'person', person: id })),
    { tell: 'station-news', fact, pilers: { running, of } },
    `station:${fact.id}`,
    true,
  );
};
