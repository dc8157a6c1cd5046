/**
 * How good the wait forecast is on closed fleets: `npm run backtest:fleets -- --stations 6 --seed 11`
 *
 * Each station's season is told to the book from its first day on; on some days the bot is asked about trucks of the
 * station, now and half an hour ahead, and held against plain rules from the same messages.
 */
import { parseArgs } from 'node:util';
import { foldHarvest, withFacts } from '../../../src/core/harvest/fold.ts';
import { lineHistory } from '../../../src/core/line/history.ts';
import { forecastWith, learnDays, usualDayFrom } from '../../../src/core/line/knowledge.ts';
import type { LearnedDay } from '../../../src/core/line/knowledge.ts';
import type { WaitInterval } from '../../../src/core/line/model/calibration.ts';
import { randomFrom, seedOf } from '../../../src/core/line/model/random.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { lineLearner } from '../../../src/run/line/learner.ts';
import type { LearnLine } from '../../../src/run/line/learner.ts';
import type { Past } from '../conformal.ts';
import { mean, scoresOf } from '../scoring.ts';
import type { Scored } from '../scoring.ts';
import { simulateDay } from './day.ts';
import type { Round, Serials } from './day.ts';
import { drawHabits } from './habits.ts';
import type { StationHabit } from './habits.ts';
import { BASE_RULE, PLAIN_RULES, withInterval } from './plain-rules.ts';
import { instantOf, rosterOf, tellDay } from './telling.ts';
import type { ToldWait } from './telling.ts';

const { values } = parseArgs({
  options: {
    stations: { type: 'string', default: '6' },
    days: { type: 'string', default: '10' },
    seed: { type: 'string', default: '11' },
    // The filter alone, not calibrated: a quarter of the time.
    raw: { type: 'boolean', default: false },
  },
});
const [stations = 0, days = 0, seed = 0] = [values.stations, values.days, values.seed].map(Number);
const LEADS_MIN = [0, 30];
/** The first days of a season, and the last ones. */
const isAsked = (day: number): boolean => day === 0 || day === 2 || day >= days - 4;
const ASKED_A_DAY = 8;
const STATION = 'north-station';
/** Where the bot says that it knows nothing, and not even what is usual. */
const NOTHING_KNOWN: WaitInterval = { lowMin: 0, medianMin: 15, highMin: 60 };

const asked = (rounds: readonly Round[], day: number, habit: StationHabit): Round[] => {
  const random = randomFrom(seedOf(habit.seed, habit.number, day, 9));
  const some = rounds.filter(
    ({ loadedMin, joinedMin, weighedMin }) =>
      joinedMin > 30 && !Number.isNaN(loadedMin) && !Number.isNaN(weighedMin),
  );
  return Array.from({ length: ASKED_A_DAY }, (_, part) =>
    some.slice((part * some.length) / ASKED_A_DAY, ((part + 1) * some.length) / ASKED_A_DAY),
  ).flatMap((part) => part[Math.floor(part.length * random())] ?? []);
};

const rawLearner = (): LearnLine => {
  let known: readonly LearnedDay[] = [];
  return (history) => {
    known = learnDays(history, known);
    return usualDayFrom(history, known);
  };
};

const seasonOf = (habit: StationHabit): { scored: Scored[]; ms: number; asks: number } => {
  const random = randomFrom(seedOf(habit.seed, habit.number, 5));
  const serials: Serials = Array.from({ length: habit.scales }, (_, scale) => 4000 + 41_000 * scale);
  const learn = values.raw ? rawLearner() : lineLearner();
  const waits: ToldWait[] = [];
  const past = new Map<string, Past[]>();
  const scored: Scored[] = [];
  let harvest = foldHarvest(rosterOf(habit), []);
  let unheard: ReturnType<typeof tellDay>['facts'] = [];
  let overnight: Round[] = [];
  let [ms, asks] = [0, 0];
  const oursAt = (nowMs: number, leadMin: number): WaitInterval => {
    const heard = unheard.filter(({ heardMs }) => heardMs <= nowMs);
    unheard = unheard.filter(({ heardMs }) => heardMs > nowMs);
    harvest = withFacts(harvest, heard);
    const history = lineHistory(harvest, STATION, zoneClock, nowMs);
    const begunMs = process.cpuUsage().user;
    const knowledge = learn(history);
    ms += (process.cpuUsage().user - begunMs) / 1000;
    const answer = forecastWith(knowledge)(history.today, { nowMs, arriveInMin: leadMin });
    asks += 1;
    return answer.known ? answer : (answer.usual ?? NOTHING_KNOWN);
  };
  for (let day = 0; day < days; day += 1) {
    const rounds = simulateDay(habit, serials, overnight, random);
    overnight = rounds.filter(({ weighedMin }) => Number.isNaN(weighedMin));
    const told = tellDay(habit, day, rounds, random);
    unheard.push(...told.facts);
    waits.push(...told.waits);
    const openedMs = instantOf(day, 0);
    const plainAt = (nowMs: number, arrivesMs: number) =>
      Object.entries(PLAIN_RULES).map(([rule, by]) => ({
        rule,
        forecastMin: by({ waits, openedMs, nowMs, arrivesMs }),
      }));
    const questions = (isAsked(day) ? asked(rounds, day, habit) : [])
      .flatMap((round) => LEADS_MIN.map((leadMin) => ({ round, leadMin, nowMin: round.joinedMin - leadMin })))
      .sort((a, b) => a.nowMin - b.nowMin);
    for (const { round, leadMin, nowMin } of questions) {
      const arrivesMs = instantOf(day, round.joinedMin) - 1;
      const nowMs = instantOf(day, nowMin) - 1;
      const about = { set: '', leadMin, family: 'closed', day: `${habit.number} ${day}` } as const;
      const waitMin = round.weighedMin - round.joinedMin;
      for (const { rule, forecastMin } of plainAt(nowMs, arrivesMs)) {
        const interval = withInterval(past.get(`${rule} ${leadMin}`) ?? [], forecastMin);
        scored.push({ ...about, rule, waitMin, ...interval });
      }
      scored.push({ ...about, rule: 'ours', waitMin, ...oursAt(nowMs, leadMin) });
    }
    for (const { joinedMs, weighedMs } of told.waits)
      for (const leadMin of LEADS_MIN)
        for (const { rule, forecastMin } of plainAt(joinedMs - leadMin * 60_000 - 1, joinedMs)) {
          const key = `${rule} ${leadMin}`;
          past.set(key, [
            ...(past.get(key) ?? []),
            { forecastMin, waitMin: (weighedMs - joinedMs) / 60_000 },
          ]);
        }
  }
  return { scored, ms, asks };
};

const print = (text: string): void => {
  process.stdout.write(`${text}\n`);
};

const table = (name: string, scored: readonly Scored[]): void => {
  print(`\n${name}`);
  for (const leadMin of LEADS_MIN) {
    const of = (rule: string) => scored.filter((one) => one.leadMin === leadMin && one.rule === rule);
    const base = scoresOf(of(BASE_RULE));
    for (const rule of [...Object.keys(PLAIN_RULES), 'ours']) {
      const { count, mae, pinball, coverage, width, bias } = scoresOf(of(rule));
      print(
        `lead ${leadMin} ${rule.padEnd(18)} n ${count} MAE ${mae.toFixed(1)} (${(mae / base.mae).toFixed(2)}) ` +
          `pinball ${pinball.toFixed(2)} (${(pinball / base.pinball).toFixed(2)}) coverage ${coverage.toFixed(2)} ` +
          `width ${width.toFixed(0)} bias ${bias.toFixed(1)}`,
      );
    }
  }
};

const begunMs = performance.now();
const seasons = Array.from({ length: stations }, (_, number) => {
  const habit = drawHabits(number, seed);
  const season = seasonOf(habit);
  const ours = scoresOf(season.scored.filter(({ rule }) => rule === 'ours'));
  const base = scoresOf(season.scored.filter(({ rule }) => rule === BASE_RULE));
  const waitMin = mean(season.scored.map((one) => one.waitMin));
  print(
    `${number}: ${habit.pilers} pilers, ${habit.scales} scales, ${habit.farms.length} farms, late ${habit.crew.lateMin}, ` +
      `gaps ${habit.gapShare}, wait ${waitMin.toFixed(0)}: ours ${ours.mae.toFixed(1)}, last ${base.mae.toFixed(1)}; ` +
      `bias ${ours.bias.toFixed(1)}, width ${ours.width.toFixed(0)}, pinball ${ours.pinball.toFixed(1)} (${base.pinball.toFixed(1)}); learning ${(season.ms / 1000).toFixed(1)} s`,
  );
  return season;
});
const scored = seasons.flatMap((season) => season.scored);
table(`Seed ${seed}, ${stations} stations, all days`, scored);
table(
  'First day',
  scored.filter(({ day }) => day.endsWith(' 0')),
);
print(
  `\n${(performance.now() - begunMs).toFixed(0)} ms; learning ${mean(seasons.map(({ ms, asks }) => ms / asks)).toFixed(0)} ms an ask`,
);
