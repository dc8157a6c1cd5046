import { describe, expect, test } from 'vitest';
import { sql } from 'drizzle-orm';
import { foldHarvest } from '../../src/core/harvest/fold.ts';
import { freshDatabase } from '../support/database.ts';
import { storeOver } from '../../src/store/open.ts';
import { at, fact } from '../support/given.ts';
import { memberOf, sampleRoster } from '../support/roster.ts';

const SLOW = { timeout: 240_000 };

describe('facts that an earlier version wrote', SLOW, () => {
  test('still fold: a forecast without alerts and rain has none', async () => {
    const database = await freshDatabase();
    const store = await storeOver(database, ['a']);
    const issued = fact(
      {
        kind: 'forecast-issued',
        place: 'north-station',
        issuedMs: at('04:00'),
        hours: [],
        freezeAlerts: [],
        rain: [],
      },
      '04:00',
    );
    await store.book.inOneGo('a', (page) => page.write([issued]));
    await database.db.execute(sql`update facts set body = body - 'freezeAlerts' - 'rain'`);
    const rows = await store.book.inOneGo('a', (page) => page.factsAfter(0));
    const harvest = foldHarvest(
      sampleRoster,
      rows.map((row) => row.fact),
    );
    expect(harvest.forecasts.get('north-station')).toMatchObject([{ freezeAlerts: null, rain: [] }]);
    await database.close();
  });

  test('still fold: a person without hours of a shift has none', async () => {
    const database = await freshDatabase();
    const store = await storeOver(database, ['a']);
    const put = { ...memberOf(sampleRoster, 'ben'), truck: '4' };
    const changed = fact({ kind: 'list-changed', change: { list: 'people', put } }, '04:00');
    await store.book.inOneGo('a', (page) => page.write([changed]));
    await database.db.execute(sql`update facts set body = body #- '{change,put,shiftHours}'`);
    const [row] = await store.book.inOneGo('a', (page) => page.factsAfter(0));
    expect(row?.fact).toMatchObject({ change: { put: { truck: '4', shiftHours: null } } });
    await database.close();
  });
});
