/** Answers that need a forecast of the line: nothing waits for them, and no crash loses them. */
import { expect, test } from 'vitest';
import { giveOwedAnswers } from '../../../src/run/in/answer-later.ts';
import { hear } from '../../../src/run/in/hear.ts';
import { firstEstimate } from '../../../src/core/line/first-estimate.ts';
import type { WaitForecaster } from '../../../src/run/line/forecaster.ts';
import type { Heard } from '../../../src/ports/chat.ts';
import type { Database } from '../../../src/store/database.ts';
import { at, crewForEachTest, crewOn } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';

let crew: Crew;
let database: Database;
crewForEachTest((own, shared) => {
  crew = own;
  database = shared;
});

/** Forecasts only when it is let; until then it hangs. */
const hanging = () => {
  const gate = Promise.withResolvers<undefined>();
  const line: WaitForecaster = {
    forecast: async (asks) => {
      await gate.promise;
      return asks.map(({ observations, ask }) => firstEstimate(observations, ask));
    },
    prepare: () => undefined,
    close: async () => undefined,
  };
  const letGo = (): void => {
    gate.resolve(undefined);
  };
  return { line, letGo };
};

const message = (id: string, user: string, text: string, clock = '09:00'): Heard => ({
  platform: 'local',
  id,
  user,
  userName: null,
  room: null,
  sentMs: at(clock),
  heardMs: at(clock),
  event: { is: 'message', text, addressed: true, repliesTo: null },
});

/** The aim is 100 ms (`npm run bench`); a machine that runs other tests meanwhile gets more. */
const SOON_MS = 1_000;

test('a stop order beside a forecast that hangs is taken in, and its notice leaves, at once', async () => {
  const { line, letGo } = hanging();
  crew = await crewOn(database, { bot: { line } });
  await crew.say('ben', null, 'in line, 14 ahead', '08:50');
  const asked = await hear(crew.bot, message('q', 'ruth', 'how long is the line'));
  const startMs = performance.now();
  const stopped = await hear(crew.bot, message('s', 'mateo', 'stop digging, mud'));
  const sent = await crew.deliverAll('09:00');
  expect(performance.now() - startMs).toBeLessThan(SOON_MS);
  expect(sent).toContainEqual(expect.stringContaining('MUD HOLD'));
  expect(sent).not.toContainEqual(expect.stringContaining('Line at'));
  letGo();
  await Promise.all([asked.answered, stopped.answered]);
  expect(await crew.deliverAll('09:00')).toEqual([expect.stringMatching(/^Line at North station/)]);
});

test('what a crash leaves unanswered is answered at the next start, once', async () => {
  crew = await crewOn(database, { bot: { line: hanging().line } });
  await crew.say('ben', null, 'in line, 14 ahead', '08:50');
  await hear(crew.bot, message('q', 'ruth', 'how long is the line'));
  expect(await crew.deliverAll('09:00')).toEqual([]);
  // The first process is gone with its promise; a second one starts on the same book.
  const restarted = await crewOn(database, { roster: crew.bot.roster });
  await giveOwedAnswers(restarted.bot, at('09:02'));
  expect(await restarted.deliverAll('09:02')).toEqual([expect.stringMatching(/^Line at North station/)]);
  await giveOwedAnswers(restarted.bot, at('09:03'));
  expect(await restarted.deliverAll('09:03')).toEqual([]);
});

test('a question of more than an hour ago is answered no more', async () => {
  crew = await crewOn(database, { bot: { line: hanging().line } });
  await hear(crew.bot, message('q', 'ruth', 'how long is the line'));
  const restarted = await crewOn(database, { roster: crew.bot.roster });
  await giveOwedAnswers(restarted.bot, at('10:01'));
  expect(await restarted.deliverAll('10:01')).toEqual([]);
  expect(await restarted.bot.book.inOneGo(crew.bot.roster.operation, (page) => page.owed())).toEqual([]);
});

test('an answer that cannot be given is logged, and is still owed', async () => {
  const clock = {
    ...crew.bot.clock,
    wall: (): never => {
      throw new Error('the clock broke');
    },
  };
  const owed = {
    key: 'local:x:answer:0',
    cause: 'local:x',
    question: { about: 'fleet' } as const,
    asker: 'ruth',
    heardMs: at('09:00'),
    place: { platform: 'local', room: null, user: 'ruth', messageId: 'x' },
  };
  const { operation } = crew.bot.roster;
  await crew.bot.book.inOneGo(operation, (page) => page.owe([owed]));
  await giveOwedAnswers({ ...crew.bot, clock }, at('09:01'));
  expect(crew.logged).toMatchObject([{ what: { why: 'the clock broke', cause: 'local:x' } }]);
  expect(await crew.bot.book.inOneGo(operation, (page) => page.owed())).toEqual([owed]);
});
