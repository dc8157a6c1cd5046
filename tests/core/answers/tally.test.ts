import { describe, expect, it } from 'vitest';
import { foldHarvest } from '../../../src/core/harvest/fold.ts';
import type { Fact } from '../../../src/core/book/facts.ts';
import { tally } from '../../../src/core/answers/tally.ts';
import { at, step, ticket } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';

const told = (facts: readonly Fact[], more: object = {}) =>
  tally(foldHarvest(sampleRoster, facts), {
    fromMs: at('00:00'),
    toMs: at('2026-10-21 00:00'),
    truck: null,
    field: null,
    ...more,
  });

const morning = [
  step('1', 'left-field', '07:00', { field: 'north-40' }),
  ticket('1', '07:45', 50_520),
  step('2', 'left-field', '07:20', { field: 'north-40' }),
  step('2', 'dumped', '08:10'),
  step('1', 'left-field', '08:30', { field: 'south-80' }),
  ticket('1', '09:20', 48_000),
  step('2', 'left-field', '09:00', { field: 'south-80' }),
];

describe('the tally of a morning', () => {
  it('counts loads that came off, with the net of their tickets', () => {
    expect(told(morning)).toMatchObject({ loads: 3, netLb: 98_520, withoutTicket: 1 });
  });

  it('by field, most tons first, and by truck', () => {
    expect(told(morning)).toMatchObject({
      byField: [
        { field: 'north-40', loads: 2, netLb: 50_520 },
        { field: 'south-80', loads: 1, netLb: 48_000 },
      ],
      byTruck: [
        { truck: '1', loads: 2, netLb: 98_520 },
        { truck: '2', loads: 1, netLb: 0 },
      ],
    });
  });

  it('of one truck or one field', () => {
    expect(told(morning, { truck: '2' })).toMatchObject({ loads: 1, netLb: 0, withoutTicket: 1, truck: '2' });
    expect(told(morning, { field: 'south-80' })).toMatchObject({
      loads: 1,
      netLb: 48_000,
      field: 'south-80',
    });
  });

  it('of nothing is nothing', () => {
    expect(told([])).toMatchObject({ loads: 0, netLb: 0, withoutTicket: 0, byField: [], byTruck: [] });
  });
});

describe('midnight', () => {
  it('a load counts on the day on which it was dumped, with the ticket sent after midnight', () => {
    const night = [
      step('1', 'left-field', '23:10'),
      step('1', 'dumped', '23:55'),
      ticket('1', '2026-10-21 00:05', 50_520),
    ];
    expect(told(night)).toMatchObject({ loads: 1, netLb: 50_520 });
    expect(told(night, { fromMs: at('2026-10-21 00:00'), toMs: at('2026-10-22 00:00') }).loads).toBe(0);
  });

  it('the first instant belongs to the day that begins', () => {
    const dumped = [step('1', 'dumped', '2026-10-21 00:00')];
    expect(told(dumped).loads).toBe(0);
    expect(told(dumped, { fromMs: at('2026-10-21 00:00'), toMs: at('2026-10-22 00:00') }).loads).toBe(1);
  });
});
