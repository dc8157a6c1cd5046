/** Two operations of one installation at the same station, each with a crew and a book of its own. */
import { eq } from 'drizzle-orm';
import { describe, expect, test } from 'vitest';
import { crewForEachTest, crewOn } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';
import type { Database } from '../../../src/store/database.ts';
import { pooledTickets } from '../../../src/store/schema.ts';
import { sampleRoster } from '../../support/roster.ts';

const NORTH = 'north-station';
let database: Database;
let pool: string;
crewForEachTest((_, open) => {
  database = open;
  pool = `pool-${crypto.randomUUID()}`;
});

const farm = (operation: string, isPooled = true): Promise<Crew> => {
  const own = { operation: `${operation}-${crypto.randomUUID()}`, pools: isPooled ? { [NORTH]: pool } : {} };
  return crewOn(database, { roster: { ...sampleRoster, ...own } });
};

/** Four trucks, each half an hour in the line. */
const hauls = async (crew: Crew): Promise<void> => {
  const drivers = ['ana', 'ben', 'carla', 'dale'];
  for (const [at, driver] of drivers.entries()) {
    await crew.say(driver, 'crew', 'loaded', `07:${10 + at}`);
    await crew.say(driver, 'crew', 'in line', `07:${35 + at}`);
    await crew.say(driver, 'crew', `4823${at} 79840 29320`, `08:${15 + at}`);
  }
};

const line = async (crew: Crew, clock: string): Promise<string> =>
  (await crew.say('ruth', 'crew', 'how long is the line', clock)).join('\n');

describe('tickets of another operation at the same station', { timeout: 120_000 }, () => {
  test('tell of the line to one that has seen nothing of it', async () => {
    const [upriver, downriver] = [await farm('upriver'), await farm('downriver')];
    expect(await line(downriver, '08:20')).toContain('no word from the line');
    await hauls(upriver);
    const answer = await line(downriver, '08:21');
    expect(answer).toMatch(/^Line at North station: about \d+ min/);
    expect(answer).toContain('Serial 48233');
  });

  test('are not shared with one that did not ask for it, nor by one', async () => {
    const [upriver, apart] = [await farm('upriver'), await farm('apart', false)];
    await hauls(upriver);
    expect(await line(apart, '08:21')).not.toContain('48233');
    await apart.say('eli', 'crew', '48299 79840 29320', '08:22');
    const other = await farm('other');
    expect(await line(other, '08:23')).toContain('Serial 48233');
  });

  test('follow what becomes of the entry: corrected, they are corrected; taken back, they are gone', async () => {
    const [upriver, downriver] = [await farm('upriver'), await farm('downriver')];
    await hauls(upriver);
    await upriver.edit('dale', 'crew', 'm12', '48243 79840 29320', '08:20');
    expect(await line(downriver, '08:21')).toContain('Serial 48243');
    await upriver.takeBack('dale', 'crew', 'm12', '08:22');
    expect(await line(downriver, '08:23')).toContain('Serial 48232');
  });

  test('say nothing of whose they are: serial, times, and a digest', async () => {
    const upriver = await farm('upriver');
    await hauls(upriver);
    const rows = await database.db.select().from(pooledTickets).where(eq(pooledTickets.pool, pool));
    expect(rows).toHaveLength(4);
    for (const row of rows) {
      expect(Object.keys(row).sort()).toEqual([
        'firstWeighedMs',
        'heardMs',
        'id',
        'joinedMs',
        'pool',
        'secondWeighedMs',
        'serial',
      ]);
      expect(row.id).toMatch(/^[0-9a-f]{64}$/);
      expect(row.serial).toMatch(/^4823\d$/);
      expect(row.pool).toBe(pool);
    }
  });

  test('count in no total of the other one', async () => {
    const [upriver, downriver] = [await farm('upriver'), await farm('downriver')];
    await hauls(upriver);
    const told = [
      await downriver.say('ruth', 'crew', 'tons today?', '08:30'),
      await downriver.say('ruth', 'crew', 'where are the trucks', '08:31'),
      await downriver.say('ruth', 'crew', 'tickets', '08:32'),
    ].flat();
    expect(told.join('\n')).toContain('0.00 tons');
    expect(told.join('\n')).not.toMatch(/4823\d/);
  });
});
