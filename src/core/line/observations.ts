import type { Day } from '../day.ts';
import type { Load } from '../haul/load.ts';
import { stationById } from '../roster.ts';
import type { FieldId, StationId } from '../roster.ts';
import { minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import type { LineObservations, Visit } from './types.ts';

/** One way loaded, where nothing has been learned: 20-30 min (a driver's account, travelingwithtucson, 2020). */
const USUAL_HAUL_MIN: Minutes = 25;

const visitOf = (load: Load): Visit => ({
  truck: load.truck,
  joinedMs: load.stamps['joined-line']?.atMs ?? null,
  joinedStated: load.stamps['joined-line']?.source === 'stated',
  firstWeighedMs: load.stamps['first-weighed']?.atMs ?? null,
  dumpedMs: load.stamps.dumped?.atMs ?? null,
  secondWeighedMs: load.stamps['second-weighed']?.atMs ?? null,
  serial: load.ticket?.serial ?? null,
  heardMs: load.heardMs,
});

const allLoads = (day: Day): Load[] => [...day.trucks.values()].flatMap((truck) => truck.loads);

/** What the crew saw of one station's line since `fromMs` (the start of the day). */
export const lineObservations = (day: Day, station: StationId, fromMs: EpochMs): LineObservations => {
  const since = <T extends { station: StationId; atMs: EpochMs }>(facts: readonly T[]): T[] =>
    facts.filter((fact) => fact.station === station && fact.atMs >= fromMs);
  const opened = since(day.stationReports).findLast((report) => report.open);
  return {
    station,
    visits: allLoads(day)
      .filter((load) => load.station === station && load.startMs >= fromMs)
      .sort((a, b) => a.startMs - b.startMs)
      .map(visitOf),
    headCounts: since(day.headCounts).map(({ atMs, ahead, truck }) => ({ atMs, ahead, truck })),
    pilers: since(day.pilerReports).map(({ atMs, open, down }) => ({ atMs, open, down })),
    opening: opened?.atMs ?? fromMs,
    usualPilers: stationById(day.roster, station)?.pilers ?? 1,
  };
};

/** Median minutes from leaving the field full to joining the line, of this field and station, else of any field. */
export const haulMinutes = (day: Day, station: StationId, field: FieldId | null): Minutes => {
  const hauls = allLoads(day).flatMap((load) => {
    const { 'left-field': left, 'joined-line': joined } = load.stamps;
    return load.station === station && left && joined
      ? [{ field: load.field, min: minutesBetween(left.atMs, joined.atMs) }]
      : [];
  });
  const own = hauls.filter((haul) => haul.field === field);
  const minutes = (own.length > 0 ? own : hauls).map((haul) => haul.min).sort((a, b) => a - b);
  return minutes[Math.floor((minutes.length - 1) / 2)] ?? USUAL_HAUL_MIN;
};
