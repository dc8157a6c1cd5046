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
        const day = await gatherDay(synapse, { encrypted });
        let bot = day.start();
        await day.met();
        await day.round(0);
        await day.answered(0);
        const random = mulberry32(SEED);
        for (let round = 1; round <= KILLS; round += 1) {
          // After the how many-th message of the round, and how much later.
          const [after, laterMs] = [1 + Math.floor(random() * 14), Math.floor(random() * 1_000)];
          const killed = Promise.withResolvers<null>();
          const kill = async (): Promise<null> => {
            await bot.kill();
            bot = day.start();
            return null;
          };
          const onSaid = (count: number): void => {
            if (count === after)
              setTimeout(() => {
                killed.resolve(kill());
              }, laterMs);
          };
          const order = round % 2 === 1 ? 'stop digging, mud' : 'resume digging';
          await Promise.all([day.round(round, onSaid), day.order(order), killed.promise]);
          await day.answered(round);
          await waitForNotices(day, round % 2 === 1 ? HOLD : CLEAR, Math.ceil(round / 2));
        }
        await day.settled();
        await bot.kill();
        const book = await day.book();
        expectCountedOnce(day, book);
        expectShownOnce(day, book, encrypted);
        expect(noticesShown(day, HOLD)).toEqual(toEverybody(3));
        expect(noticesShown(day, CLEAR)).toEqual(toEverybody(2));
      },
      25 * MINUTES,
    );
  });

  test(
    'loses and doubles nothing where the homeserver is limited, broken and mute',
    async () => {
      const proxy = await startProxy(synapse.url);
      const day = await gatherDay(synapse, { encrypted: false, botUrl: proxy.url });
      const bot = day.start();
      await day.met();
      await day.round(0);
      await day.answered(0);

      await troubled(proxy, { answers: BROKEN, times: 20 }, () =>
        Promise.all([day.round(1), day.order('stop digging, mud')]),
      );
      await day.answered(1);
      await waitForNotices(day, HOLD, 1);

      await troubled(proxy, { answers: LIMITED, times: 20 }, () =>
        Promise.all([day.round(2), day.order('resume digging')]),
      );
      await day.answered(2);
      await waitForNotices(day, CLEAR, 1);

      await troubled(proxy, { answers: 'lost', times: 10 }, () =>
        Promise.all([day.round(3), day.order('stop digging, mud')]),
      );
      await day.answered(3);
      await waitForNotices(day, HOLD, 2);
      await day.settled();
      await bot.kill();
      const book = await day.book();
      await proxy.close();
      expectCountedOnce(day, book);
      expectShownOnce(day, book, false);
      expect(noticesShown(day, HOLD)).toEqual(toEverybody(2));
      expect(noticesShown(day, CLEAR)).toEqual(toEverybody(1));
    },
    25 * MINUTES,
  );

  test(
    'loses and doubles nothing where the homeserver is down for two minutes',
    async () => {
      const day = await gatherDay(synapse, { encrypted: false });
      const bot = day.start();
      await day.met();
      await day.round(0);
      await day.answered(0);
      await day.round(1);
      await day.order('stop digging, mud');
      await synapse.stop();
      await elapsed(OUTAGE_MS);
      await synapse.start();
      await day.round(2);
      await day.answered(1);
      await day.answered(2);
      await waitForNotices(day, HOLD, 1);
      await day.settled();
      await bot.kill();
      const book = await day.book();
      expectCountedOnce(day, book);
      expectShownOnce(day, book, false);
      expect(noticesShown(day, HOLD)).toEqual(toEverybody(1));
    },
    25 * MINUTES,
  );
});
