import { describe, expect, it } from 'vitest';
import { rainAround } from '../../../src/core/weather/rain.ts';
import { at } from '../../support/given.ts';

const rain = (from: string, to: string, inches: number) => ({ fromMs: at(from), toMs: at(to), inches });
const forecast = (from: string, ...totals: ReturnType<typeof rain>[]) => ({
  hours: [{ startMs: at(from) }],
  rain: totals,
});

describe('rain around a moment', () => {
  it('is not known where no forecast tells of rain', () => {
    expect(rainAround([], at('12:00'))).toBeNull();
    expect(rainAround([forecast('06:00')], at('12:00'))).toBeNull();
  });

  it('counts the share of a period on either side', () => {
    const one = forecast('06:00', rain('10:00', '14:00', 0.4));
    const around = rainAround([one], at('11:00'));
    expect(around?.beforeIn).toBeCloseTo(0.1, 10);
    expect(around?.nextIn).toBeCloseTo(0.3, 10);
  });

  it('a newer forecast takes the place of an older one from its own first hour on, dry or not', () => {
    const older = forecast('06:00', rain('06:00', '10:00', 0.27), rain('12:00', '18:00', 0.82));
    const around = rainAround([older, forecast('11:00')], at('11:00'));
    expect(around?.beforeIn).toBeCloseTo(0.27, 10);
    expect(around?.nextIn).toBe(0);
  });
});
