import { and, eq, sql } from 'drizzle-orm';
import type { SQL } from 'drizzle-orm';
import type { Cursors } from '../ports/cursor.ts';
import { explained } from './failure.ts';
import { cursors } from './schema.ts';
import type { Db } from './db.ts';

export const cursorsOver = (db: Db, operation: string): Cursors => {
  const put = async (platform: string, stream: string, position: string, setWhere?: SQL): Promise<void> => {
    const row = { operation, platform, stream, position };
    const target = [cursors.operation, cursors.platform, cursors.stream];
    await db
      .insert(cursors)
      .values(row)
      .onConflictDoUpdate({ target, set: { position }, ...(setWhere && { setWhere }) });
  };

  return {
    at: explained('Cursors, reading one', async (platform, stream) => {
      const isIt = and(
        eq(cursors.operation, operation),
        eq(cursors.platform, platform),
        eq(cursors.stream, stream),
      );
      const [row] = await db.select({ position: cursors.position }).from(cursors).where(isIt);
      return row?.position ?? null;
    }),
    set: explained('Cursors, setting one', (platform, stream, position) => put(platform, stream, position)),
    // Byte order, whatever the locale of the database.
    advance: explained('Cursors, moving one on', (platform, stream, position) =>
      put(platform, stream, position, sql`${cursors.position} < excluded.position collate "C"`),
    ),
  };
};
