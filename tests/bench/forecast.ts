/**
 * Milliseconds that one forecast takes at the end of a day of 25 to 250 tickets, and whether they grow in line with the
 * tickets: `node tests/bench/forecast.ts`
 */
import { FRESH_CALIBRATION } from '../../src/core/line/model/calibration.ts';
import { makeForecast } from '../../src/core/line/wait-forecast.ts';
import { defaultProfile } from '../../src/core/line/model/usual-day.ts';
import { randomFrom } from '../../src/core/line/model/random.ts';
import { USUAL_HEARING, hearDay, observed, openingMs } from '../backtest/simulator/crew.ts';
import { newDay, runDay } from '../backtest/simulator/day.ts';
import { drawDay, drawStation } from '../backtest/simulator/station.ts';

const ROUNDS = 40;
const AIM_MS = 60;
const NOW_MIN = 700;

/** Processor time, so that other work on the machine does not count. */
const cpuMs = (): number => process.cpuUsage().user / 1000;

const median = (numbers: number[]): number => numbers.sort((a, b) => a - b)[numbers.length >> 1] ?? 0;

const cost: { visits: number; ms: number }[] = [];
for (const tickets of [25, 50, 100, 150, 200, 250]) {
  const busiest = { ...drawStation(1, 'open', tickets, 1), trucksPerDay: Math.max(200, tickets), pilers: 2 };
  const station = { ...busiest, secondWindows: [{ fromMin: 0, toMin: 780 }] };
  const plan = drawDay(station, 0, 1);
  const random = randomFrom(1);
  const state = newDay(plan, random);
  runDay(state, plan, random, 2000);
  const heard = hearDay(station, [4000, 52_000], state, USUAL_HEARING, random);
  const observations = observed(station, 0, heard, USUAL_HEARING, NOW_MIN);
  const forecast = makeForecast(defaultProfile(2), FRESH_CALIBRATION);
  const ask = { nowMs: openingMs(0) + NOW_MIN * 60_000, arriveInMin: 30 };
  const times = Array.from({ length: ROUNDS }, () => {
    const begun = cpuMs();
    forecast(observations, ask);
    return cpuMs() - begun;
  });
  const ms = median(times);
  const visits = observations.visits.length;
  cost.push({ visits, ms });
  const slowest = Math.max(...times.slice(5)).toFixed(1);
  console.log(
    `${tickets} loads (${visits} heard of): median ${ms.toFixed(1)} ms, slowest ${slowest} ms (aim: ${AIM_MS} ms)`,
  );
}

const mean = (numbers: readonly number[]): number =>
  numbers.reduce((sum, number) => sum + number, 0) / numbers.length;
const [middle, middleMs] = [mean(cost.map(({ visits }) => visits)), mean(cost.map(({ ms }) => ms))];
const slope =
  mean(cost.map(({ visits, ms }) => (visits - middle) * (ms - middleMs))) /
  mean(cost.map(({ visits }) => (visits - middle) ** 2));
const off = Math.max(...cost.map(({ visits, ms }) => Math.abs(ms - middleMs - slope * (visits - middle))));
console.log(
  `A straight line: ${(middleMs - slope * middle).toFixed(1)} ms for the day and ${slope.toFixed(2)} ms a ticket; off it by at most ${off.toFixed(1)} ms`,
);
