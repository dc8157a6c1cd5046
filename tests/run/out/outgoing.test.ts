/** What is still delivered when delivery comes late, because the bot or the network was down meanwhile. */
import { expect, test } from 'vitest';
import { hear } from '../../../src/run/in/hear.ts';
import { tick } from '../../../src/run/time/tick.ts';
import { at, crewForEachTest, crewOn } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';
import { COOL } from '../../support/outlooks.ts';
import { sampleRoster } from '../../support/roster.ts';

let crew: Crew;
crewForEachTest(async (_, database) => {
  const roster = {
    ...sampleRoster,
    operation: `late-${crypto.randomUUID()}`,
    outlookTo: 'managers' as const,
  };
  crew = await crewOn(database, { roster });
});

const hearAt10 = async (user: string, text: string): Promise<void> => {
  const { answered } = await hear(crew.bot, {
    platform: 'local',
    id: 'm1',
    user,
    userName: null,
    room: null,
    sentMs: at('10:00'),
    heardMs: at('10:00'),
    event: { is: 'message', text, addressed: true, repliesTo: null },
  });
  await answered;
};

test.each(['how long is the line', 'how many trucks do we need', 'where is everybody', 'can we dig'])(
  'the answer to "%s" is left out an hour later',
  async (question) => {
    await hearAt10('ruth', question);
    expect(await crew.deliverAll('11:01')).toEqual([]);
  },
);

test('the answer to a question about the present still comes within the hour', async () => {
  await hearAt10('ruth', 'can we dig');
  expect(await crew.deliverAll('11:00')).toEqual([expect.stringMatching(/^Nobody has stopped it/)]);
});

test('a stop is delivered however late', async () => {
  await hearAt10('ruth', 'stop digging, mud');
  expect(await crew.deliverAll('20:00')).toContainEqual(expect.stringMatching(/^MUD HOLD/));
});

test.each([
  ['2026-10-20 23:59', 2],
  ['2026-10-21 00:01', 0],
] as const)(
  'the outlook of the evening says "tomorrow": at %s it comes to %i people',
  async (clock, people) => {
    await crew.forecast('north-station', '16:50', '00:00', [...COOL, ...COOL]);
    await tick(crew.bot, at('18:00'));
    expect(await crew.deliverAll(clock)).toHaveLength(people);
  },
);
