/** The figures as tables. */
import { BASE_RULE, CRUDE_RULE } from './forecasts.ts';
import { LEADS_MIN, mean, scoresOf } from './scoring.ts';
import type { Scored, Scores } from './scoring.ts';
import { ALL_SETS, COUNTS_60, PLAIN, rightOf } from './sets.ts';

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
const table = (header: readonly string[], rows: readonly (readonly string[])[]): string =>
  [header, header.map(() => '---'), ...rows].map(row).join('\n');

const only = (scored: readonly Scored[], rule: string, leadMin: number): Scores =>
  scoresOf(scored.filter((one) => one.rule === rule && one.leadMin === leadMin));

const rulesIn = (scored: readonly Scored[]): string[] => [...new Set(scored.map(({ rule }) => rule))];

const ratio = (a: number, b: number): string => (a / b).toFixed(2);

/** Every rule at every lead; in brackets, against the last observed wait of `base`. */
export const ruleTable = (scored: readonly Scored[], base: readonly Scored[]): string =>
  table(
    ['rule', 'lead', 'MAE', 'RMSE', 'pinball', 'coverage of 80 %', 'width', 'bias', 'forecasts'],
    rulesIn(scored).flatMap((rule) =>
      LEADS_MIN.map((leadMin) => {
        const [a, b] = [only(scored, rule, leadMin), only(base, BASE_RULE, leadMin)];
        const both = (of: (scores: Scores) => number, digits = 1): string =>
          `${of(a).toFixed(digits)} (${ratio(of(a), of(b))})`;
        return [
          rule,
          `${leadMin} min`,
          both(({ mae }) => mae),
          both(({ rmse }) => rmse),
          both(({ pinball }) => pinball, 2),
          a.coverage.toFixed(2),
          both(({ width }) => width, 0),
          a.bias.toFixed(1),
          String(a.count),
        ];
      }),
    ),
  );

/** Mean gain of ours over the last observed wait, by day, with its 95 % band. */
export const gainLine = (scored: readonly Scored[]): string => {
  const errors = (leadMin: number, rule: string): Map<string, number> => {
    const those = scored.filter((one) => one.rule === rule && one.leadMin === leadMin);
    const byDay = Map.groupBy(those, ({ day }) => day);
    return new Map([...byDay].map(([day, ofDay]) => [day, scoresOf(ofDay).mae]));
  };
  const gains = LEADS_MIN.map((leadMin) => {
    const ours = errors(leadMin, 'ours');
    const gain = [...errors(leadMin, BASE_RULE)].map(([day, mae]) => mae - (ours.get(day) ?? mae));
    const middle = mean(gain);
    const sd = Math.sqrt(mean(gain.map((one) => (one - middle) ** 2)));
    return `${leadMin} min: ${middle.toFixed(1)} ± ${((1.96 * sd) / Math.sqrt(gain.length)).toFixed(1)}`;
  });
  return `\nMean gain over the last observed wait, by days, 95 %: ${gains.join('; ')} min.`;
};

/** Same trucks, same days: with the assumption wrong against right. */
export const wrongTable = (scored: readonly Scored[]): string =>
  table(
    ['wrong', 'lead', 'MAE', 'right', 'coverage', 'right', 'width', 'right', 'pinball', 'right'],
    ALL_SETS.filter(({ ownCalibration }) => !ownCalibration).flatMap((set) =>
      set.leads.map((leadMin) => {
        const wrong = scored.filter((one) => one.set === set.name);
        const days = new Set(wrong.map(({ day }) => day));
        const right = scored.filter((one) => one.set === rightOf(set) && days.has(one.day));
        const [a, b] = [only(wrong, 'ours', leadMin), only(right, 'ours', leadMin)];
        return [
          set.name,
          `${leadMin} min`,
          ...[a.mae, b.mae].map((mae) => mae.toFixed(1)),
          ...[a.coverage, b.coverage].map((coverage) => coverage.toFixed(2)),
          ...[a.width, b.width].map((width) => width.toFixed(0)),
          ...[a.pinball, b.pinball].map((pinball) => pinball.toFixed(2)),
        ];
      }),
    ),
  );

const span = (numbers: readonly number[], digits = 2): string =>
  numbers.map((number) => number.toFixed(digits)).join(' / ');

/** What was aimed at and what was reached, leads 0 / 15 / 30 / 45 min. */
export const goalTable = (scored: readonly Scored[], pooled: readonly Scored[]): string => {
  const plain = scored.filter(({ set }) => set === PLAIN);
  const counted = scored.filter(({ set }) => set === COUNTS_60);
  const open = plain.filter(({ family }) => family === 'open');
  const ratios = (
    ours: readonly Scored[],
    base: readonly Scored[],
    of: (scores: Scores) => number,
    against = BASE_RULE,
  ): number[] =>
    LEADS_MIN.map((leadMin) => of(only(ours, 'ours', leadMin)) / of(only(base, against, leadMin)));
  const coverages = LEADS_MIN.map((leadMin) => only(plain, 'ours', leadMin).coverage);
  return table(
    ['figure', 'aim', 'reached at 0 / 15 / 30 / 45 min'],
    [
      ['MAE, no head counts', '<= 0.88', span(ratios(plain, plain, ({ mae }) => mae))],
      ['MAE, the same, open arrivals', '<= 0.88', span(ratios(open, open, ({ mae }) => mae))],
      ['pinball, no head counts', '<= 0.72', span(ratios(plain, plain, ({ pinball }) => pinball))],
      ['width, no head counts', '<= 0.60', span(ratios(plain, plain, ({ width }) => width))],
      [
        'pinball, against the cruder interval',
        '',
        span(ratios(plain, plain, ({ pinball }) => pinball, CRUDE_RULE)),
      ],
      [
        'width, against the cruder interval',
        '',
        span(ratios(plain, plain, ({ width }) => width, CRUDE_RULE)),
      ],
      ['coverage, no head counts', '0.77-0.85', span(coverages)],
      ['MAE, 50 loads', '<= 0.80', span(ratios(pooled, pooled, ({ mae }) => mae))],
      [
        'MAE, head counts on 60 %',
        '<= 0.55 at 0, <= 0.70 at 30',
        span(ratios(counted, plain, ({ mae }) => mae)),
      ],
      [
        'MAE in minutes, true count now, open arrivals',
        '<= 6 at 0',
        span(
          LEADS_MIN.map((leadMin) => only(open, 'ours, true count now', leadMin).mae),
          1,
        ),
      ],
    ],
  );
};
