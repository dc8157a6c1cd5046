/** What every book must do. */
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Book, OwedAnswer, Page } from '../../src/ports/book.ts';
import type { Outgoing } from '../../src/ports/outbox.ts';
import { fact, heard, MINUTE_MS, NOON_MS, outgoing } from './samples.ts';
import type { StoreSetting } from './store-setting.ts';

export const bookContract = (open: () => Promise<StoreSetting>): void => {
  describe('book', () => {
    let setting: StoreSetting;
    let book: Book;
    beforeAll(async () => {
      setting = await open();
      book = setting.store.book;
    });
    beforeEach(() => setting.wipe());

    const idsOf = (operation: string) =>
      book.inOneGo(operation, async (page) => (await page.factsAfter(0)).map((entry) => entry.fact.id));
    const alarmOf = (operation: string, nowMs: number) =>
      book.inOneGo(operation, (page) => page.nextAlarm(nowMs));

    test('a message received twice is known: platforms deliver again what they think was lost', async () => {
      const receive = (page: Page) => page.receive(heard('m1'));
      expect(await book.inOneGo('a', receive)).toBe('new');
      expect(await book.inOneGo('a', receive)).toBe('known');
      expect(await book.inOneGo('a', (page) => page.receive({ ...heard('m1'), platform: 'other' }))).toBe(
        'new',
      );
    });

    test('a message and its edits are found again, in the order heard, and nobody else’s', async () => {
      const first = heard('m1', 'laoded');
      const edit = {
        ...heard('e1'),
        heardMs: NOON_MS + MINUTE_MS,
        event: { is: 'edit' as const, of: 'm1', text: 'loaded' },
      };
      const deletion = { ...heard('d1'), event: { is: 'deletion' as const, of: 'm1' } };
      await book.inOneGo('a', async (page) => {
        for (const one of [edit, first, deletion, heard('m2')]) await page.receive(one);
      });
      const versions = (operation: string, platform: string) =>
        book.inOneGo(operation, (page) => page.versionsOf(platform, 'm1'));
      expect(await versions('a', 'local')).toEqual([first, edit]);
      const instant = { ...heard('e0'), event: { is: 'edit' as const, of: 'm1', text: 'loded' } };
      await book.inOneGo('a', (page) => page.receive(instant));
      expect(await versions('a', 'local')).toEqual([first, instant, edit]);
      expect(await versions('a', 'other')).toEqual([]);
      expect(await versions('b', 'local')).toEqual([]);
    });

    test('an answer that is owed stays until it is settled, in the order heard, and is nobody else’s', async () => {
      const owed = (key: string, minute: number): OwedAnswer => ({
        key,
        cause: 'local:m1',
        question: { about: 'fleet' },
        asker: 'ana',
        heardMs: NOON_MS + minute * MINUTE_MS,
        place: { platform: 'local', room: null, user: 'ana', messageId: 'm1' },
      });
      const owedBy = (operation: string) => book.inOneGo(operation, (page) => page.owed());
      await book.inOneGo('a', (page) => page.owe([owed('late', 2), owed('early', 1)]));
      await book.inOneGo('a', (page) => page.owe([owed('late', 2)]));
      expect(await owedBy('a')).toEqual([owed('early', 1), owed('late', 2)]);
      expect(await owedBy('b')).toEqual([]);
      await book.inOneGo('b', (page) => page.settle(['early']));
      await book.inOneGo('a', (page) => page.settle(['late']));
      expect(await owedBy('a')).toEqual([owed('early', 1)]);
    });

    test('what is shown: the newest of its kind in each lane, unless it could not be delivered', async () => {
      const board = { kind: 'board', slot: 'board 1' };
      const elsewhere = { to: { room: 'C2' }, recipient: { room: 'other' } };
      const enqueue = (...messages: Outgoing[]) => book.inOneGo('a', (page) => page.enqueue(messages));
      const slots = async (operation = 'a', sinceMs = NOON_MS) =>
        (await book.inOneGo(operation, (page) => page.shown('board', sinceMs)))
          .map(({ slot }) => slot)
          .sort();
      await enqueue(
        outgoing('b1', board),
        outgoing('b2', { ...board, slot: 'board 2' }),
        outgoing('b3', { ...board, ...elsewhere, slot: 'board 3' }),
        outgoing('receipt'),
        outgoing('other slot', { slot: 'notice' }),
        outgoing('unchangeable', { kind: 'board', to: { room: 'C3' } }),
      );
      expect(await slots()).toEqual(['board 2', 'board 3']);
      expect(await slots('a', NOON_MS + 1)).toEqual([]);
      expect(await slots('b')).toEqual([]);
      const lent = await setting.store.outbox.claim(['local'], NOON_MS, MINUTE_MS, 9);
      // Another process of the same operation: what it has queued is shown too, and no fact tells of it.
      await setting.second.book.inOneGo('b', (page) => page.enqueue([outgoing('c1', board)]));
      expect(await slots('b')).toEqual(['board 1']);
      const later = { ...board, slot: 'board 4', notBeforeMs: NOON_MS + 300 * MINUTE_MS };
      await setting.second.book.inOneGo('b', (page) => page.enqueue([outgoing('c2', later)]));
      expect(await slots('b', later.notBeforeMs)).toEqual(['board 4']);
      expect(await slots('b', later.notBeforeMs + 1)).toEqual([]);
      const dead = lent.find(({ key }) => key === 'b3');
      await setting.store.outbox.giveUp(dead?.id ?? 0, 'no such channel', NOON_MS);
      expect(await slots()).toEqual(['board 2']);
    });

    test('a throw keeps nothing: a receipt without its load, or a load without its receipt, is a lie', async () => {
      const work = book.inOneGo('a', async (page) => {
        await page.receive(heard('m1'));
        await page.write([fact('f1')]);
        await page.wakeAt('check', NOON_MS);
        throw new Error('out of beets');
      });
      await expect(work).rejects.toThrow('out of beets');
      expect(await idsOf('a')).toEqual([]);
      expect(await alarmOf('a', NOON_MS)).toBeNull();
      expect(await book.inOneGo('a', (page) => page.receive(heard('m1')))).toBe('new');
    });

    test('facts come back equal and in the order of writing, whenever they happened: the day is folded from them', async () => {
      const late = { ...fact('f2'), atMs: NOON_MS - 30.5 * MINUTE_MS + 0.25 };
      const lastSeq = await book.inOneGo('a', (page) => page.write([fact('f3'), late]));
      await book.inOneGo('a', (page) => page.write([fact('f1')]));
      const entries = await book.inOneGo('a', (page) => page.factsAfter(0));
      expect(entries.map((entry) => entry.fact)).toEqual([fact('f3'), late, fact('f1')]);
      const newer = await book.inOneGo('a', (page) => page.factsAfter(lastSeq));
      expect(newer.map((entry) => entry.fact.id)).toEqual(['f1']);
    });

    test('many facts are written in order: a day is replayed at once', async () => {
      const ids = Array.from({ length: 500 }, (_, i) => `f${i}`);
      const last = await book.inOneGo('a', (page) => page.write(ids.map((id) => fact(id))));
      expect(await idsOf('a')).toEqual(ids);
      expect(await book.inOneGo('a', (page) => page.write([]))).toBe(last);
    });

    test('a known fact id fails the whole work, also where the work goes on: a load must not count twice', async () => {
      await book.inOneGo('a', (page) => page.write([fact('f1')]));
      const swallowed = book.inOneGo('a', async (page) => {
        await page.receive(heard('m2'));
        await page.write([fact('f1')]).catch(() => 0);
      });
      await expect(swallowed).rejects.toThrow(/Book of "a", writing facts: .*facts_id.*\(a, f1\)/);
      expect(await book.inOneGo('a', (page) => page.receive(heard('m2')))).toBe('new');
      expect(await idsOf('a')).toEqual(['f1']);
    });

    test('works on one operation follow one another: each decides on what the one before it has written', async () => {
      const numbers = Array.from({ length: 24 }, (_, i) => i);
      const append = async (page: Page) => {
        const known = await page.factsAfter(0);
        await page.write([fact(`f${known.length}`)]);
      };
      const bookOf = (i: number) => (i % 2 === 0 ? setting.store : setting.second).book;
      await Promise.all(numbers.map((i) => bookOf(i).inOneGo('fresh operation', append)));
      expect(await idsOf('fresh operation')).toEqual(numbers.map((i) => `f${i}`));
    });

    test('an operation sees nothing of another: neighbours share an installation', async () => {
      await book.inOneGo('a', async (page) => {
        await page.receive(heard('m1'));
        await page.write([fact('f1')]);
        await page.wakeAt('check', NOON_MS);
      });
      const seen = await book.inOneGo('b', async (page) => ({
        facts: await page.factsAfter(0),
        last: await page.write([]),
        alarm: await page.nextAlarm(NOON_MS),
        message: await page.receive(heard('m1')),
      }));
      expect(seen).toEqual({ facts: [], last: 0, alarm: null, message: 'new' });
      await book.inOneGo('b', async (page) => {
        await page.write([fact('f1')]);
        await page.wakeAt('check', null);
      });
      expect(await idsOf('a')).toEqual(['f1']);
      expect(await alarmOf('a', NOON_MS)).toEqual({ name: 'check', dueMs: NOON_MS });
    });

    test('an alarm moves and goes away, and the earliest due one rings: forecasts move the stop time', async () => {
      await book.inOneGo('a', async (page) => {
        await page.wakeAt('heat', NOON_MS);
        await page.wakeAt('board', NOON_MS + 1);
        await page.wakeAt('heat', NOON_MS + 2);
      });
      expect(await alarmOf('a', NOON_MS)).toBeNull();
      expect(await alarmOf('a', NOON_MS + 2)).toEqual({ name: 'board', dueMs: NOON_MS + 1 });
      await book.inOneGo('a', (page) => page.wakeAt('board', null));
      expect(await alarmOf('a', NOON_MS + 1)).toBeNull();
      expect(await alarmOf('a', NOON_MS + 2)).toEqual({ name: 'heat', dueMs: NOON_MS + 2 });
    });

    test('a computed alarm with a fraction of a millisecond is never early', async () => {
      await book.inOneGo('a', (page) => page.wakeAt('heat', NOON_MS + 0.4));
      expect(await alarmOf('a', NOON_MS)).toBeNull();
      expect(await alarmOf('a', NOON_MS + 1)).toEqual({ name: 'heat', dueMs: NOON_MS + 1 });
    });

    test('a parked message is known: one that breaks the bot must not do so for ever', async () => {
      const broken = heard('m1');
      await expect(
        book.inOneGo('a', async (page) => {
          await page.receive(broken);
          throw new Error('bug');
        }),
      ).rejects.toThrow('bug');
      await book.inOneGo('a', (page) => page.park(broken, 'bug'));
      await book.inOneGo('a', (page) => page.park(broken, 'bug again'));
      expect(await book.inOneGo('a', (page) => page.receive(broken))).toBe('known');
    });

    test('text that the database cannot hold does not lose the message: a NUL, half an emoji', async () => {
      const odd = `1\0 ${'🚚'.slice(0, 1)}`;
      expect(await book.inOneGo('a', (page) => page.receive(heard('m1', odd)))).toBe('new');
      await book.inOneGo('a', (page) => page.park(heard('m2', odd), odd));
      await book.inOneGo('a', (page) => page.write([fact('f1', odd)]));
      expect(
        (await book.inOneGo('a', (page) => page.factsAfter(0))).map((entry) => entry.fact),
      ).toMatchObject([{ words: '1\uFFFD \uFFFD' }]);
    });
  });
};
