import { describe, expect, it } from 'vitest';
import type { DayPlan } from '../../../src/core/answers/plan.ts';
import { at } from '../../support/given.ts';
import { COOL, FROSTY, WARM, outlookTelling } from '../../support/outlooks.ts';

const planned = (
  days: readonly (readonly number[])[],
  clock = '05:00',
  addDays: 0 | 1 = 0,
  issued = clock,
): DayPlan => outlookTelling(days, addDays, clock, { issued }).plan;
const digHours = (plan: DayPlan): (readonly [number, number])[] | null =>
  plan.plan === 'made' ? plan.dig.map(({ fromMs, toMs }) => [fromMs, toMs] as const) : null;
const MIDNIGHT = at('2026-10-21 00:00');

describe('no plan is made', () => {
  it('without a forecast', () => {
    expect(planned([])).toEqual({ plan: 'none', newestMs: null, isTooShort: false });
  });

  it('from a forecast of more than eighteen hours ago', () => {
    expect(planned([COOL, COOL], '22:00', 1, '04:00').plan).toBe('made');
    expect(planned([COOL, COOL], '22:01', 1, '04:00')).toEqual({
      plan: 'none',
      newestMs: at('04:00'),
      isTooShort: false,
    });
  });

  it('of hours of work that the forecast does not reach: "no stop" would be taken for a promise', () => {
    const none = { plan: 'none', newestMs: at('05:00'), isTooShort: true };
    // The last hour that is forecast: noon, 1 p.m., 4 p.m., 10 p.m.; the day's work is over with the hour before midnight.
    for (const hours of [13, 14, 17, 23]) expect(planned([COOL.slice(0, hours)])).toEqual(none);
    expect(planned([COOL.slice(0, 24)]).plan).toBe('made');
  });

  it('of tomorrow by a forecast that ends today', () => {
    expect(planned([COOL], '18:00', 1)).toMatchObject({ plan: 'none', isTooShort: true });
  });
});

describe('when the crew may dig', () => {
  it('on a cool day: from five in the morning to midnight', () => {
    expect(digHours(planned([COOL, COOL]))).toEqual([[at('05:00'), MIDNIGHT]]);
    expect(digHours(planned([COOL, COOL], '18:00', 1))).toEqual([
      [at('2026-10-21 05:00'), at('2026-10-22 00:00')],
    ]);
  });

  it('on a warm day: until the stop, and after the restart', () => {
    const plan = planned([WARM, WARM]);
    if (plan.plan === 'none') throw new Error('the forecast is fresh and long');
    const { stopAtMs, resumeAtMs } = plan.outlook.heat;
    expect(stopAtMs).toBe(at('11:10'));
    expect(resumeAtMs).not.toBeNull();
    expect(digHours(plan)).toEqual([
      [at('05:00'), stopAtMs],
      [resumeAtMs, MIDNIGHT],
    ]);
  });

  it('on a warm day by a forecast that ends before it is cool: until the stop, which is known', () => {
    expect(digHours(planned([WARM.slice(0, 16)]))).toEqual([[at('05:00'), at('11:10')]]);
  });

  it('after a hard frost: from the thaw', () => {
    const plan = planned([FROSTY, FROSTY], '00:00');
    if (plan.plan === 'none') throw new Error('the forecast is fresh and long');
    const { likely, thawMs } = plan.outlook.frost;
    expect(likely).toBe('hold');
    expect(thawMs).toBeGreaterThan(at('05:00'));
    expect(digHours(plan)).toEqual([[thawMs, MIDNIGHT]]);
  });

  it('not at all where it never thaws that day', () => {
    const icy = WARM.map(() => 20);
    expect(digHours(planned([icy, icy], '00:00'))).toEqual([]);
  });
});
