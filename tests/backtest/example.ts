/** The course of one day: what a truck that joined would have waited, and what was forecast. */
import type { WaitInterval } from '../../src/core/line/model/calibration.ts';
import { seenAt, NIGHT_MIN } from './day-run.ts';
import type { DayRun } from './day-run.ts';
import type { Asked } from './forecasts.ts';
import { seenWaits } from './rules/naive.ts';
import { mean } from './scoring.ts';

export interface Example {
  day: string;
  /** Every truck of the station. */
  waits: { joinedMin: number; waitMin: number }[];
  /** Those that the bot came to know of. */
  seen: { joinedMin: number; waitMin: number }[];
  forecasts: ({ atMin: number } & WaitInterval)[];
}

const EVERY_MIN = 10;
const UNTIL_MIN = 780;

const LINE_MIN = 15;

/** Trucks wait for a quarter of an hour or more on average. */
export const hasLine = ({ state }: DayRun): boolean => {
  const waits = state.trucks.map(({ joinedMin, weighedMin }) => weighedMin - joinedMin);
  return mean(waits.filter((waitMin) => !Number.isNaN(waitMin))) >= LINE_MIN;
};

export const exampleOf = (run: DayRun, ours: Asked<WaitInterval> | null): Example => ({
  day: `${run.station.family} ${run.station.number}, day ${run.day}`,
  waits: run.state.trucks
    .filter(({ weighedMin }) => !Number.isNaN(weighedMin))
    .map(({ joinedMin, weighedMin }) => ({ joinedMin, waitMin: weighedMin - joinedMin })),
  seen: seenWaits(seenAt(run, NIGHT_MIN)),
  forecasts:
    ours === null
      ? []
      : Array.from({ length: UNTIL_MIN / EVERY_MIN }, (_, step) => {
          const atMin = EVERY_MIN * (step + 1);
          return { atMin, ...ours(atMin, 0) };
        }),
});
