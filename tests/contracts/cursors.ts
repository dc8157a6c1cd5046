/** What every cursor must do. */
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Cursors } from '../../src/ports/cursor.ts';
import type { StoreSetting } from './store-setting.ts';

/** An hour apart, as Slack writes times. */
const [EARLY, LATE] = ['1669015750.896769', '1669019350.000100'] as const;

export const cursorsContract = (open: () => Promise<StoreSetting>): void => {
  describe('cursors', () => {
    let setting: StoreSetting;
    let cursors: Cursors;
    beforeAll(async () => {
      setting = await open();
      cursors = setting.store.cursorsOf('a');
    });
    beforeEach(() => setting.wipe());

    test('what was never read has no position', async () => {
      expect(await cursors.at('slack', 'C1')).toBeNull();
    });

    test('a position outlives the process, and is one of its operation, platform and stream alone', async () => {
      await cursors.advance('slack', 'C1', EARLY);
      await cursors.set('matrix', '', 's72594_4483_1934');
      const after = setting.second.cursorsOf('a');
      expect(await after.at('slack', 'C1')).toBe(EARLY);
      expect(await after.at('matrix', '')).toBe('s72594_4483_1934');
      expect(await after.at('slack', 'C2')).toBeNull();
      expect(await after.at('matrix', 'C1')).toBeNull();
      expect(await setting.store.cursorsOf('b').at('slack', 'C1')).toBeNull();
    });

    test('advance never goes back: an older reading that ends late must not bring old messages up again', async () => {
      await cursors.advance('slack', 'C1', LATE);
      await cursors.advance('slack', 'C1', EARLY);
      expect(await cursors.at('slack', 'C1')).toBe(LATE);
      await Promise.all([EARLY, LATE, EARLY].map((position) => cursors.advance('slack', 'C2', position)));
      expect(await cursors.at('slack', 'C2')).toBe(LATE);
    });

    test('set goes anywhere: sync tokens have no order', async () => {
      await cursors.set('matrix', '', 's9');
      await cursors.set('matrix', '', 's10');
      expect(await cursors.at('matrix', '')).toBe('s10');
    });
  });
};
