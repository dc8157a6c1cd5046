/** The machine-readable content of what is said of the scale line; field names are stable, as in data.ts. */
import type { FleetMatch } from '../core/line/fleet.ts';
import type { Evidence } from '../core/line/types.ts';
import type { Telling } from '../core/telling.ts';
import type { EpochMs } from '../core/units.ts';

export type Data = Record<string, unknown>;

/** Writes an instant; handed in because the pure folders have no calendar. */
export type Iso = (atMs: EpochMs) => string;

export const isoOrNull = (iso: Iso, atMs: EpochMs | null): string | null =>
  atMs === null ? null : iso(atMs);

const minutes = (min: number): number => Math.round(min * 10) / 10;

const evidence = (found: Evidence, iso: Iso): Data => ({
  serial: found.lastSerial?.serial ?? null,
  serialAt: isoOrNull(iso, found.lastSerial?.atMs ?? null),
  trucksAhead: found.trucksAhead === null ? null : Math.round(found.trucksAhead),
  ratePerHour: found.ratePerHour === null ? null : minutes(found.ratePerHour),
  newestAgeMin: found.newestAgeMin === null ? null : minutes(found.newestAgeMin),
});

const wait = (telling: Extract<Telling, { tell: 'wait' }>, iso: Iso): Data => {
  const { station, arriveInMin, leaveInMin, haulMin, forecast, hold } = telling;
  const figures = forecast.known ? forecast : forecast.usual;
  const { medianMin, lowMin, highMin } = figures ?? { medianMin: null, lowMin: null, highMin: null };
  const rounded = (min: number | null): number | null => (min === null ? null : minutes(min));
  return {
    station,
    arriveInMin: minutes(arriveInMin),
    medianMin: rounded(medianMin),
    lowMin: rounded(lowMin),
    highMin: rounded(highMin),
    known: forecast.known,
    leaveInMin,
    haulMin: rounded(haulMin),
    evidence: forecast.known ? evidence(forecast.evidence, iso) : null,
    hold: hold?.advice.hold ? { truck: hold.truck, because: hold.advice.because } : null,
  };
};

const lineLimit = (
  { station, limitMin, forecast }: Extract<Telling, { tell: 'line-limit' }>,
  iso: Iso,
): Data => ({
  station,
  limitMin,
  medianMin: minutes(forecast.medianMin),
  lowMin: minutes(forecast.lowMin),
  highMin: minutes(forecast.highMin),
  evidence: evidence(forecast.evidence, iso),
});

const share = (part: number): number => Math.round(part * 1000) / 1000;

const fleet = (match: FleetMatch): Data => ({
  station: match.station,
  field: match.field,
  trucks: match.trucks,
  needed: match.needed,
  loadMin: minutes(match.loadMin),
  roundMin: minutes(match.roundMin),
  waitMin: minutes(match.waitMin),
  known: match.waitKnown,
  onPaths: match.onPaths,
  courses: match.courses.map((course) => ({
    trucks: course.trucks,
    diggerIdle: share(course.diggerIdle),
    diggerIdleBound: share(course.diggerIdleBound),
    truckWaitMin: minutes(course.truckWaitMin),
  })),
});

type LineTelling = Extract<Telling, { tell: 'wait' | 'line-limit' | 'line-stopped' | 'fleet' }>;

export const lineData = (telling: LineTelling, iso: Iso): Data => {
  switch (telling.tell) {
    case 'wait':
      return wait(telling, iso);
    case 'line-limit':
      return lineLimit(telling, iso);
    case 'line-stopped':
      return { station: telling.station, waiting: telling.waiting, silentMin: telling.silentMin };
    case 'fleet':
      return fleet(telling.fleet);
  }
};
