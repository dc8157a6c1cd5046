/** The fields that a message's `data` really has, from one of every kind of thing that the bot can say. */
import { spansIn } from './markdown.ts';
import type { Document } from './markdown.ts';
import { dataOf, tellings } from './program.ts';

export interface Fields {
  /** Names of the fields, at any depth. */
  names: ReadonlySet<string>;
  /** Texts in them, for what a document says of their values. */
  values: ReadonlySet<string>;
}

/** A whole entry of a list is changed: its fields are those of the operation file. */
const NOT_ENTERED = new Set(['put', 'entries']);

const collect = (data: unknown, names: Set<string>, values: Set<string>): void => {
  if (typeof data === 'string') values.add(data);
  if (typeof data !== 'object' || data === null) return;
  for (const [name, value] of Object.entries(data)) {
    if (!Array.isArray(data)) names.add(name);
    if (!NOT_ENTERED.has(name)) collect(value, names, values);
  }
};

const fieldsOf = (samples: readonly unknown[]): Fields => {
  const [names, values] = [new Set<string>(), new Set<string>()];
  for (const sample of samples) collect(sample, names, values);
  return { names, values };
};

const iso = (atMs: number): string => new Date(atMs).toISOString();

/** By the message's kind. */
export const fieldsByKind = (): Map<string, Fields> =>
  new Map(
    Object.entries(tellings).map(([kind, samples]) => [
      kind,
      fieldsOf(samples.map((telling) => dataOf(telling, iso))),
    ]),
  );

interface Entry {
  kind: string;
}

const entriesOf = (data: Readonly<Record<string, unknown>>): Entry[] =>
  Array.isArray(data['entries']) ? (data['entries'] as Entry[]) : [];

/** By the entry's kind, without the fields that `everyEntry` has. */
export const fieldsByEntry = (): Map<string, Fields> => {
  const entries = Object.values(tellings)
    .flat()
    .flatMap((telling) => entriesOf(dataOf(telling, iso)));
  return new Map([...Map.groupBy(entries, ({ kind }) => kind)].map(([kind, all]) => [kind, fieldsOf(all)]));
};

/** By kind, all that the document names in code, and the kinds whose fields it says to have too. */
export interface Documented {
  spans: readonly string[];
  fieldsOf: readonly string[];
}

export const documentedFields = ({ tables }: Document): Map<string, Documented> =>
  new Map(
    tables
      .filter(({ header }) => header[0] === 'kind')
      .flatMap(({ rows }) =>
        rows.map(([kind = '', fields = '']) => {
          const others = [...fields.matchAll(/fields of `([\w-]+)`/g)].map(([, other = '']) => other);
          return [kind.replaceAll('`', ''), { spans: spansIn(fields), fieldsOf: others }];
        }),
      ),
  );

const NOTHING: Documented = { spans: [], fieldsOf: [] };

/** Fields that the kind has and the document does not name under it, and names that are nothing of any kind. */
export const fieldFaults = (
  documented: ReadonlyMap<string, Documented>,
  kind: string,
  { names, values }: Fields,
): string[] => {
  const { spans, fieldsOf: others } = documented.get(kind) ?? NOTHING;
  const said = new Set([...spans, ...others.flatMap((other) => documented.get(other)?.spans ?? [])]);
  const isSomething = (span: string): boolean =>
    [names, values, allValues].some((known) => known.has(span)) || documented.has(span);
  return [
    ...[...names].filter((name) => !said.has(name)).map((name) => `${name} is not documented`),
    ...spans.filter((span) => !isSomething(span)).map((span) => `there is no ${span}`),
  ];
};

const allValues = fieldsOf(
  Object.values(tellings)
    .flat()
    .map((telling) => dataOf(telling, iso)),
).values;
