/** One station's season: earlier days to learn from, then days that no rule has seen. */
import { FRESH_CALIBRATION, calibrated, learnedFrom } from '../../src/core/line/model/calibration.ts';
import type { Calibration, WaitInterval } from '../../src/core/line/model/calibration.ts';
import { learnProfile } from '../../src/core/line/model/learn.ts';
import type { UsualDay } from '../../src/core/line/model/usual-day.ts';
import { randomFrom, seedOf } from '../../src/core/line/model/random.ts';
import { nearestInterval, scaledInterval } from './conformal.ts';
import type { Past } from './conformal.ts';
import { NIGHT_MIN, feedback, heardUnder, seenAt, targets, trueDay } from './day-run.ts';
import type { DayRun } from './day-run.ts';
import { exampleOf, hasLine } from './example.ts';
import type { Example } from './example.ts';
import { BASE_RULE, CRUDE_RULE, boundForecast, naiveRules, rawForecast } from './forecasts.ts';
import type { Asked } from './forecasts.ts';
import { seenWaits, usualWaits } from './rules/naive.ts';
import { LEADS_MIN } from './scoring.ts';
import type { Scored } from './scoring.ts';
import type { TestSet } from './sets.ts';
import type { Station } from './simulator/station.ts';

export interface SeasonPlan {
  station: Station;
  /** The first is the usual one: from its earlier days the profile is learned. */
  sets: readonly TestSet[];
  trainingDays: number;
  testDays: number;
  seed: number;
  /** Draw the course of the first test day that has a line. */
  example: boolean;
}

export interface Season {
  scored: Scored[];
  example: Example | null;
}

/** Own trips of a day whose forecasts are looked back at, at most. */
const FEEDBACK_PER_DAY = 5;
/** Days before the first test day on which the intervals are calibrated. */
const CALIBRATION_DAYS = 10;

/** What is learned from the earlier days. */
interface Learned {
  profile: UsualDay;
  usual: (atMin: number) => number;
  /** Residuals of the naive rules, by rule and lead. */
  past: ReadonlyMap<string, readonly Past[]>;
}

/** In the evening: the day's own tickets, against what had been forecast for those trucks. */
const calibrateOn = (
  run: DayRun,
  { leads }: TestSet,
  profile: UsualDay,
  before: Calibration,
): Calibration => {
  const raw = rawForecast(run, profile);
  const random = randomFrom(seedOf(run.seed, run.day, 3));
  let learned = before;
  for (const { joinedMin, waitMin } of feedback(run, FEEDBACK_PER_DAY, random))
    for (const leadMin of leads)
      if (joinedMin - leadMin > 5)
        learned = learnedFrom(learned, leadMin, raw(joinedMin - leadMin, leadMin), waitMin);
  return learned;
};

const naivePast = (
  runs: readonly DayRun[],
  usual: (atMin: number) => number,
  profile: UsualDay,
): Map<string, Past[]> => {
  const past = new Map<string, Past[]>();
  const remember = (key: string, entry: Past): void => {
    const entries = past.get(key);
    if (entries === undefined) past.set(key, [entry]);
    else entries.push(entry);
  };
  for (const run of runs) {
    const rules = naiveRules(run, usual, profile);
    for (const { joinedMin, waitMin } of feedback(run, 30, randomFrom(seedOf(run.seed, run.day, 4))))
      for (const leadMin of LEADS_MIN)
        for (const [rule, forecast] of Object.entries(rules))
          remember(`${rule} ${leadMin}`, { forecastMin: forecast(joinedMin - leadMin, leadMin), waitMin });
  }
  return past;
};

/** Asked twice in a row, it is reckoned once. */
const remembered = <Answer>(asked: Asked<Answer>): Asked<Answer> => {
  let last: { nowMin: number; leadMin: number; answer: Answer } | null = null;
  return (nowMin, leadMin) => {
    if (last?.nowMin !== nowMin || last.leadMin !== leadMin)
      last = { nowMin, leadMin, answer: asked(nowMin, leadMin) };
    return last.answer;
  };
};

const rulesOf = (
  run: DayRun,
  { allRules }: TestSet,
  { profile, usual, past }: Learned,
  calibration: Calibration,
): Record<string, Asked<WaitInterval>> => {
  const withCalibration =
    (raw: Asked<WaitInterval>): Asked<WaitInterval> =>
    (nowMin, leadMin) =>
      calibrated(calibration, leadMin, raw(nowMin, leadMin));
  const withResiduals =
    (rule: string, forecast: Asked<number>, interval = nearestInterval): Asked<WaitInterval> =>
    (nowMin, leadMin) =>
      interval(past.get(`${rule} ${leadMin}`) ?? [], forecast(nowMin, leadMin));
  const raw = remembered(rawForecast(run, profile));
  const ours = { ours: withCalibration(raw) };
  if (!allRules) return ours;
  const naive = naiveRules(run, usual, profile);
  return {
    ...Object.fromEntries(
      Object.entries(naive).map(([rule, forecast]) => [rule, withResiduals(rule, forecast)]),
    ),
    [CRUDE_RULE]: withResiduals(BASE_RULE, naive[BASE_RULE], scaledInterval),
    ...ours,
    'ours, not calibrated': raw,
    'ours, true count now': withCalibration(rawForecast(run, profile, true)),
    clairvoyant: boundForecast(run),
  };
};

const scoreDay = (
  run: DayRun,
  set: TestSet,
  rules: Record<string, Asked<WaitInterval>>,
  scored: Scored[],
): void => {
  const { station } = run;
  const day = `${station.family} ${station.number} ${run.day}`;
  for (const { joinedMin, waitMin } of targets(run))
    for (const leadMin of set.leads)
      for (const [rule, forecast] of Object.entries(rules)) {
        const { lowMin, medianMin, highMin } = forecast(joinedMin - leadMin, leadMin);
        const about = { set: set.name, rule, leadMin, family: station.family, day, waitMin };
        scored.push({ ...about, lowMin, medianMin, highMin });
      }
};

export const runSeason = ({ station, sets, trainingDays, testDays, seed, example }: SeasonPlan): Season => {
  const days = Array.from({ length: trainingDays + testDays }, (_, day) => trueDay(station, seed, day));
  const [usualSet] = sets;
  if (usualSet === undefined) return { scored: [], example: null };
  const training = heardUnder(days.slice(0, trainingDays), usualSet);
  const whole = training.map((run) => seenAt(run, NIGHT_MIN));
  const half = Math.floor(trainingDays / 2);
  const early = learnProfile(whole.slice(0, half), station.pilers);
  const profile = learnProfile(whole, station.pilers);
  const usual = usualWaits(whole.flatMap(seenWaits));
  const learned: Learned = { profile, usual, past: naivePast(training, usual, profile) };
  const scored: Scored[] = [];
  let shown: Example | null = null;
  let usualCalibration: Calibration | null = null;
  for (const set of sets.filter(({ tells }) => tells(station))) {
    const runs = heardUnder(days, set);
    let calibration: Calibration =
      (set.ownCalibration ? null : usualCalibration) ??
      runs
        .slice(Math.max(half, trainingDays - CALIBRATION_DAYS), trainingDays)
        .reduce((before, run) => calibrateOn(run, set, early, before), FRESH_CALIBRATION);
    usualCalibration ??= calibration;
    for (const run of runs.slice(trainingDays)) {
      const rules = rulesOf(run, set, learned, calibration);
      scoreDay(run, set, rules, scored);
      if (example && hasLine(run)) shown ??= exampleOf(run, rules['ours'] ?? null);
      calibration = calibrateOn(run, set, profile, calibration);
    }
  }
  return { scored, example: shown };
};
