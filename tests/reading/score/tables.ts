/** Outcomes counted: by place, language, kind and act. */
import { HARMS } from './harm.ts';
import type { Scored } from './score.ts';
import { MEANING, TALK } from './verdict.ts';
import type { Outcome } from './verdict.ts';

export const isMeaning = ({ line }: Scored): boolean => line.acts.length > 0;

export const count = (some: readonly Scored[], outcome: Outcome): number =>
  some.filter((one) => one.outcome === outcome).length;

export const harmful = (some: readonly Scored[]): Scored[] => some.filter(({ harms }) => harms.length > 0);

const NAME_WIDTH = 22;
const WIDTH = 9;

const row = (name: string, cells: readonly (string | number)[]): string =>
  name.padEnd(NAME_WIDTH) +
  cells
    .map((cell) =>
      String(cell)
        .slice(0, WIDTH - 1)
        .padStart(WIDTH),
    )
    .join('');

const percent = (part: number, whole: number): string =>
  whole === 0 ? '-' : `${((100 * part) / whole).toFixed(1)}%`;

/** The share is that of what came out as it should. */
const figures = (some: readonly Scored[], outcomes: readonly Outcome[]): (string | number)[] => [
  some.length,
  percent(count(some, 'right') + count(some, 'leftAlone'), some.length),
  ...outcomes.map((outcome) => count(some, outcome)),
  harmful(some).length,
];

type Groups = readonly (readonly [name: string, some: readonly Scored[]])[];

const grouped = (some: readonly Scored[], keysOf: (one: Scored) => readonly string[]): Groups => {
  const keys = [...new Set(some.flatMap(keysOf))].sort();
  return keys.map((key) => [key, some.filter((one) => keysOf(one).includes(key))]);
};

const table = (title: string, groups: Groups, outcomes: readonly Outcome[]): string[] => [
  '',
  row(title, ['lines', '%', ...outcomes, 'harmful']),
  ...groups.map(([name, some]) => row(name, figures(some, outcomes))),
];

const tablesOf = (some: readonly Scored[], what: string, outcomes: readonly Outcome[]) => {
  const of = (title: string, keysOf: (one: Scored) => readonly string[]): string[] =>
    table(`${what} ${title}`, grouped(some, keysOf), outcomes);
  return [
    ...of('by place', ({ place }) => [place]),
    ...of('by language', ({ line, place }) => [`${line.lang} ${place}`]),
    ...of('by kind', ({ line, place }) => [`${line.kind} ${place}`]),
  ];
};

const dangerOf = ({ line }: Scored): string => {
  const danger = line.acts.find(({ act }) => act === 'danger');
  if (danger) return danger.sure === true ? 'danger' : 'danger?';
  return line.kind === 'danger' ? 'looks like it' : 'all else';
};

const dangers = (some: readonly Scored[]): string[] => [
  '',
  row('danger', ['lines', 'alarmed', 'asked', 'missed']),
  ...grouped(some, (one) => [`${dangerOf(one)} ${one.place}`]).map(([name, those]) => {
    const alarmed = those.filter((one) => one.alarmed).length;
    const asked = those.filter((one) => !one.alarmed && one.asksOfDanger).length;
    const missed = name.startsWith('danger') ? those.length - alarmed - asked : '-';
    return row(name, [those.length, alarmed, asked, missed]);
  }),
];

const harms = (some: readonly Scored[]): string[] => [
  '',
  row('harmful', HARMS),
  ...grouped(some, ({ place }) => [place]).map(([place, those]) =>
    row(
      place,
      HARMS.map((harm) => those.filter((one) => one.harms.includes(harm)).length),
    ),
  ),
];

export const tables = (all: readonly Scored[]): string[] => {
  const meaning = all.filter(isMeaning);
  const talk = all.filter((one) => !isMeaning(one));
  return [
    ...tablesOf(meaning, 'meaning', MEANING),
    ...table(
      'acts',
      grouped(meaning, ({ line, place }) => [...new Set(line.acts.map(({ act }) => `${act} ${place}`))]),
      MEANING,
    ),
    ...tablesOf(talk, 'talk', TALK),
    ...dangers(all),
    ...harms(all),
    ...table(
      'TOTAL meaning',
      grouped(meaning, () => ['']),
      MEANING,
    ),
    ...table(
      'TOTAL talk',
      grouped(talk, () => ['']),
      TALK,
    ),
  ];
};
