/** One of every kind of thing that the bot can say of the scale line; part of tellings.ts. */
import type { FleetMatch, HoldAdvice } from '../../src/core/line/fleet.ts';
import type { Telling } from '../../src/core/telling.ts';
import { at } from './given.ts';

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
  hold: { truck: '3', advice },
}));
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

type OfLine = 'wait' | 'line-limit' | 'line-stopped' | 'fleet';
export const lineTellings: { [T in OfLine]: readonly Extract<Telling, { tell: T }>[] } = {
  wait: [...waits, ...heldWaits],
  'line-limit': [
    {
      tell: 'line-limit',
      station: 'north-station',
      limitMin: 30,
      forecast: { known: true, ...figures, evidence },
    },
  ],
  'line-stopped': [{ tell: 'line-stopped', station: 'north-station', waiting: ['2', '3'], silentMin: 50 }],
  fleet: [fleet, { ...fleet, waitKnown: false }].map((one) => ({ tell: 'fleet', fleet: one })),
};
