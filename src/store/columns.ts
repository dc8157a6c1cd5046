import { customType } from 'drizzle-orm/pg-core';
import type { EpochMs } from '../core/units.ts';

/**
 * An instant. Always passed in, never the database's now(): a replayed day has its own clock.
 * Computed instants may have fractions of a millisecond; the column rounds them up, so that nothing is early.
 */
export const epochMs = customType<{ data: EpochMs; driverData: number | string }>({
  dataType: () => 'bigint',
  toDriver: Math.ceil,
  fromDriver: Number,
});

/**
 * `jsonb` takes neither a NUL nor half of a surrogate pair
 * (https://www.postgresql.org/docs/18/datatype-json.html, 8.14), and text no NUL; people's messages may contain both.
 */
export const storable = (text: string): string => text.replaceAll('\0', '\uFFFD').toWellFormed();

/** A value of ours as `jsonb`. Trusted when read, because only we write it. */
export const document = customType<{ data: unknown; driverData: unknown }>({
  dataType: () => 'jsonb',
  toDriver: (value) =>
    JSON.stringify(value, (_key, part: unknown) => (typeof part === 'string' ? storable(part) : part)),
});
