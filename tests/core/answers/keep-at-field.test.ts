import { describe, expect, it } from 'vitest';
import type { Fact, HaulStep } from '../../../src/core/book/facts.ts';
import { keepAtField } from '../../../src/core/answers/keep-at-field.ts';
import { lineObservations } from '../../../src/core/line/observations.ts';
import type { WaitForecast } from '../../../src/core/line/types.ts';
import { at, fact, given, step } from '../../support/given.ts';
import { raised } from '../../support/notices.ts';

const NORTH = 'north-station';
const evidence = { lastSerial: null, trucksAhead: null, ratePerHour: null, newestAgeMin: null };
const known = (medianMin: number) =>
  ({ known: true, medianMin, lowMin: medianMin, highMin: medianMin, evidence }) as const;
const unknown = { known: false, newestAgeMin: null, usual: null } as const;

/** Truck 2 would be in line at 10:30; leaving half an hour later, at 11:00. */
const asked = { nowMs: at('10:00'), arriveInMin: 30, haulMin: 30, opensMs: null };
const waits = (nowMin: number | null, laterMin: number | null): WaitForecast[] =>
  [nowMin, laterMin].map((min) => (min === null ? unknown : known(min)));
const advice = (facts: readonly Fact[], forecasts: readonly WaitForecast[]) => {
  const { harvest } = given(facts);
  const seen = lineObservations(harvest, NORTH, { fromMs: at('00:00'), toMs: at('23:59') });
  return keepAtField(harvest, '2', seen, asked, forecasts);
};

const loading = step('2', 'loading', '09:50');
/** Another empty truck at the digger, so that truck 2 is not needed back first. */
const twoThere = [loading, step('3', 'at-field', '09:40')];
const pilers = (clock: string, open: number | null, down: number | null): Fact =>
  fact({ kind: 'pilers-seen', station: NORTH, open, down }, clock);

describe('whether to ask at all', () => {
  it.each(['at-field', 'loading', 'left-field'] as const)('a truck that said "%s" may wait', (said) => {
    expect(advice([step('2', said, '09:50')], waits(40, 40))).not.toBeNull();
  });

  it.each(['joined-line', 'first-weighed', 'dumped', 'parked', 'down'] as const satisfies HaulStep[])(
    'a truck that said "%s" has nothing to wait for at the field',
    (said) => {
      expect(advice([step('2', said, '09:50')], waits(40, 40))).toBeNull();
    },
  );

  it('a truck of which nothing was heard gets no advice', () => {
    expect(advice([], waits(40, 40))).toBeNull();
  });

  it('a wait under twenty minutes is not worth it, one of twenty is', () => {
    expect(advice(twoThere, waits(19, 19))).toBeNull();
    expect(advice(twoThere, waits(20, 20))).not.toBeNull();
  });

  it('a line that nobody can tell of, now or in half an hour, gives no advice', () => {
    expect(advice(twoThere, waits(null, 40))).toBeNull();
    expect(advice(twoThere, waits(40, null))).toBeNull();
  });
});

describe('the digger', () => {
  it('needs the truck back where no other empty truck is there', () => {
    const elsewhere = [step('3', 'left-field', '09:40'), step('4', 'parked', '09:00')];
    expect(advice([loading, ...elsewhere], waits(60, 40))).toMatchObject({
      hold: false,
      because: 'needed-next',
    });
  });

  it.each(['at-field', 'loading'] as const)('has another truck that said "%s"', (said) => {
    expect(advice([loading, step('3', said, '09:40')], waits(60, 40))).toMatchObject({ hold: true });
  });
});

describe('the line', () => {
  it('that is as long half an hour later is no reason to wait: each minute held is lost', () => {
    expect(advice(twoThere, waits(40, 40))).toEqual({ hold: false, because: 'busy-line', laterPerMin: 1 });
  });

  it('that falls from 60 to 40 minutes costs ten of the thirty minutes held', () => {
    expect(advice(twoThere, waits(60, 40))).toMatchObject({ hold: true, because: 'short-line' });
    const told = advice(twoThere, waits(60, 40));
    expect(told?.because !== 'closed' && told?.laterPerMin).toBeCloseTo(1 / 3, 10);
  });

  it('that grows never costs more than the minutes held', () => {
    expect(advice(twoThere, waits(40, 70))).toEqual({ hold: false, because: 'busy-line', laterPerMin: 1 });
  });

  it('stands still where all pilers are down, by the newest word before the truck gets there', () => {
    const standstill = { hold: true, because: 'standstill' };
    const busy = { hold: false, because: 'busy-line' };
    const told = (...words: Fact[]) => advice([...twoThere, ...words], waits(40, 40));
    expect(told(pilers('09:30', null, 2))).toMatchObject(standstill);
    expect(told(pilers('09:30', null, 1))).toMatchObject(busy);
    expect(told(pilers('09:30', null, 2), pilers('09:45', null, 0))).toMatchObject(busy);
    expect(told(pilers('09:30', null, 2), pilers('09:45', 1, null))).toMatchObject(busy);
    expect(told(pilers('09:30', 2, 0), pilers('09:45', null, 2))).toMatchObject(standstill);
    expect(told(pilers('10:30', null, 2))).toMatchObject(standstill);
    expect(told(pilers('10:31', null, 2))).toMatchObject(busy);
  });
});

describe('a stop of the dig that is told for later', () => {
  // In line at 10:30, 60 min of wait, 30 min back: at the field again at 12:00.
  const stopping = (clock: string) =>
    advice([...twoThere, raised('09:00', { stopAtMs: at(clock) })], waits(60, 60));

  it('before the truck could be back makes it wait loaded', () => {
    expect(stopping('11:59')).toMatchObject({ hold: true, because: 'field-stops' });
  });

  it('no earlier than the truck is back does not', () => {
    expect(stopping('12:00')).toMatchObject({ hold: false, because: 'busy-line' });
  });
});
