import { describe, expect, it } from 'vitest';
import { USUAL, usualHaul } from '../../../src/core/harvest/usual-times.ts';
import type { Fact } from '../../../src/core/book/facts.ts';
import { at, fact, given, step } from '../../support/given.ts';

const NORTH = 'north-station';
const minute = (base: number, min: number): string =>
  `${String(base).padStart(2, '0')}:${String(min).padStart(2, '0')}`;

/** Loading, loaded, in line, weighed in and dumped, at those minutes of the hour. */
const load = (
  truck: string,
  hour: number,
  minutes: readonly [number, number, number, number, number],
): Fact[] =>
  (['loading', 'left-field', 'joined-line', 'first-weighed', 'dumped'] as const).map((said, i) =>
    step(truck, said, minute(hour, minutes[i] ?? 0)),
  );

describe('how long a load takes to the pile', () => {
  it('is the usual of the trade where nothing was told', () => {
    expect(usualHaul(given().harvest, NORTH, at('12:00'))).toEqual({ ...USUAL, haulMin: 25 });
  });

  it('is learned from three loads on, as the median of each part', () => {
    const facts = [
      ...load('1', 6, [0, 8, 20, 30, 36]),
      ...load('2', 7, [0, 9, 22, 35, 42]),
      ...load('3', 8, [0, 20, 45, 50, 59]),
    ];
    expect(usualHaul(given(facts.slice(0, 10)).harvest, NORTH, at('12:00'))).toMatchObject({
      fillMin: USUAL.fillMin,
      lineWaitMin: USUAL.lineWaitMin,
    });
    expect(usualHaul(given(facts).harvest, NORTH, at('12:00'))).toEqual({
      fillMin: 9,
      haulMin: 13,
      lineWaitMin: 10,
      unloadMin: 7,
      marginMin: USUAL.marginMin,
    });
  });

  it('is not learned from reports that were taken back', () => {
    const facts = ['1', '2', '3', '4'].flatMap((truck, number) => {
      const header = { by: ['ana', 'ben', 'carla', 'dale'][number] ?? null };
      const target = { by: 'latest', person: header.by ?? '', truck: null } as const;
      return [
        step(truck, 'loading', '06:00', { header }),
        step(truck, 'left-field', '06:01', { header }),
        fact({ kind: 'entry-withdrawn', target }, '06:02', header),
        step(truck, 'left-field', '06:20', { header }),
      ];
    });
    expect(usualHaul(given(facts).harvest, NORTH, at('12:00')).fillMin).toBe(20);
  });

  it('leaves out fillings that cannot be, or had a stop in them', () => {
    const facts = [
      ...load('1', 6, [0, 12, 25, 30, 36]),
      ...load('2', 7, [0, 1, 22, 32, 38]),
      ...load('3', 8, [0, 14, 25, 32, 38]),
      ...load('1', 9, [0, 59, 59, 59, 59]),
      ...load('2', 10, [0, 13, 25, 32, 38]),
      ...load('3', 11, [0, 2, 25, 32, 38]),
    ];
    expect(usualHaul(given(facts).harvest, NORTH, at('12:00')).fillMin).toBe(13);
  });

  it('is that to the station that is asked for, by what had begun by then', () => {
    const west = step('4', 'left-field', '06:00', { station: 'west' });
    const toWest = [
      west,
      step('4', 'joined-line', '06:20', { station: 'west' }),
      step('4', 'first-weighed', '08:20', { station: 'west' }),
    ];
    const facts = [
      ...load('1', 6, [0, 8, 20, 30, 36]),
      ...load('2', 7, [0, 9, 22, 32, 38]),
      ...load('3', 8, [0, 9, 22, 42, 48]),
      ...toWest,
    ];
    const { harvest } = given(facts);
    expect(usualHaul(harvest, NORTH, at('12:00')).lineWaitMin).toBe(10);
    expect(usualHaul(harvest, 'west', at('12:00')).lineWaitMin).toBe(USUAL.lineWaitMin);
    // Of three loads that had begun, two count; the third begins at 8:09.
    expect(usualHaul(harvest, NORTH, at('08:09')).lineWaitMin).toBe(10);
    expect(usualHaul(harvest, NORTH, at('08:08')).lineWaitMin).toBe(USUAL.lineWaitMin);
  });

  it('leaves out a wait of more than four hours: something else happened', () => {
    const waited = (truck: string, hour: number, min: number): Fact[] => [
      step(truck, 'joined-line', minute(hour, 0)),
      step(truck, 'first-weighed', minute(hour + Math.floor(min / 60), min % 60)),
    ];
    const two = [...waited('1', 6, 30), ...waited('2', 6, 40)];
    const waitMin = (min: number) =>
      usualHaul(given([...two, ...waited('3', 6, min)]).harvest, NORTH, at('14:00')).lineWaitMin;
    expect(waitMin(240)).toBe(40);
    expect(waitMin(241)).toBe(USUAL.lineWaitMin);
  });

  it('is hardly moved by one truck that stood for hours', () => {
    const facts = [
      ...load('1', 6, [0, 8, 20, 30, 36]),
      ...load('2', 7, [0, 9, 22, 32, 38]),
      ...load('3', 8, [0, 9, 22, 32, 38]),
      step('4', 'left-field', '08:00'),
      step('4', 'joined-line', '08:20'),
      step('4', 'first-weighed', '11:00'),
    ];
    expect(usualHaul(given(facts).harvest, NORTH, at('12:00')).lineWaitMin).toBe(10);
  });
});
