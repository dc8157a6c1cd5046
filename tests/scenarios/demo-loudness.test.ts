/** How much the crew hears of the weather on the demo's day: what is told too often is swiped away unread. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { replay } from '../../src/command/replay.ts';
import { sampleOperation } from '../docs/examples.ts';

const answer = z.object({
  at: z.string(),
  to: z.record(z.string(), z.string()),
  kind: z.string(),
  text: z.string(),
  cause: z.string(),
});
type Answer = z.infer<typeof answer>;

const DEMO_DAY = new URL('../../src/command/demo-day.ndjson', import.meta.url);
async function* lines(): AsyncIterable<string> {
  yield* readFileSync(DEMO_DAY, 'utf8').split('\n');
}

const saidOnDemoDay = async (): Promise<Answer[]> => {
  const said: Answer[] = [];
  const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };
  await replay({
    lines: lines(),
    roster: sampleOperation(),
    place: { memory: true },
    print: (json) => said.push(answer.parse(JSON.parse(json))),
    complain: (fault) => {
      throw new Error(fault);
    },
    log: quiet,
  });
  return said;
};

/** Those who have not confirmed are asked, or named. */
const CHASERS = ['reminder', 'unseen'];
const WEATHER = [
  'notice',
  'outlook',
  'seen',
  'decide',
  'undelivered',
  'no-forecast',
  'forecast-back',
  ...CHASERS,
];

test(
  'the demo’s day: at most 30 messages of the weather, and at most 4 that chase somebody',
  { timeout: 240_000 },
  async () => {
    const said = await saidOnDemoDay();
    const kinds = (some: readonly string[]): Answer[] => said.filter(({ kind }) => some.includes(kind));
    expect(kinds(WEATHER).length).toBeLessThanOrEqual(30);
    // Mateo asks once who has not seen it, which chases nobody.
    const chasers = kinds(CHASERS).filter(
      ({ kind, cause }) => kind === 'reminder' || cause.startsWith('timer:'),
    );
    expect(chasers.length).toBeGreaterThan(0);
    expect(chasers.length).toBeLessThanOrEqual(4);
    // Nobody is chased before the order is given, an hour before the topper must stop at 10:30.
    expect(chasers.filter(({ at }) => Date.parse(at) < Date.parse('2026-10-20T09:30:00-06:00'))).toEqual([]);
    // All the same those who must act hear of the stop, and of its end.
    const heardBy = (person: string): string[] =>
      kinds(['notice']).flatMap(({ to, text }) =>
        to['person'] === person ? [text.split(/[ :]/)[0] ?? ''] : [],
      );
    // The order, the earlier time, the end.
    expect(heardBy('gus')).toEqual(['HEAT', 'HEAT', 'ALL-CLEAR']);
  },
);
