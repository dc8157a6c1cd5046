/**
 * False alarms against missed stops: the same harvest days under several rules, with simulated forecast errors.
 * Run: node tests/backtest-weather/main.ts
 */
import type { NoticeStep } from '../../src/core/facts.ts';
import { HEAT_OPTIONS, heatStop } from '../../src/core/weather/heat-stop.ts';
import type { HeatOptions } from '../../src/core/weather/heat-stop.ts';
import { zoneClock } from '../../src/run/zone-clock.ts';
import { LIMIT_F, scoreDay } from './score.ts';
import type { DayScore, Rule } from './score.ts';
import { harvestDays, issuesOf, randomOf } from './season.ts';
import type { Issue } from './season.ts';

const SEED = 20261020;
const REPEATS = 4;
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

/** No forecast at all: the dig stops when the air is seen above the limit, and starts when it is seen below 53 °F. */
const seenOnly: Rule = (current, issues, nowMs) => {
  const seenAt = (): Issue => ({ issuedMs: nowMs, hours: issues.at(-1)?.hours.slice(0, 1) ?? [] });
  const { temperatureF } = seenAt().hours[0] ?? { temperatureF: 0 };
  const stands = current?.step.stage === 'stop';
  const step = (stage: NoticeStep['stage']): NoticeStep => ({
    event: 'event',
    number: 1,
    notice: 'heat',
    stage,
    source: 'forecast',
    place: null,
    stopToppingMs: nowMs,
    stopAtMs: nowMs,
    resumeAtMs: null,
    peakF: null,
    peakMs: null,
    limitF: LIMIT_F,
    chance: null,
    words: null,
  });
  if (!stands && temperatureF > LIMIT_F) return step('stop');
  return stands && temperatureF <= LIMIT_F - 2 ? step('all-clear') : null;
};

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const share = (part: readonly unknown[], whole: readonly unknown[]): string =>
  `${((100 * part.length) / whole.length).toFixed(1)} %`;
const perDay = (scores: readonly DayScore[], of: (score: DayScore) => number): string =>
  (sum(scores.map(of)) / scores.length).toFixed(0);

const row = (name: string, scores: readonly DayScore[]): string[] => {
  const warm = scores.filter((score) => score.isWarm);
  const clearlyWarm = warm.filter((score) => score.overF >= 2);
  const cool = scores.filter((score) => !score.isWarm);
  const missed = (score: DayScore): boolean => score.noticeMin === null;
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

const rules: [string, Rule][] = [
  ['plan of the first forecast', firstForecastOnly(product({ stopChance: 0.5 }))],
  ['stop at 50 %', product({ stopChance: 0.5 })],
  ['stop at 65 %', product({ stopChance: 0.65 })],
  ['stop at 80 % (as set)', product({})],
  ['stop at 90 %', product({ stopChance: 0.9 })],
  ['stop at 80 %, last call at 80 % too', product({ watchChance: 0.8 })],
];

const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |\n`;

const days = harvestDays();
for (const [errors, scale] of [
  ['as in the plains: 3 °F a day ahead', 1],
  ['as in a mountain valley: twice that', 2],
] as const) {
  process.stdout.write(
    `\n${days.length} days, ${REPEATS} times each, limit ${LIMIT_F} °F, forecast errors ${errors}\n\n`,
  );
  process.stdout.write(line(HEADER) + line(HEADER.map(() => '---')));
  for (const [name, rule] of rules) {
    const random = randomOf(SEED);
    const scores = Array.from({ length: REPEATS }, () => days)
      .flat()
      .map((day) => scoreDay(day, issuesOf(day, scale, random), rule));
    process.stdout.write(line(row(name, scores)));
  }
}
