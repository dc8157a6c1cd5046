/** The course of a day from its extremes (Campbell & Norman 1998, eq. 2.2), which the weather backtest rests on. */
import { describe, expect, it } from 'vitest';
import { diurnalShare, diurnalTemperature } from '../support/diurnal.ts';
import { seattleHours } from '../support/seattle-hours.ts';

const HOUR_MS = 3_600_000;

describe("Campbell & Norman's day", () => {
  it('of 10 to 30 °C has 25.08958 °C at 11:00 (documentation of the R package TrenchR, diurnal_temp_variation_sine)', () => {
    const range = { lowest: 10, highest: 30 };
    expect(diurnalTemperature(range, range, range, 11)).toBeCloseTo(25.08958, 5);
  });

  it('is highest at 13.94 h and lowest at 4.46 h', () => {
    const minutes = Array.from({ length: 24 * 100 }, (_, i) => diurnalShare(i / 100));
    expect(Math.max(...minutes)).toBeCloseTo(0.9974, 4);
    expect(Math.min(...minutes)).toBeCloseTo(0.0253, 4);
    expect(minutes.indexOf(Math.max(...minutes)) / 100).toBeCloseTo(13.94, 1);
    expect(minutes.indexOf(Math.min(...minutes)) / 100).toBeCloseTo(4.46, 1);
  });

  it('is off by 0.385 °C (root mean square) over the hourly normals of a Seattle October', () => {
    const byDay = new Map<number, { hour: number; celsius: number }[]>();
    for (const { startMs, celsius } of seattleHours()) {
      const day = Math.floor(startMs / (24 * HOUR_MS));
      byDay.set(day, [...(byDay.get(day) ?? []), { hour: (startMs / HOUR_MS) % 24, celsius }]);
    }
    const rangeOf = (day: number): { lowest: number; highest: number } => {
      const values = byDay.get(day)?.map(({ celsius }) => celsius) ?? [];
      return { lowest: Math.min(...values), highest: Math.max(...values) };
    };
    const first = Date.parse('2010-10-01T00:00Z') / (24 * HOUR_MS);
    const errors = Array.from({ length: 31 }, (_, i) => first + i).flatMap((day) =>
      (byDay.get(day) ?? []).map(
        ({ hour, celsius }) =>
          diurnalTemperature(rangeOf(day - 1), rangeOf(day), rangeOf(day + 1), hour) - celsius,
      ),
    );
    const rms = Math.sqrt(errors.reduce((sum, error) => sum + error ** 2, 0) / errors.length);
    expect(rms).toBeCloseTo(0.385, 1);
    expect(Math.max(...errors.map(Math.abs))).toBeLessThan(1);
  });
});
