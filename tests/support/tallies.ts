/** Loads and tons of every span, field and truck. */
import type { Telling } from '../../src/core/telling.ts';
import { at } from './given.ts';

const spans = ['today', 'yesterday', 'week', 'season'] as const;
const line = { loads: 3, netLb: 150_000 };
export const tallies = spans.flatMap((span): Extract<Telling, { tell: 'tally' }>[] =>
  (
    [
      [null, null, 1],
      ['3', null, 0],
      [null, 'north-40', 2],
    ] as const
  ).map(([truckAsked, fieldAsked, withoutTicket]) => ({
    tell: 'tally',
    span,
    asked: withoutTicket === 1 ? 'tons' : 'loads',
    tally: {
      ...line,
      sinceMs: at('00:00'),
      untilMs: at('11:00'),
      withoutTicket,
      byField: [
        { field: 'north-40', ...line },
        { field: null, loads: 1, netLb: 0 },
      ],
      byTruck: [{ truck: '3', ...line }],
      truck: truckAsked,
      field: fieldAsked,
    },
  })),
);
