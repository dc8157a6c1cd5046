/** Observations of a day at a station, in minutes since opening. */
import type { HeadCount, LineObservations, PilerReport, Visit } from '../../../src/core/line/types.ts';

export const OPENING_MS = Date.UTC(2026, 9, 6, 13);
export const ms = (atMin: number): number => OPENING_MS + Math.round(atMin * 60_000);

/** One trip; `weighed` with its ticket known ten minutes later, or still in the line. */
export const visit = (
  truck: string,
  joinedMin: number | null,
  weighedMin: number | null = null,
  serial: number | null = null,
): Visit => ({
  truck,
  joinedMs: joinedMin === null ? null : ms(joinedMin),
  joinedStated: true,
  firstWeighedMs: weighedMin === null ? null : ms(weighedMin),
  dumpedMs: null,
  secondWeighedMs: weighedMin === null ? null : ms(weighedMin + 8),
  serial: serial === null ? null : String(serial),
  heardMs: ms(weighedMin === null ? (joinedMin ?? 0) : weighedMin + 10),
});

export const scene = (
  visits: readonly Visit[],
  headCounts: readonly HeadCount[] = [],
  pilers: readonly PilerReport[] = [],
  usualPilers = 1,
): LineObservations => ({
  station: 'station',
  visits,
  headCounts,
  pilers,
  opening: OPENING_MS,
  usualPilers,
});

export const counted = (atMin: number, ahead: number, truck: string | null = null): HeadCount => ({
  atMs: ms(atMin),
  ahead,
  truck,
});

export const ask = (nowMin: number, arriveInMin = 0) => ({ nowMs: ms(nowMin), arriveInMin });
