import { describe, expect, it } from 'vitest';
import { kgFromLb } from '../../src/core/units.ts';
import type { Roster } from '../../src/core/roster.ts';
import type { Telling } from '../../src/core/telling.ts';
import { zoneClock } from '../../src/run/host/zone-clock.ts';
import { dataOf } from '../../src/saying/data.ts';
import { say, sayToRoom } from '../../src/saying/say.ts';
import type { Voice } from '../../src/saying/voice.ts';
import { at, step, ticket } from '../support/given.ts';
import { heatStep } from '../support/notices.ts';
import { sampleRoster } from '../support/roster.ts';
import { receiptFacts } from '../support/receipts.ts';
import { freeDig } from '../support/notice-tellings.ts';
import { boardRows } from '../support/board-rows.ts';
import { allTellings, tellings } from '../support/tellings.ts';

const voiceAt = (clock: string, language: 'en' | 'es', roster: Roster = sampleRoster): Voice => ({
  roster,
  clock: zoneClock,
  nowMs: at(clock),
  language,
  zone: roster.zone,
});
const english = voiceAt('11:00', 'en');
const spanish = voiceAt('11:00', 'es');
const metric = voiceAt('11:00', 'en', { ...sampleRoster, units: 'metric' });
const text = (telling: Telling, voice: Voice): string => say(telling, voice).text;
const notice = (more: Partial<Extract<Telling, { tell: 'notice' }>>): Telling => ({
  tell: 'notice',
  step: heatStep(),
  by: null,
  changed: null,
  rain: null,
  still: [],
  order: true,
  asked: 1,
  confirmed: null,
  rings: true,
  ...more,
});
const receipt = (...facts: (typeof receiptFacts)[number][]): Telling => ({
  tell: 'receipt',
  facts,
  warnings: [],
  asksCount: false,
});

describe.each(Object.entries(tellings))('%s', (_, kind) => {
  it.each([
    ['en', english],
    ['es', spanish],
    ['metric', metric],
  ])('is said whole in %s', (__, voice) => {
    for (const telling of kind) {
      const said = text(telling, voice);
      expect(said.trim()).not.toBe('');
      expect(said).not.toMatch(/\.\.|undefined|null|NaN|Infinity|\{|\}|\[object/);
      expect(said).not.toMatch(/ {2}| [.,:;]|\n\n|^\s|\s$/);
    }
  });

  it('differs between the languages', () => {
    for (const telling of kind)
      if (telling.tell !== 'language') expect(text(telling, spanish)).not.toBe(text(telling, english));
  });

  it('has data without a hole', () => {
    for (const telling of kind)
      expect(JSON.stringify(dataOf(telling, (ms) => `T${ms}`))).not.toMatch(/undefined|NaN|"T-?\d+\.\d/);
  });
});

it('no answer in one language speaks the other', () => {
  const said = allTellings.map((telling) => text(telling, spanish)).join('\n');
  expect(said).not.toMatch(/\b(truck is|loaded|dumped|the field|ahead|tickets? today|stop digging)\b/i);
});

describe('emergencies', () => {
  it.each([
    ['en', english],
    ['es', spanish],
  ])('begin with "Call 911" in %s, and ring', (_, voice) => {
    for (const telling of [...tellings['emergency-answer'], ...tellings.emergency]) {
      const said = say(telling, voice);
      expect(said.text).toMatch(/^Call 911/);
      expect(said.ring).toBe(true);
    }
    expect(text({ tell: 'emergency-answer' }, spanish)).toContain('llame al 911');
  });

  it('begin so in a room with two languages, whichever comes first', () => {
    for (const voices of [
      [english, spanish],
      [spanish, english],
    ])
      expect(sayToRoom({ tell: 'emergency-answer' }, voices).text).toMatch(/^Call 911/);
  });
});

describe('notices', () => {
  const stops = tellings.notice.filter(({ order }) => order);

  // Topped beets warm faster than the air: topping stops before, or with, digging (Michigan State Univ. Extension, 2012).
  it('say stop topping before stop digging', () => {
    for (const telling of stops) {
      const [head = ''] = text(telling, english).split('\n');
      expect(head).toMatch(/stop topping .*, stop digging /);
      const [cabeza = ''] = text(telling, spanish).split('\n');
      expect(cabeza).toMatch(/paren de deshojar .*, paren de sacar /);
    }
  });

  it('hold what stops, when, why, what loaded trucks do, when it goes on, who ordered it, how to confirm', () => {
    expect(text(notice({ step: heatStep({ words: 'station said so' }), by: 'ruth' }), english)).toBe(
      [
        'HEAT STOP for North station: stop topping at 12:40 PM, stop digging at 1:10 PM.',
        'Why: forecast 65 °F at 3:00 PM, limit 60 °F. Warm beets spoil in the pile.',
        'Why: station said so.',
        'Ordered by Ruth.',
        'Loaded trucks: haul on to the station and weigh in. If the station turns you away, park where it is safe and tell the foreman.',
        'Dig again likely at 7:30 PM. Wait for the all-clear.',
        'Read and reply only when parked: "got it".',
      ].join('\n'),
    );
  });

  it('say NOW for a time that has come', () => {
    const voice = voiceAt('13:10', 'en');
    expect(text(notice({}), voice)).toMatch(
      /^HEAT STOP for North station: stop topping NOW, stop digging NOW\./,
    );
  });

  it('a watch and advice do not ring; an order, a new time and an all-clear do', () => {
    for (const telling of tellings.notice)
      expect(say(telling, english).ring).toBe(telling.order || telling.step.stage === 'all-clear');
  });

  it('ask for nothing but one word, with a button for it, when parked', () => {
    for (const telling of stops) {
      const { text: said, buttons } = say(telling, english);
      expect(said).toContain('only when parked');
      expect(buttons.map(({ words }) => words)).toEqual(['got it']);
      expect(say(telling, spanish).buttons.map(({ words }) => words)).toEqual(['enterado']);
    }
  });

  it('the plan that was called off is named; an all-clear for later is not one for now', () => {
    const clear = heatStep({ stage: 'all-clear', resumeAtMs: at('11:00') });
    expect(text(notice({ step: clear, changed: heatStep() }), english)).toBe(
      'ALL-CLEAR for North station: the heat stop planned for 1:10 PM is off.',
    );
    const later = heatStep({ stage: 'all-clear', stopAtMs: at('09:00'), resumeAtMs: at('2026-10-21 06:00') });
    expect(text(notice({ step: later, changed: later }), english)).toContain('from 6:00 AM on 10/21');
  });
});

describe('a driver who may be driving', () => {
  it.each([
    ['en', english],
    ['es', spanish],
  ])('is asked nothing by a receipt, in %s', (_, voice) => {
    for (const one of receiptFacts) {
      expect(text(receipt(one), voice)).not.toMatch(/[?¿]|\b(say|reply|send|type|diga|mande|conteste)\b/i);
    }
  });

  it('gets the next steps as buttons, not as words to type', () => {
    const next = (clock: 'left-field' | 'joined-line' | 'dumped' | 'returning' | 'parked' | 'down') =>
      say(receipt(step('3', clock, '10:15')), english).buttons.map(({ words }) => words);
    expect(next('left-field')).toEqual(['truck 3 in line', 'truck 3 dumped']);
    expect(next('joined-line')).toEqual(['truck 3 dumped']);
    expect(next('dumped')).toEqual(['ticket', 'truck 3 empty, heading back']);
    expect(next('returning')).toEqual(['ticket', 'truck 3 at the field', 'truck 3 loaded']);
    expect(next('parked')).toEqual([]);
    expect(next('down')).toEqual([]);
  });

  it('the receipt of "loaded" is one short line', () => {
    const said = text(receipt(step('3', 'left-field', '10:15', { field: 'north-40' })), english);
    expect(said).toBe('Truck 3: loaded, hauling from North 40, 10:15 AM.');
  });
});

describe('clock times', () => {
  const loadedAt = (ms: number, voice: Voice): string =>
    text(receipt({ ...step('3', 'left-field', '10:15'), atMs: ms }), voice);

  it('are told with the date when it is another day', () => {
    expect(loadedAt(at('2026-10-19 22:05'), english)).toContain('10:05 PM on 10/19');
    expect(loadedAt(at('2026-10-19 22:05'), spanish)).toContain('10:05 p.m. del 19/10');
  });

  it('noon and midnight are 12', () => {
    expect(loadedAt(at('12:05'), english)).toContain('12:05 PM');
    expect(loadedAt(at('00:05'), english)).toContain('12:05 AM');
  });

  // Summer time ends on 2026-11-01 at 2:00 in America/Boise (IANA time zone database): 1:00-1:59 comes twice.
  it('have their zone when the hour comes twice', () => {
    const night = voiceAt('2026-11-01 04:00', 'en');
    const first = at('2026-11-01 01:30');
    expect(loadedAt(first, night)).toContain('1:30 AM MDT');
    expect(loadedAt(first + 3_600_000, night)).toContain('1:30 AM MST');
    expect(loadedAt(at('2026-11-01 00:59'), night)).toContain('12:59 AM.');
    expect(loadedAt(at('2026-11-01 02:00'), night)).toContain('2:00 AM.');
    expect(loadedAt(first, { ...night, language: 'es' })).toContain('1:30 a.m. MDT');
  });

  it('a Spanish time at the end of a sentence has one full stop', () => {
    expect(loadedAt(at('10:15'), spanish)).toMatch(/10:15 a\.m\.$/);
  });
});

describe('units', () => {
  const booked = receipt(ticket('3', '10:40', 50_520, { serial: '048213', grossLb: 79_840, tareLb: 29_320 }));

  it('short tons and pounds', () => {
    expect(text(booked, english)).toContain('25.26 tons net (79,840 lb - 29,320 lb)');
    expect(text(booked, spanish)).toContain('25.26 toneladas netas (79,840 lb - 29,320 lb)');
  });

  it('a metric operation gets tonnes, kilograms and °C, and nothing else', () => {
    expect(text(booked, metric)).toContain('22.92 t net (36,215 kg - 13,299 kg)');
    expect(Math.round(kgFromLb(79_840))).toBe(36_215);
    for (const telling of [
      ...tellings.receipt,
      ...tellings.tally,
      ...tellings.notice,
      ...tellings.refusal,
      ...tellings.left,
    ])
      // What is quoted is an example of what to type.
      expect(text(telling, metric).replaceAll(/"[^"]*"/g, '')).not.toMatch(/\d (lb|tons|°F)\b/);
  });

  it('examples of what to type are in the units in which they would be read', () => {
    const asked: Telling = { tell: 'refusal', refusal: { refused: 'weight-missing' } };
    expect(text(asked, english)).toContain('gross 79840 tare 29320" or "ticket 48213 25.26 tons"');
    // 79,840 lb = 36,215 kg, and a scale there weighs in steps of 20 kg.
    expect(text(asked, metric)).toContain('gross 36220 tare 13300" or "ticket 48213 22.92 tons"');
  });

  it('the serial keeps its leading zero', () => {
    expect(text(booked, english)).toMatch(/^Ticket 048213:/);
  });
});

describe('the board', () => {
  const lines = (rows: typeof boardRows) =>
    text({ tell: 'board', rows, dayStartMs: at('00:00'), dig: freeDig }, english).split('\n');

  it('has a line for every truck, and a legend for the mark only where something is marked', () => {
    const legend = '* worked out from a later message, not told';
    expect(lines(boardRows)).toHaveLength(1 + boardRows.length + 1);
    expect(lines(boardRows).at(-1)).toBe(legend);
    expect(lines(boardRows.filter(({ source }) => source !== 'inferred'))).not.toContain(legend);
  });

  it('the table marks the same rows', () => {
    const { table } = say({ tell: 'board', rows: boardRows, dayStartMs: at('00:00'), dig: freeDig }, english);
    expect(table?.rows.map(([, where = '']) => where.endsWith(' *'))).toEqual(
      boardRows.map(({ source, phase }) => source === 'inferred' && phase !== null),
    );
    expect(table?.rows.every((cells) => cells.length === table.header.length)).toBe(true);
  });

  it('a truck that nothing was heard of is not said to be worked out', () => {
    const [, only] = lines(boardRows.filter(({ phase }) => phase === null));
    expect(only).toBe('Truck 3: nothing heard yet');
  });
});

describe('the line', () => {
  const evidence = { lastSerial: null, trucksAhead: 0.3, ratePerHour: null, newestAgeMin: null };
  const forecast = { known: true, medianMin: 0, lowMin: 0, highMin: 6, evidence } as const;
  const wait: Telling = {
    tell: 'wait',
    station: 'north-station',
    arriveInMin: 0,
    leaveInMin: null,
    haulMin: 25,
    forecast,
    hold: null,
    trouble: null,
  };

  it('is not "0 trucks" long', () => {
    expect(text(wait, english)).toContain('Probably no truck ahead.');
    expect(text(wait, spanish)).toContain('Creo que no hay nadie adelante.');
  });
});
