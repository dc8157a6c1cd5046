/**
 * False alarms against missed stops: the same harvest days under several rules, with simulated forecast errors.
 * Run: npm run backtest:weather
 */
import { HEAT_OPTIONS, heatStop } from '../../src/core/weather/heat-stop.ts';
import type { HeatOptions } from '../../src/core/weather/heat-stop.ts';
import { zoneClock } from '../../src/run/host/zone-clock.ts';
import { LIMIT_F, scoreDay } from './score.ts';
import type { DayScore, Rule } from './score.ts';
import { harvestDays, issuesOf, randomOf } from './season.ts';
import { YEARS, seasonOf } from './seasons.ts';

const SEED = 20261020;
const station = { id: 'station', airLimitF: LIMIT_F, rootLimitF: LIMIT_F, zone: 'UTC' };

const product =
  (changes: Partial<HeatOptions>): Rule =>
  (current, issues, nowMs) => {
    const forecast = issues.at(-1);
    if (!forecast) return null;
    const options = {
      ...HEAT_OPTIONS,
      ...changes,
      lastStepMs: current?.atMs ?? null,
      earlier: issues.slice(0, -1),
    };
    return heatStop(current?.step ?? null, forecast, station, zoneClock, nowMs, 'event', options).step;
  };

/** The first forecast of the day is believed, and nothing after it is heard: a plan on a board. */
const firstForecastOnly =
  (rule: Rule): Rule =>
  (current, issues, nowMs) =>
    rule(current, issues.slice(0, 1), nowMs);

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const share = (part: readonly unknown[], whole: readonly unknown[]): string =>
  `${((100 * part.length) / whole.length).toFixed(1)} %`;
const perDay = (scores: readonly DayScore[], of: (score: DayScore) => number): string =>
  (sum(scores.map(of)) / scores.length).toFixed(0);

const row = (name: string, scores: readonly DayScore[]): string[] => {
  const warm = scores.filter((score) => score.isWarm);
  const clearlyWarm = warm.filter((score) => score.overF >= 2);
  const cool = scores.filter((score) => !score.isWarm);
  const missed = (score: DayScore): boolean => !score.inTime;
  return [
    name,
    share(warm.filter(missed), warm),
    share(clearlyWarm.filter(missed), clearlyWarm),
    share(
      cool.filter((score) => score.stopped),
      cool,
    ),
    perDay(warm, (score) => score.warmDugMin),
    perDay(warm, (score) => score.lostMin),
    perDay(cool, (score) => score.lostMin),
    (sum(scores.map((score) => score.messages)) / scores.length).toFixed(2),
  ];
};

const HEADER = [
  'rule',
  'warm days with no word before the crossing',
  'the same, 2 °F or more too warm',
  'cool days stopped for nothing',
  'min dug too warm, warm day',
  'min lost, warm day',
  'min lost, cool day',
  'notices a day',
];

/** In whole °F, 50 % is 1 °F above the limit on the day itself and 80 % is 2 °F above. */
const rules: [string, Rule][] = [
  ['plan of the first forecast', firstForecastOnly(product({ stopChance: 0.5 }))],
  ['stop at 50 %', product({ stopChance: 0.5 })],
  ['stop at 80 % (as set)', product({})],
  ['stop at 90 %', product({ stopChance: 0.9 })],
  ['stop at 80 %, no last call', product({ watchChance: 0.8 })],
];

const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |\n`;

const days = harvestDays();
const warmDays = days.filter((day) => scoreDay(day, [], () => null).isWarm).length;
process.stdout.write(`${days.length} days, ${warmDays} of them above ${LIMIT_F} °F in the afternoon\n`);
for (const [errors, scale] of [
  ['as in the plains: 3 °F a day ahead', 1],
  ['as in a mountain valley: twice that', 2],
] as const) {
  process.stdout.write(`\nForecast errors ${errors}\n\n${line(HEADER)}${line(HEADER.map(() => '---'))}`);
  for (const [name, rule] of rules) {
    const random = randomOf(SEED);
    const scores = days.map((day) => scoreDay(day, issuesOf(day, scale, random), rule));
    process.stdout.write(line(row(name, scores)));
  }
}

const CREW_HEADER = [
  'autumn',
  'warm days',
  'grower, foreman',
  'driver',
  'digger, topper',
  'room',
  'chasers',
  'flip-flops',
  'no word before the crossing',
  'the same, 2 °F or more',
  'stopped for nothing',
];
process.stdout.write(
  `\nA crew of nine, 60 days, limit 60 °F\n\n${line(CREW_HEADER)}${line(CREW_HEADER.map(() => '---'))}`,
);
for (const year of YEARS) {
  const { score } = seasonOf(year);
  const { perDay, warmDays, toRoom, chasers, flipFlops, missed, clearlyMissed, needless } = score;
  const counts = [chasers, flipFlops, missed, clearlyMissed, needless].map(String);
  const daily = [perDay.grower, perDay.driver, perDay['topper-operator'], toRoom].map((n) => n.toFixed(1));
  process.stdout.write(line([String(year), String(warmDays), ...daily, ...counts]));
}
