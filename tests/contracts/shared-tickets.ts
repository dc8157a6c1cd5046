/** What every store must do with the tickets that operations share. */
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { MINUTE_MS, NOON_MS } from './samples.ts';
import type { StoreSetting } from './store-setting.ts';
import type { SharedTicket } from '../../src/core/harvest/harvest.ts';

const ticket = (serial: string, change: Partial<SharedTicket> = {}): SharedTicket => ({
  pool: 'north',
  serial,
  joinedMs: NOON_MS - 40 * MINUTE_MS,
  firstWeighedMs: NOON_MS - 10 * MINUTE_MS,
  secondWeighedMs: null,
  heardMs: NOON_MS,
  ...change,
});

export const poolContract = (open: () => Promise<StoreSetting>): void => {
  describe('pool', () => {
    let setting: StoreSetting;
    beforeAll(async () => {
      setting = await open();
    });
    beforeEach(() => setting.wipe());

    const share = (
      operation: string,
      put: readonly SharedTicket[],
      withdrawn: readonly SharedTicket[] = [],
      forgetMs = 0,
    ) => setting.store.book.inOneGo(operation, (page) => page.shareTickets({ put, withdrawn }, forgetMs));
    const seenBy = (operation: string, pools = ['north'], fromMs = 0, beforeMs = Infinity) =>
      setting.second.book.inOneGo(operation, (page) =>
        page.sharedBy(pools, fromMs, Math.min(beforeMs, NOON_MS * 2)),
      );

    test('a ticket is seen by the others as it is, and not by the one that shared it', async () => {
      await share('a', [ticket('48233'), ticket('48240', { joinedMs: null, secondWeighedMs: NOON_MS })]);
      expect(await seenBy('a')).toEqual([]);
      const seen = await seenBy('b');
      expect(seen).toHaveLength(2);
      expect(seen).toContainEqual(ticket('48233'));
      expect(seen).toContainEqual(ticket('48240', { joinedMs: null, secondWeighedMs: NOON_MS }));
    });

    test('two operations may book the same serial: scales have rolls of their own, and fingers slip', async () => {
      await share('a', [ticket('48233')]);
      await share('b', [ticket('48233', { heardMs: NOON_MS + MINUTE_MS })]);
      expect(await seenBy('b')).toEqual([ticket('48233')]);
      expect(await seenBy('a')).toEqual([ticket('48233', { heardMs: NOON_MS + MINUTE_MS })]);
    });

    test('the newest state counts; one that was withdrawn is gone, and nobody else’s', async () => {
      await share('a', [ticket('48233'), ticket('48240')]);
      await share('b', [ticket('48240')]);
      const corrected = ticket('48233', { secondWeighedMs: NOON_MS, heardMs: NOON_MS + MINUTE_MS });
      await share('a', [corrected], [ticket('48240')]);
      expect(await seenBy('b')).toEqual([corrected]);
      expect(await seenBy('a')).toEqual([ticket('48240')]);
    });

    test('pools are apart, and so are hours', async () => {
      const late = ticket('48250', { heardMs: NOON_MS + MINUTE_MS });
      await share('a', [late, ticket('48233'), ticket('7001', { pool: 'south' })]);
      expect(await seenBy('b')).toEqual([ticket('48233'), late]);
      expect(await seenBy('b', ['south'])).toEqual([ticket('7001', { pool: 'south' })]);
      expect(await seenBy('b', [])).toEqual([]);
      expect(await seenBy('b', ['north'], NOON_MS + 1)).toEqual([late]);
      expect(await seenBy('b', ['north'], 0, NOON_MS + MINUTE_MS)).toEqual([ticket('48233')]);
    });

    test('what is old is forgotten, whosever it was', async () => {
      await share('a', [ticket('48233'), ticket('7001', { pool: 'south' })]);
      await share('b', [ticket('48240', { heardMs: NOON_MS + MINUTE_MS })], [], NOON_MS + 1);
      expect(await seenBy('b')).toEqual([]);
      expect(await seenBy('b', ['south'])).toHaveLength(1);
    });

    test('shared in the entry’s own transaction: an entry that is not kept is not shared', async () => {
      const failed = setting.store.book.inOneGo('a', async (page) => {
        await page.shareTickets({ put: [ticket('48233')], withdrawn: [] }, 0);
        throw new Error('the message could not be handled');
      });
      await expect(failed).rejects.toThrow('could not be handled');
      expect(await seenBy('b')).toEqual([]);
    });
  });
};
