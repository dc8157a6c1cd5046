/** The recorded day of the sample operation, to be said on any platform, and what the book holds after it. */
import { readFileSync } from 'node:fs';
import type { Operation } from '../../src/command/operate.ts';
import { parseReplayLine } from '../../src/command/replay-line.ts';
import type { ReplayLine } from '../../src/command/replay-line.ts';
import { answer } from '../../src/core/answer.ts';
import { personById } from '../../src/core/roster.ts';
import type { Roster } from '../../src/core/roster.ts';
import { allFacts, dayOf } from '../../src/run/running.ts';
import { isZone } from '../../src/run/zone-clock.ts';
import { dataOf } from '../../src/saying/data.ts';
import { loadSettings } from '../../src/settings/load.ts';

export const recordedLines = (): ReplayLine[] =>
  readFileSync(new URL('../fixtures/sample-day.ndjson', import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((text) => {
      const parsed = parseReplayLine(text);
      if ('fault' in parsed) throw new Error(parsed.fault);
      return parsed.line;
    });

/** The sample operation, its crew where `addressOf` says; null = not there. */
export const sampleOn = (
  operation: string,
  room: Roster['rooms'][number],
  addressesOf: (person: string) => Roster['people'][number]['addresses'],
): Roster => {
  const loaded = loadSettings({}, isZone);
  if ('faults' in loaded) throw new Error(loaded.faults.join('\n'));
  const { roster } = loaded.settings;
  const people = roster.people.map((person) => ({ ...person, addresses: addressesOf(person.id) }));
  return { ...roster, operation, rooms: [room], people };
};

/** Loads and tons by field on the day of `nowMs`, the notices, and how many entries there are of each kind. */
export const bookOf = async ({ running }: Operation, nowMs: number) => {
  const facts = await running.book.inOneGo(running.roster.operation, (page) => allFacts(running, page));
  const day = dayOf(running, facts);
  const asker = personById(day.roster, 'ruth');
  if (!asker) throw new Error('The sample has no Ruth.');
  const { clock, forecastWait } = running;
  const question = { about: 'tons', field: null, truck: null, span: 'today' } as const;
  const { loads, tons, byField, byTruck, withoutTicket } = dataOf(
    answer(question, day, { asker, nowMs, clock, forecastWait }),
    running.iso,
  );
  const kinds: Record<string, number> = {};
  for (const { kind } of facts) kinds[kind] = (kinds[kind] ?? 0) + 1;
  return {
    loads,
    tons,
    byField,
    byTruck,
    withoutTicket,
    kinds,
    notices: day.notices.flatMap(({ steps }) => steps.map(({ step }) => step.stage)),
  };
};
