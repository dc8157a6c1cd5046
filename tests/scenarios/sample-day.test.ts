/**
 * A recorded day of five trucks and 47 loads, its messages in English and Spanish, some steps never told. The expected
 * figures are those of the day as it was invented (serials, weights, fields), not of the bot's own answers.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { replay } from '../../src/command/replay.ts';
import { isZone } from '../../src/run/host/zone-clock.ts';
import { loadSettings } from '../../src/settings/load.ts';
import { mulberry32 } from '../support/random.ts';

const answer = z.object({
  at: z.string(),
  to: z.record(z.string(), z.string()),
  text: z.string(),
  kind: z.string(),
  cause: z.string(),
  data: z.record(z.string(), z.unknown()),
});
type Answer = z.infer<typeof answer>;

const recorded = readFileSync(new URL('../fixtures/sample-day.ndjson', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '');

async function* each(lines: readonly string[]): AsyncIterable<string> {
  yield* lines;
}

const replayed = async (lines: readonly string[]): Promise<{ answers: Answer[]; faults: string[] }> => {
  const loaded = loadSettings({}, isZone);
  if ('faults' in loaded) throw new Error(loaded.faults.join('\n'));
  const [answers, faults]: [Answer[], string[]] = [[], []];
  const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };
  await replay({
    lines: each(lines),
    roster: loaded.settings.roster,
    place: { memory: true },
    print: (json) => answers.push(answer.parse(JSON.parse(json))),
    complain: (fault) => faults.push(fault),
    log: quiet,
  });
  return { answers, faults };
};

const tallies = (answers: readonly Answer[]): Answer[] => answers.filter(({ kind }) => kind === 'tally');

test('the recorded day gives the loads, tons and fields of the tickets', { timeout: 400_000 }, async () => {
  const { answers, faults } = await replayed(recorded);
  expect(faults).toEqual([]);
  const [, truckThree, , evening] = tallies(answers);
  expect(truckThree?.data).toMatchObject({ loads: 9, tons: 219.72 });
  expect(evening?.data).toMatchObject({ loads: 47, tons: 1155.58, withoutTicket: 0 });
  // One stop and one all-clear: to the crew's room, the grower and the three who must act.
  const notices = answers.filter(({ kind }) => kind === 'notice');
  expect(notices.map(({ data }) => data['stage'])).toEqual([
    ...Array<string>(5).fill('stop'),
    ...Array<string>(5).fill('all-clear'),
  ]);
  expect(answers.filter(({ kind }) => kind === 'refusal').map(({ data }) => data)).toEqual([
    { refused: 'serial-known' },
  ]);
});

const timed = z.looseObject({ at: z.string(), text: z.string().optional(), room: z.string().nullish() });

/** A fifth of the room's messages is heard up to an hour late, and every message comes twice. */
const muddled = (lines: readonly string[], seed: number): string[] => {
  const chance = mulberry32(seed);
  return lines
    .flatMap((line) => {
      const said = timed.parse(JSON.parse(line));
      const sentMs = Date.parse(said.at);
      const late = said.text !== undefined && said.room === 'crew' && chance() < 0.2;
      const heardMs = sentMs + (late ? chance() * 3_600_000 : 0);
      const heard = JSON.stringify(
        said.text === undefined ? said : { ...said, at: new Date(heardMs).toISOString(), sentAt: said.at },
      );
      return (said.text === undefined ? [heard] : [heard, heard]).map((text) => ({ heardMs, text }));
    })
    .sort((a, b) => a.heardMs - b.heardMs)
    .map(({ text }) => text);
};

test('heard late and twice, the day ends with the same loads and tons', { timeout: 400_000 }, async () => {
  const { answers, faults } = await replayed(muddled(recorded, 20261021));
  expect(faults).toEqual([]);
  expect(tallies(answers).at(-1)?.data).toMatchObject({ loads: 47, tons: 1155.58, withoutTicket: 0 });
});
