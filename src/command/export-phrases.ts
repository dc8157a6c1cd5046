/** What the crew wrote and the bot could not read, for a later training: without names and numbers. */
import type { Roster } from '../core/roster.ts';

interface MaskedPhrase {
  said: string;
  times: number;
}

const folded = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '');
const escaped = (text: string): string => folded(text).replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** Longest first: "North 40" before "North". */
const anyOf = (names: readonly string[]): RegExp | null => {
  const written = [...new Set(names)].filter((name) => /\p{L}{2}/u.test(name));
  if (written.length === 0) return null;
  const shapes = written.toSorted((a, b) => b.length - a.length).map(escaped);
  return new RegExp(`(?<![\\p{L}\\d])(?:${shapes.join('|')})(?![\\p{L}\\d])`, 'giu');
};

const namesIn = (list: readonly { name: string; id: string; aliases?: readonly string[] }[]): string[] =>
  list.flatMap(({ name, id, aliases = [] }) => [name, id, ...aliases, ...name.split(/\s+/)]);

/** Names of the lists become their sort, addresses and numbers a mark; who writes of others by other names is not caught. */
const maskOf = (roster: Roster): ((said: string) => string) => {
  const marks = (
    [
      ['@person', namesIn(roster.people)],
      ['@field', namesIn(roster.fields)],
      ['@station', namesIn(roster.stations)],
    ] as const
  ).flatMap(([mark, names]) => {
    const shape = anyOf(names);
    return shape === null ? [] : [{ shape, mark }];
  });
  return (said) =>
    marks
      .reduce((text, { shape, mark }) => text.replace(shape, mark), folded(said).toLowerCase())
      .replace(/\S+@\S+\.\S+|https?:\S+/g, '@address')
      .replace(/\d+(?:[.,:]\d+)*/g, '#')
      .replace(/\s+/g, ' ')
      .trim();
};

/** Masked, each once with how often it came, the commonest first. */
export const exportedPhrases = (unread: readonly string[], roster: Roster): MaskedPhrase[] => {
  const mask = maskOf(roster);
  const counts = new Map<string, number>();
  for (const said of unread) counts.set(mask(said), (counts.get(mask(said)) ?? 0) + 1);
  return [...counts]
    .map(([said, times]) => ({ said, times }))
    .sort((a, b) => b.times - a.times || a.said.localeCompare(b.said));
};
