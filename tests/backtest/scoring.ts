/** How good forecasts were. */
import type { WaitInterval } from '../../src/core/line/model/calibration.ts';
import type { Family } from './simulator/station.ts';

export const LEADS_MIN = [0, 15, 30, 45] as const;

export interface Scored extends WaitInterval {
  set: string;
  rule: string;
  leadMin: number;
  family: Family;
  /** Station and day, so that days can be compared in pairs. */
  day: string;
  waitMin: number;
}

export interface Scores {
  count: number;
  mae: number;
  rmse: number;
  /** Mean of the quantile losses at .1, .5 and .9. */
  pinball: number;
  coverage: number;
  width: number;
  bias: number;
}

export const mean = (numbers: readonly number[]): number =>
  numbers.reduce((sum, number) => sum + number, 0) / numbers.length;

/** Loss of `forecast` as the `share` quantile (Koenker & Bassett, Econometrica 46(1), 1978). */
export const pinball = (share: number, forecast: number, outcome: number): number =>
  Math.max(share * (outcome - forecast), (share - 1) * (outcome - forecast));

export const scoresOf = (scored: readonly Scored[]): Scores => ({
  count: scored.length,
  mae: mean(scored.map((s) => Math.abs(s.medianMin - s.waitMin))),
  rmse: Math.sqrt(mean(scored.map((s) => (s.medianMin - s.waitMin) ** 2))),
  pinball: mean(
    scored.map(
      (s) =>
        (pinball(0.1, s.lowMin, s.waitMin) +
          pinball(0.5, s.medianMin, s.waitMin) +
          pinball(0.9, s.highMin, s.waitMin)) /
        3,
    ),
  ),
  coverage: mean(scored.map((s) => (s.lowMin <= s.waitMin && s.waitMin <= s.highMin ? 1 : 0))),
  width: mean(scored.map((s) => s.highMin - s.lowMin)),
  bias: mean(scored.map((s) => s.medianMin - s.waitMin)),
});
