import { expect, it } from 'vitest';
import { spanOf } from '../../../src/core/answers/asking.ts';
import { personById } from '../../../src/core/roster.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, given } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';

// 19 October 2026 is a Monday (ISO 8601: the week begins on Monday); the clocks go back on 1 November.
it.each([
  ['2026-10-19 00:05', '2026-10-19 00:00'],
  ['2026-10-20 10:00', '2026-10-19 00:00'],
  ['2026-10-25 23:50', '2026-10-19 00:00'],
  ['2026-11-01 12:00', '2026-10-26 00:00'],
  ['2026-11-02 12:00', '2026-11-02 00:00'],
])('the week of %s begins at %s', (now, monday) => {
  const asker = personById(sampleRoster, 'ruth');
  if (asker === undefined) throw new Error('Ruth is on the list');
  const week = spanOf(given().harvest, { asker, nowMs: at(now), clock: zoneClock }, 'week');
  expect(week.fromMs).toBe(at(monday));
  expect(week.toMs).toBeGreaterThan(at(now));
});
