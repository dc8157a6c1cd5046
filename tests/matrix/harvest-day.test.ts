import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { mulberry32 } from '../support/random.ts';
import {
  CLEAR,
  HOLD,
  expectCountedOnce,
  expectShownOnce,
  noticesShown,
  toEverybody,
  waitForNotices,
} from '../support/synapse/day-laws.ts';
import { gatherDay } from '../support/synapse/harvest-day.ts';
import { startProxy } from '../support/synapse/proxy.ts';
import type { Proxy } from '../support/synapse/proxy.ts';
import { describeWithSynapse } from '../support/synapse/suite.ts';
import type { Synapse } from '../support/synapse/synapse.ts';
import { startSynapse } from '../support/synapse/synapse.ts';
import { waitFor } from '../support/wait-for.ts';

const SEED = 20_261_020;
const KILLS = 5;
const MINUTES = 60_000;

const OUTAGE_MS = 2 * MINUTES;

const BROKEN = { status: 500, body: { errcode: 'M_UNKNOWN', error: 'Internal server error' } };
const LIMITED = {
  status: 429,
  body: { errcode: 'M_LIMIT_EXCEEDED', error: 'Too many requests' },
  headers: { 'Retry-After': '1' },
};

interface Trouble {
  /** What the bot gets in place of an answer; lost = the homeserver does what it is asked, and the answer is cut off. */
  answers: typeof BROKEN | typeof LIMITED | 'lost';
  /** So many requests fail before it is over. */
  times: number;
}

/** Has the bot's requests fail, from before `work` begins until enough have failed. */
const troubled = async (proxy: Proxy, { answers, times }: Trouble, work: () => Promise<unknown>) => {
  let failed = 0;
  if (answers === 'lost')
    proxy.change = ({ method }, body) => {
      if (method === 'GET') return body;
      failed += 1;
      return null;
    };
  else
    proxy.answer = () => {
      failed += 1;
      return answers;
    };
  await work();
  await waitFor(`${times} failures`, () => failed >= times, 3 * MINUTES);
  proxy.answer = () => null;
  proxy.change = (_request, body) => body;
};

/** No wait for something to be done: the time itself is what is tested. */
const elapsed = (ms: number): Promise<null> =>
  new Promise((resolve) => {
    setTimeout(() => {
      resolve(null);
    }, ms);
  });

describeWithSynapse('a harvest day of five drivers', () => {
  let synapse: Synapse;
  beforeAll(async () => {
    synapse = await startSynapse();
  });
  afterAll(() => synapse.dispose());

  describe.each([
    { kind: 'plain', encrypted: false },
    { kind: 'encrypted', encrypted: true },
  ])('in $kind rooms', ({ encrypted }) => {
    test(
      `counts all once and loses no stop notice, although the bot is killed ${KILLS} times`,
      async () => {
        const harvest = await gatherDay(synapse, { encrypted });
        let bot = harvest.start();
        await harvest.met();
        await harvest.round(0);
        await harvest.answered(0);
        const random = mulberry32(SEED);
        for (let round = 1; round <= KILLS; round += 1) {
          // After the how many-th message of the round, and how much later.
          const [after, laterMs] = [1 + Math.floor(random() * 14), Math.floor(random() * 1_000)];
          const killed = Promise.withResolvers<null>();
          const kill = async (): Promise<null> => {
            await bot.kill();
            bot = harvest.start();
            return null;
          };
          const onSaid = (count: number): void => {
            if (count === after)
              setTimeout(() => {
                killed.resolve(kill());
              }, laterMs);
          };
          const order = round % 2 === 1 ? 'stop digging, mud' : 'resume digging';
          await Promise.all([harvest.round(round, onSaid), harvest.order(order), killed.promise]);
          await harvest.answered(round);
          await waitForNotices(harvest, round % 2 === 1 ? HOLD : CLEAR, Math.ceil(round / 2));
        }
        await harvest.settled();
        await bot.kill();
        const book = await harvest.book();
        expectCountedOnce(harvest, book);
        expectShownOnce(harvest, book, encrypted);
        expect(noticesShown(harvest, HOLD)).toEqual(toEverybody(3));
        expect(noticesShown(harvest, CLEAR)).toEqual(toEverybody(2));
      },
      25 * MINUTES,
    );
  });

  test(
    'loses and doubles nothing where the homeserver is limited, broken and mute',
    async () => {
      const proxy = await startProxy(synapse.url);
      const harvest = await gatherDay(synapse, { encrypted: false, botUrl: proxy.url });
      const bot = harvest.start();
      await harvest.met();
      await harvest.round(0);
      await harvest.answered(0);

      await troubled(proxy, { answers: BROKEN, times: 20 }, () =>
        Promise.all([harvest.round(1), harvest.order('stop digging, mud')]),
      );
      await harvest.answered(1);
      await waitForNotices(harvest, HOLD, 1);

      await troubled(proxy, { answers: LIMITED, times: 20 }, () =>
        Promise.all([harvest.round(2), harvest.order('resume digging')]),
      );
      await harvest.answered(2);
      await waitForNotices(harvest, CLEAR, 1);

      await troubled(proxy, { answers: 'lost', times: 10 }, () =>
        Promise.all([harvest.round(3), harvest.order('stop digging, mud')]),
      );
      await harvest.answered(3);
      await waitForNotices(harvest, HOLD, 2);
      await harvest.settled();
      await bot.kill();
      const book = await harvest.book();
      await proxy.close();
      expectCountedOnce(harvest, book);
      expectShownOnce(harvest, book, false);
      expect(noticesShown(harvest, HOLD)).toEqual(toEverybody(2));
      expect(noticesShown(harvest, CLEAR)).toEqual(toEverybody(1));
    },
    25 * MINUTES,
  );

  test(
    'loses and doubles nothing where the homeserver is down for two minutes',
    async () => {
      const harvest = await gatherDay(synapse, { encrypted: false });
      const bot = harvest.start();
      await harvest.met();
      await harvest.round(0);
      await harvest.answered(0);
      await harvest.round(1);
      await harvest.order('stop digging, mud');
      await synapse.stop();
      await elapsed(OUTAGE_MS);
      await synapse.start();
      await harvest.round(2);
      await harvest.answered(1);
      await harvest.answered(2);
      await waitForNotices(harvest, HOLD, 1);
      await harvest.settled();
      await bot.kill();
      const book = await harvest.book();
      expectCountedOnce(harvest, book);
      expectShownOnce(harvest, book, false);
      expect(noticesShown(harvest, HOLD)).toEqual(toEverybody(1));
    },
    25 * MINUTES,
  );
});
