/** Milliseconds that one forecast takes at the end of a day of 25, 50, 100 and 250 tickets: `node tests/bench/forecast.ts`. */
import { FRESH_CALIBRATION } from '../../src/core/line/calibration.ts';
import { makeForecast } from '../../src/core/line/forecast.ts';
import { defaultProfile } from '../../src/core/line/profile.ts';
import { randomFrom } from '../../src/core/line/random.ts';
import { USUAL_HEARING, hearDay, observed, openingMs } from '../backtest/simulator/crew.ts';
import { newDay, runDay } from '../backtest/simulator/day.ts';
import { drawDay, drawStation } from '../backtest/simulator/station.ts';

const ROUNDS = 40;
const NOW_MIN = 700;

/** Processor time, so that other work on the machine does not count. */
const cpuMs = (): number => process.cpuUsage().user / 1000;

const median = (numbers: number[]): number => numbers.sort((a, b) => a - b)[numbers.length >> 1] ?? 0;

for (const tickets of [25, 50, 100, 250]) {
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
  const slowest = Math.max(...times.slice(5));
  console.log(
    `${tickets} loads (${observations.visits.length} visits heard): median ${median(times).toFixed(1)} ms, slowest ${slowest.toFixed(1)} ms`,
  );
}
