import { MS_PER_MINUTE } from '../units.ts';
import type { EpochMs } from '../units.ts';
import { crossings, gapsOf, nodesOf, spansAbove, within } from './crossing.ts';
import type { Node } from './crossing.ts';
import { workOf } from './day-window.ts';
import type { HeatCase } from './heat-options.ts';
import { later5 } from './ladder.ts';
import { standingRoot } from './measured.ts';

/** When it is too warm, or nothing is known: a gap is unknown, not cool. */
const notCool = (nodes: readonly Node[], limitF: number): { fromMs: EpochMs; toMs: EpochMs | null }[] =>
  [...spansAbove(nodes, limitF), ...gapsOf(nodes)].sort((a, b) => a.fromMs - b.fromMs);

/** When the next such stretch that ends after `fromMs` begins; null = none within the forecast. */
const nextNotCoolMs = (nodes: readonly Node[], limitF: number, fromMs: EpochMs): EpochMs | null =>
  notCool(nodes, limitF).find((span) => span.toMs === null || span.toMs > fromMs)?.fromMs ?? null;

/**
 * First time from `fromMs` on at which the air is below the limit by the deadband, stays so for an hour, and stays
 * within the limit for long enough to make digging worthwhile. Null = the forecast ends before.
 */
const airCoolMs = ({ forecast, station, options }: HeatCase, fromMs: EpochMs): EpochMs | null => {
  const nodes = nodesOf(forecast.hours);
  const endMs = nodes.at(-1)?.atMs ?? fromMs;
  const rest = within(nodes, { fromMs, toMs: endMs });
  const restartF = station.airLimitF - options.deadbandF;
  const ends = notCool(rest, restartF).map((span) => span.toMs ?? endMs);
  const starts = [rest[0]?.atMs ?? endMs, ...ends].sort((a, b) => a - b);
  const staysBelow = (limitF: number, startMs: EpochMs, minutes: number): boolean => {
    const untilMs = Math.min(startMs + minutes * MS_PER_MINUTE, endMs);
    return (nextNotCoolMs(rest, limitF, startMs) ?? endMs) >= untilMs;
  };
  const cool = starts.find(
    (startMs) =>
      startMs + options.coolForMin * MS_PER_MINUTE <= endMs &&
      staysBelow(restartF, startMs, options.coolForMin) &&
      staysBelow(station.airLimitF, startMs, options.worthMin),
  );
  return cool ?? null;
};

/**
 * Roots cool after the air. If cool roots were measured since the stop began, there is nothing to wait for; if warm ones
 * were, that counts until they are measured again or the reading is too old.
 */
const rootsCoolMs = (heatCase: HeatCase, airMs: EpochMs, stopAtMs: EpochMs): EpochMs => {
  const { station, options } = heatCase;
  const reading = standingRoot(heatCase);
  const modelMs = airMs + options.rootLagMin * MS_PER_MINUTE;
  if (!reading) return modelMs;
  if (reading.temperatureF > station.rootLimitF) {
    return Math.max(modelMs, reading.atMs + options.rootHoldsMin * MS_PER_MINUTE);
  }
  return reading.atMs >= stopAtMs ? airMs : modelMs;
};

/**
 * When the dig may go on: after the warm spell of the stop, or of now if that is later. Rounded up to
 * five minutes. Null = the forecast does not reach that far.
 */
export const restartMs = (heatCase: HeatCase, stopAtMs: EpochMs): EpochMs | null => {
  const { forecast, station, nowMs } = heatCase;
  const toMs = Math.max(workOf(heatCase, stopAtMs).toMs, nowMs);
  const { upMs, downMs } = crossings(forecast.hours, station.airLimitF, { fromMs: stopAtMs, toMs });
  if (upMs !== null && downMs === null) return null;
  const airMs = airCoolMs(heatCase, downMs ?? stopAtMs);
  return airMs === null ? null : later5(rootsCoolMs(heatCase, airMs, stopAtMs));
};
