/** One of every kind of thing that the bot can say of the scale line; part of tellings.ts. */
import type { FleetMatch, HoldAdvice } from '../../src/core/line/fleet.ts';
import type { Telling } from '../../src/core/telling.ts';
import { at } from './given.ts';
import { receiptsOf } from './receipts.ts';
import { pilersRunning } from '../../src/core/notices/station-now.ts';
import type { StationTrouble } from '../../src/core/notices/station-now.ts';

const figures = { medianMin: 34, lowMin: 22, highMin: 51 };
const evidence = {
  lastSerial: { serial: '048213', atMs: at('10:40') },
  trucksAhead: 14,
  ratePerHour: 25,
  newestAgeMin: 3,
};
const noEvidence = { lastSerial: null, trucksAhead: null, ratePerHour: null, newestAgeMin: 0 };
const held = (['standstill', 'short-line', 'field-stops'] as const).map((because): HoldAdvice => ({
  hold: true,
  because,
  laterPerMin: 0.4,
}));
const notHeld: HoldAdvice = { hold: false, because: 'busy-line', laterPerMin: 1 };
const waits = ([null, 0, 45] as const).flatMap((leaveInMin): Extract<Telling, { tell: 'wait' }>[] =>
  [
    { known: true, ...figures, evidence } as const,
    { known: true, ...figures, evidence: noEvidence } as const,
    { known: false, newestAgeMin: null, usual: figures } as const,
    { known: false, newestAgeMin: null, usual: null } as const,
  ].map((forecast) => ({
    tell: 'wait',
    station: 'north-station',
    arriveInMin: 25,
    leaveInMin,
    haulMin: 25,
    forecast,
    trouble: null,
    hold: leaveInMin === null ? null : { truck: '3', advice: notHeld },
  })),
);
const heldWaits = held.map((advice): Extract<Telling, { tell: 'wait' }> => ({
  tell: 'wait',
  station: 'north-station',
  arriveInMin: 25,
  leaveInMin: 0,
  haulMin: 25,
  forecast: { known: true, ...figures, evidence },
  trouble: null,
  hold: { truck: '3', advice },
}));
const closed = { trouble: 'closed', sinceMs: at('08:12'), untilMs: at('10:00'), leastMin: 47.5 } as const;
const troubles: readonly StationTrouble[] = [
  closed,
  { ...closed, untilMs: null, leastMin: null },
  { trouble: 'all-down', sinceMs: at('08:12') },
  { trouble: 'turned-away', sinceMs: at('08:12'), words: 'too warm' },
  { trouble: 'turned-away', sinceMs: at('08:12'), words: null },
];
const troubledWaits = troubles.flatMap((trouble): Extract<Telling, { tell: 'wait' }>[] =>
  [
    { known: true, ...figures, evidence } as const,
    { known: false, newestAgeMin: null, usual: figures } as const,
  ].map((forecast) => ({
    tell: 'wait',
    station: 'north-station',
    arriveInMin: 25,
    leaveInMin: 0,
    haulMin: 25,
    forecast,
    trouble,
    hold: { truck: '3', advice: { hold: true, because: 'closed', untilMs: at('10:00') } },
  })),
);
const stationFacts = [
  ...receiptsOf('station-reported'),
  ...receiptsOf('pilers-seen'),
  ...receiptsOf('loads-turned-away'),
];
const fleet: FleetMatch = {
  station: 'north-station',
  field: 'north-40',
  trucks: 4,
  needed: 6,
  loadMin: 11,
  roundMin: 55,
  waitMin: 18,
  waitKnown: true,
  onPaths: true,
  courses: [3, 4, 5, 6].map((trucks) => ({
    trucks,
    diggerIdle: 0.4 / trucks,
    diggerIdleBound: 0.5 / trucks,
    truckWaitMin: trucks,
  })),
};

type OfLine = 'station-news' | 'wait' | 'line-limit' | 'line-stopped' | 'fleet';
export const lineTellings: { [T in OfLine]: readonly Extract<Telling, { tell: T }>[] } = {
  wait: [...waits, ...heldWaits, ...troubledWaits],
  'station-news': stationFacts.map((fact) => ({
    tell: 'station-news',
    fact,
    pilers: { running: fact.kind === 'pilers-seen' ? pilersRunning(fact, 2) : 2, of: 2 },
  })),
  'line-limit': [
    {
      tell: 'line-limit',
      station: 'north-station',
      limitMin: 30,
      forecast: { known: true, ...figures, evidence },
    },
  ],
  'line-stopped': [{ tell: 'line-stopped', station: 'north-station', waiting: ['2', '3'], silentMin: 50 }],
  fleet: [fleet, { ...fleet, waitKnown: false }].flatMap((one) =>
    [null, closed].map((trouble) => ({ tell: 'fleet', fleet: one, trouble })),
  ),
};
