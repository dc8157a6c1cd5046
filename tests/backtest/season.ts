/** One station's season: earlier days to learn from, then days that no rule has seen. */
import { FRESH_CALIBRATION, calibrated, learnedFrom } from '../../src/core/line/calibration.ts';
import type { Calibration, Interval } from '../../src/core/line/calibration.ts';
import { makeForecast } from '../../src/core/line/forecast.ts';
import { learnProfile } from '../../src/core/line/learn.ts';
import { usualAt } from '../../src/core/line/profile.ts';
import type { LineProfile } from '../../src/core/line/profile.ts';
import { randomFrom, seedOf } from '../../src/core/line/random.ts';
import type { Random } from '../../src/core/line/random.ts';
import type { LineObservations } from '../../src/core/line/types.ts';
import { nearestInterval } from './conformal.ts';
import type { Past } from './conformal.ts';
import { clairvoyant } from './rules/clairvoyant.ts';
import { fluid } from './rules/fluid.ts';
import { correctedWait, ewma, lastObserved, meanOfLastHour, seenWaits, usualWaits } from './rules/naive.ts';
import { LEADS_MIN } from './scoring.ts';
import type { Scored } from './scoring.ts';
import { hearDay, observed, openingMs } from './simulator/crew.ts';
import type { DayHeard, Hearing, Rolls } from './simulator/crew.ts';
import { newDay, runDay } from './simulator/day.ts';
import type { DayState } from './simulator/day.ts';
import type { DayPlan } from './simulator/plan.ts';
import { drawDay } from './simulator/station.ts';
import type { Station } from './simulator/station.ts';

export interface SeasonPlan {
  station: Station;
  /** What training days sound like, and what test days sound like (the wrong assumptions enter here). */
  training: Hearing;
  testing: Hearing;
  trainingDays: number;
  testDays: number;
  seed: number;
  /** Own trips per day whose forecasts are scored for calibration; 0 = none. */
  feedbackPerDay: number;
  withBounds: boolean;
}

interface DayRun {
  day: number;
  plan: DayPlan;
  state: DayState;
  heard: DayHeard;
  hearing: Hearing;
}

const TARGETS_PER_DAY = 5;
const NIGHT_MIN = 2000;

type Forecasts = Record<string, (nowMin: number, leadMin: number) => Interval | number>;

const simulated = (plan: SeasonPlan, day: number, rolls: Rolls): DayRun => {
  const { station, seed } = plan;
  const hearing = day < plan.trainingDays ? plan.training : plan.testing;
  const dayPlan = drawDay(station, day, seed);
  const random = randomFrom(seedOf(seed, station.number, day, 1));
  const state = newDay(dayPlan, random);
  runDay(state, dayPlan, random, NIGHT_MIN);
  const ear = randomFrom(seedOf(seed, station.number, day, 2));
  return { day, plan: dayPlan, state, hearing, heard: hearDay(station, rolls, state, hearing, ear) };
};

const seenAt = (plan: SeasonPlan, run: DayRun, nowMin: number): LineObservations =>
  observed(plan.station, run.day, run.heard, run.hearing, nowMin);

interface Feedback {
  joinedMin: number;
  waitMin: number;
}

/** What the bot itself comes to know of its trucks' waits: only with a join and a ticket, the join late. */
const feedback = (run: DayRun, most: number, random: Random): Feedback[] =>
  run.heard.trips
    .flatMap((trip) => {
      if (trip.joinHeardMin === null || trip.ticketHeardMin === null) return [];
      const waitMin = correctedWait(trip.joinStampMin, trip.truck.weighedMin);
      return [{ joinedMin: trip.truck.weighedMin - waitMin, waitMin, by: random() }];
    })
    .sort((a, b) => a.by - b.by)
    .slice(0, most);

const naiveRules = (
  plan: SeasonPlan,
  run: DayRun,
  usual: (atMin: number) => number,
  profile: LineProfile,
): Record<string, (nowMin: number, leadMin: number) => number> => {
  const at = (nowMin: number) => seenWaits(seenAt(plan, run, nowMin));
  return {
    usual: (nowMin, leadMin) => usual(nowMin + leadMin),
    last: (nowMin, leadMin) => lastObserved(at(nowMin), nowMin, usual(nowMin + leadMin)),
    hour: (nowMin, leadMin) => meanOfLastHour(at(nowMin), nowMin, usual(nowMin + leadMin)),
    ewma: (nowMin, leadMin) => ewma(at(nowMin), nowMin, usual(nowMin + leadMin)),
    fluid: (nowMin, leadMin) =>
      fluid(at(nowMin), nowMin, leadMin, profile, seenAt(plan, run, nowMin).usualPilers),
  };
};

const trueLine = (run: DayRun, nowMin: number): number =>
  run.state.trucks.filter(({ joinedMin, weighedMin }) => joinedMin < nowMin && weighedMin > nowMin).length;

/** Ours, before calibration. */
const rawForecast = (plan: SeasonPlan, run: DayRun, profile: LineProfile, countedNow = false) => {
  const forecast = makeForecast(profile, FRESH_CALIBRATION);
  return (nowMin: number, leadMin: number): Interval => {
    const seen = seenAt(plan, run, nowMin);
    const nowMs = openingMs(run.day) + Math.round(nowMin * 60_000);
    const count = { atMs: nowMs, ahead: trueLine(run, nowMin), truck: null };
    const observations = countedNow ? { ...seen, headCounts: [...seen.headCounts, count] } : seen;
    const answer = forecast(observations, { nowMs, arriveInMin: leadMin });
    const usual = answer.known ? answer : (answer.usual ?? usualAt(profile, nowMin + leadMin));
    return usual ?? { lowMin: 0, medianMin: 10, highMin: 60 };
  };
};

const calibrateOn = (
  plan: SeasonPlan,
  run: DayRun,
  profile: LineProfile,
  calibration: Calibration,
): Calibration => {
  const raw = rawForecast(plan, run, profile);
  const random = randomFrom(seedOf(plan.seed, run.day, 3));
  let learned = calibration;
  for (const { joinedMin, waitMin } of feedback(run, plan.feedbackPerDay, random))
    for (const leadMin of LEADS_MIN)
      if (joinedMin - leadMin > 5)
        learned = learnedFrom(learned, leadMin, raw(joinedMin - leadMin, leadMin), waitMin);
  return learned;
};

/** Residuals of the naive rules on the training days, by rule and lead. */
const naivePast = (
  plan: SeasonPlan,
  runs: readonly DayRun[],
  usual: (atMin: number) => number,
  profile: LineProfile,
): Map<string, Past[]> => {
  const past = new Map<string, Past[]>();
  const random = randomFrom(seedOf(plan.seed, 4));
  for (const run of runs) {
    const rules = naiveRules(plan, run, usual, profile);
    for (const { joinedMin, waitMin } of feedback(run, 30, random))
      for (const leadMin of LEADS_MIN)
        for (const [rule, forecast] of Object.entries(rules)) {
          const key = `${rule} ${leadMin}`;
          const entry = { forecastMin: forecast(joinedMin - leadMin, leadMin), waitMin };
          past.set(key, [...(past.get(key) ?? []), entry]);
        }
  }
  return past;
};

const targets = (run: DayRun, random: Random): Feedback[] =>
  run.state.trucks
    .filter(({ joinedMin, weighedMin }) => joinedMin > 60 && joinedMin < 780 && !Number.isNaN(weighedMin))
    .map(({ joinedMin, weighedMin }) => ({ joinedMin, waitMin: weighedMin - joinedMin, by: random() }))
    .sort((a, b) => a.by - b.by)
    .slice(0, TARGETS_PER_DAY);

const boundRule =
  (plan: SeasonPlan, run: DayRun) =>
  (nowMin: number, leadMin: number): Interval => {
    const random = randomFrom(seedOf(plan.seed, plan.station.number, run.day, 1));
    const state = newDay(run.plan, random);
    runDay(state, run.plan, random, nowMin);
    return clairvoyant(state, run.plan, leadMin, seedOf(plan.seed, run.day, Math.round(nowMin)));
  };

export const runSeason = (plan: SeasonPlan): Scored[] => {
  const { station, trainingDays, testDays, seed } = plan;
  const rolls: Rolls = [4000, 52_000];
  const runs = Array.from({ length: trainingDays + testDays }, (_, day) => simulated(plan, day, rolls));
  const training = runs.slice(0, trainingDays);
  const whole = training.map((run) => seenAt(plan, run, NIGHT_MIN));
  const pilers = seenAt(plan, runs[0] ?? ({ ...training[0] } as DayRun), 0).usualPilers;
  const half = Math.floor(trainingDays / 2);
  const early = learnProfile(whole.slice(0, half), pilers);
  let calibration = training
    .slice(half)
    .reduce((learned, run) => calibrateOn(plan, run, early, learned), FRESH_CALIBRATION);
  const profile = learnProfile(whole, pilers);
  const usual = usualWaits(whole.flatMap(seenWaits));
  const past = naivePast(plan, training, usual, profile);
  const scored: Scored[] = [];
  for (const run of runs.slice(trainingDays)) {
    const raw = rawForecast(plan, run, profile);
    const rules: Forecasts = {
      ...naiveRules(plan, run, usual, profile),
      raw,
      counted: rawForecast(plan, run, profile, true),
      ...(plan.withBounds ? { clairvoyant: boundRule(plan, run) } : {}),
    };
    const random = randomFrom(seedOf(seed, station.number, run.day, 5));
    for (const { joinedMin, waitMin } of targets(run, random))
      for (const leadMin of LEADS_MIN)
        for (const [rule, forecast] of Object.entries(rules)) {
          const answer = forecast(joinedMin - leadMin, leadMin);
          const interval =
            typeof answer === 'number'
              ? nearestInterval(past.get(`${rule} ${leadMin}`) ?? [], answer)
              : answer;
          const { lowMin, medianMin, highMin } = interval;
          const day = `${station.family} ${station.number} ${run.day}`;
          const head = { leadMin, family: station.family, day, waitMin };
          scored.push({ rule, ...head, lowMin, medianMin, highMin });
          if (rule === 'raw')
            scored.push({ rule: 'ours', ...head, ...calibrated(calibration, leadMin, interval) });
        }
    calibration = calibrateOn(plan, run, profile, calibration);
  }
  return scored;
};
