/** Every rule as a question at a moment of a day. */
import { FRESH_CALIBRATION } from '../../src/core/line/model/calibration.ts';
import type { WaitInterval } from '../../src/core/line/model/calibration.ts';
import { makeForecast } from '../../src/core/line/wait-forecast.ts';
import { usualAt } from '../../src/core/line/model/usual-day.ts';
import type { UsualDay } from '../../src/core/line/model/usual-day.ts';
import { seedOf } from '../../src/core/line/model/random.ts';
import { dayUntil, seenAt, trueLine } from './day-run.ts';
import type { DayRun } from './day-run.ts';
import { clairvoyant } from './rules/clairvoyant.ts';
import { fluid } from './rules/fluid.ts';
import { ewma, lastObserved, meanOfLastHour, seenWaits } from './rules/naive.ts';
import { openingMs } from './simulator/crew.ts';

export type Asked<Answer> = (nowMin: number, leadMin: number) => Answer;

/** What all is measured against. */
export const BASE_RULE = 'last observed';
/** The same again, with the cruder interval. */
export const CRUDE_RULE = `${BASE_RULE}, cruder interval`;

export const naiveRules = (run: DayRun, usual: (atMin: number) => number, profile: UsualDay) => {
  const at = (nowMin: number) => seenWaits(seenAt(run, nowMin));
  return {
    'usual wait by hour': (nowMin, leadMin) => usual(nowMin + leadMin),
    [BASE_RULE]: (nowMin, leadMin) => lastObserved(at(nowMin), nowMin, usual(nowMin + leadMin)),
    'mean of last hour': (nowMin, leadMin) => meanOfLastHour(at(nowMin), nowMin, usual(nowMin + leadMin)),
    'moving average': (nowMin, leadMin) => ewma(at(nowMin), nowMin, usual(nowMin + leadMin)),
    fluid: (nowMin, leadMin) => fluid(at(nowMin), nowMin, leadMin, profile, seenAt(run, nowMin).usualPilers),
  } satisfies Record<string, Asked<number>>;
};

/** Ours, before calibration; `countedNow`: somebody has just counted the whole line, rightly. */
export const rawForecast = (run: DayRun, profile: UsualDay, countedNow = false): Asked<WaitInterval> => {
  const forecast = makeForecast(profile, FRESH_CALIBRATION);
  return (nowMin, leadMin) => {
    const seen = seenAt(run, nowMin);
    const nowMs = openingMs(run.day) + Math.round(nowMin * 60_000);
    const count = { atMs: nowMs, ahead: trueLine(run, nowMin), truck: null };
    const observations = countedNow ? { ...seen, headCounts: [...seen.headCounts, count] } : seen;
    const answer = forecast(observations, { nowMs, arriveInMin: leadMin });
    const usual = answer.known ? answer : (answer.usual ?? usualAt(profile, nowMin + leadMin));
    return usual ?? { lowMin: 0, medianMin: 10, highMin: 60 };
  };
};

/** Just before the truck in question joins. */
const BEFORE_MIN = 0.001;

export const boundForecast =
  (run: DayRun): Asked<WaitInterval> =>
  (nowMin, leadMin) => {
    const state = dayUntil(run, nowMin - BEFORE_MIN);
    return clairvoyant(state, run.plan, leadMin, seedOf(run.seed, run.day, Math.round(nowMin)));
  };
