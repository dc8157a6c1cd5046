/** Daily and yearly temperature waves in soil, against published solutions and tables. */
import { describe, expect, it } from 'vitest';
import { DAMPING_DEPTH_CM } from '../../src/core/weather/assumptions.ts';
import { atDepthF, dailyWaves, rootEstimate, toppedGainF } from '../../src/core/weather/root.ts';
import type { DailyWaves } from '../../src/core/weather/root.ts';
import { seattleHours } from '../support/seattle-hours.ts';

const YEAR_HOURS = 365 * 24;

/** Depth at which a wave is weakened to 1/e, cm: sqrt(2 D / ω) with ω = 2π / period (Hillel 1982). */
const dampingDepthCm = (diffusivityM2PerS: number, periodHours: number): number =>
  100 * Math.sqrt((diffusivityM2PerS * periodHours * 3600) / Math.PI);

/** Amplitude and hour of the maximum at a depth, searched for minute by minute. */
const waveAt = (
  waves: DailyWaves,
  depthCm: number,
  dampingCm: number,
): { amplitude: number; maxHour: number } => {
  const minutes = Array.from({ length: 24 * 60 }, (_, i) => atDepthF(waves, depthCm, i / 60, dampingCm));
  const most = Math.max(...minutes);
  return { amplitude: (most - Math.min(...minutes)) / 2, maxHour: minutes.indexOf(most) / 60 };
};

/** One wave a day of this amplitude with its maximum at this hour. */
const oneWave = (meanF: number, amplitude: number, maxHour: number): DailyWaves => {
  const phase = (2 * Math.PI * maxHour) / 24;
  return {
    meanF,
    waves: [{ timesADay: 1, cosF: amplitude * Math.cos(phase), sinF: amplitude * Math.sin(phase) }],
  };
};

describe('damping depth', () => {
  // Diffusivities of common soils as in the tables of Oke and of Arya (from memory); depths by the formula of Hillel 1982,
  // https://soilphysics.okstate.edu, worked out apart from this code. ω is 2π a day: that site's glossary prints 1.
  it.each([
    ['dry peat', 1.0e-7, 5.24, 1.0],
    ['dry clay', 1.8e-7, 7.04, 1.34],
    ['dry sand', 2.4e-7, 8.12, 1.55],
    ['saturated clay', 5.1e-7, 11.84, 2.26],
    ['saturated sand', 7.4e-7, 14.27, 2.73],
  ])('of %s: day and year', (_, diffusivity, dayCm, yearM) => {
    expect(dampingDepthCm(diffusivity, 24)).toBeCloseTo(dayCm, 2);
    expect(dampingDepthCm(diffusivity, YEAR_HOURS) / 100).toBeCloseTo(yearM, 2);
  });

  it('of rock is 0.17 m for the day and 3.2 m for the year (Physical Principles of Sedimentary Basin Analysis, p. 175)', () => {
    expect(dampingDepthCm(1e-6, 24) / 100).toBeCloseTo(0.17, 2);
    expect(dampingDepthCm(1e-6, YEAR_HOURS) / 100).toBeCloseTo(3.2, 1);
  });

  it('of a Kanhapludalf with 0.034 m² a day measured (Revista Brasileira de Ciência do Solo) is 10.4 cm', () => {
    expect(dampingDepthCm(0.034 / 86_400, 24)).toBeCloseTo(10.4, 1);
  });

  it('of the estimate lies between those of dry clay and of saturated clay', () => {
    expect(DAMPING_DEPTH_CM).toBeGreaterThan(dampingDepthCm(1.8e-7, 24));
    expect(DAMPING_DEPTH_CM).toBeLessThan(dampingDepthCm(5.1e-7, 24));
  });

  it('of the year is √365 times that of the day', () => {
    expect(dampingDepthCm(3e-7, YEAR_HOURS) / dampingDepthCm(3e-7, 24)).toBeCloseTo(Math.sqrt(365), 10);
  });

  it('with 2e-7 m²/s leaves 5 % of the yearly wave at 4.24 m (exercise at transtutors.com; answer d ln 20)', () => {
    expect((dampingDepthCm(2e-7, YEAR_HOURS) / 100) * Math.log(20)).toBeCloseTo(4.24, 2);
  });
});

describe('the daily wave in the ground', () => {
  // Hillel 1982: amplitude e^(-z/d), lag z/d rad. Mean 15, amplitude 8, surface highest at 14:00, d = 12 cm.
  const surface = oneWave(15, 8, 14);

  it.each([
    [0, 8, 14],
    [10, 3.477, 17 + 11 / 60],
    [20, 1.511, 20 + 22 / 60],
  ])('at %d cm has amplitude %d and is highest at hour %d', (depthCm, amplitude, maxHour) => {
    const found = waveAt(surface, depthCm, 12);
    expect(found.amplitude).toBeCloseTo(amplitude, 3);
    expect(found.maxHour).toBeCloseTo(maxHour, 1);
  });

  it('at the damping depth is 0.3679 of it and 3.82 h late, at π times that upside down and 0.0432 of it', () => {
    expect(waveAt(surface, 12, 12).amplitude / 8).toBeCloseTo(0.3679, 4);
    expect(waveAt(surface, 12, 12).maxHour - 14).toBeCloseTo(3.82, 1);
    expect(waveAt(surface, 12 * Math.PI, 12).amplitude / 8).toBeCloseTo(0.0432, 4);
    expect(waveAt(surface, 12 * Math.PI, 12).maxHour).toBeCloseTo(2, 1);
  });

  it('is what the heat equation gives, solved by finite differences over 20 days', () => {
    // Explicit scheme, 5 mm, D = 5e-7 m²/s, ground 1.5 m deep; amplitudes of the last day.
    const [diffusivity, dz, dt] = [5e-7, 0.005, 20];
    const ratio = (diffusivity * dt) / dz ** 2;
    let ground = Array.from({ length: 301 }, () => 0);
    const seen = new Map([10, 20, 30, 40].map((node) => [node, { least: Infinity, most: -Infinity }]));
    const steps = (20 * 86_400) / dt;
    for (let step = 1; step <= steps; step += 1) {
      const before = ground;
      ground = before.map((value, i) => {
        if (i === 0) return 8 * Math.sin((2 * Math.PI * step * dt) / 86_400);
        if (i === before.length - 1) return 0;
        return value + ratio * ((before[i - 1] ?? 0) - 2 * value + (before[i + 1] ?? 0));
      });
      if (step * dt < 19 * 86_400) continue;
      for (const [node, range] of seen) {
        range.least = Math.min(range.least, ground[node] ?? NaN);
        range.most = Math.max(range.most, ground[node] ?? NaN);
      }
    }
    const dampingCm = dampingDepthCm(diffusivity, 24);
    for (const [node, { least, most }] of seen) {
      const depthCm = node * dz * 100;
      const { amplitude } = waveAt(oneWave(0, 8, 6), depthCm, dampingCm);
      expect((most - least) / 2).toBeCloseTo(amplitude, 2);
    }
    expect(waveAt(oneWave(0, 8, 6), 10, dampingCm).amplitude).toBeCloseTo(3.41, 2);
    expect(waveAt(oneWave(0, 8, 6), 20, dampingCm).amplitude).toBeCloseTo(1.454, 2);
  });
});

describe('the waves of a mean October day in Seattle (npm vega-datasets 3.2.1)', () => {
  const october = seattleHours().filter(({ startMs }) => new Date(startMs).getUTCMonth() === 9);
  const meanDay = Array.from({ length: 24 }, (_, hour) => {
    const values = october.filter(({ startMs }) => new Date(startMs).getUTCHours() === hour);
    return values.reduce((sum, { celsius }) => sum + celsius, 0) / values.length;
  });
  const { meanF: mean, waves } = dailyWaves(meanDay);
  const size = (n: number): number => Math.hypot(waves[n]?.cosF ?? NaN, waves[n]?.sinF ?? NaN);

  it('are a mean of 11.239 °C, a first of 2.424 that is highest at 15.15 h, and a second of 0.764', () => {
    expect(mean).toBeCloseTo(11.239, 3);
    expect(size(0)).toBeCloseTo(2.424, 3);
    expect(size(1)).toBeCloseTo(0.764, 3);
    const maxHour = (Math.atan2(waves[0]?.sinF ?? NaN, waves[0]?.cosF ?? NaN) * 12) / Math.PI;
    expect((maxHour + 24) % 24).toBeCloseTo(15.15, 2);
  });

  it('make roots warmest 3 to 5 hours after the air', () => {
    const airMaxHour = meanDay.indexOf(Math.max(...meanDay));
    const { maxHour } = waveAt({ meanF: mean, waves }, 12, 11);
    expect(maxHour - airMaxHour).toBeGreaterThan(3);
    expect(maxHour - airMaxHour).toBeLessThan(5);
  });
});

describe('roots at an hour', () => {
  it('keep the mean of the day in a steady climate and swing less than the air', () => {
    const air = Array.from({ length: 72 }, (_, i) => ({
      startMs: i * 3_600_000,
      temperatureF: 50 + 12 * Math.cos((2 * Math.PI * (i - 15)) / 24),
    }));
    const day = Array.from(
      { length: 24 },
      (_, i) => rootEstimate(air, (24 + i) * 3_600_000, 0)?.canopiedF ?? NaN,
    );
    expect(day.reduce((sum, f) => sum + f, 0) / 24).toBeCloseTo(50, 6);
    // 12 °F e^(-12/11).
    expect((Math.max(...day) - Math.min(...day)) / 2).toBeCloseTo(12 * Math.exp(-12 / 11), 1);
  });

  const DAY_MS = 24 * 3_600_000;
  /** Six days at 50 °F, and one of 62 °F after them. */
  const front = Array.from({ length: 7 * 24 }, (_, i) => ({
    startMs: i * 3_600_000,
    temperatureF: i < 6 * 24 ? 50 : 62,
  }));

  it('remember six days of the air: a day that is 12 °F warmer moves them by 2 °F', () => {
    const estimate = rootEstimate(front, 6.5 * DAY_MS, 0);
    expect(estimate?.canopiedF).toBeCloseTo(52, 6);
    expect(estimate?.because).toMatchObject({ memoryDays: 6 });
  });

  // Against hourly soil at Kings Creek, Kansas (public repository soilwater/pynotes-agriscience, 15 September to 15
  // November 2022 and 2023, 124 days, 12 cm between the probes at 5 and 20 cm, at 15:00): root mean square errors.
  it.each([
    [1, 8.2, 62],
    [3, 5.3, 54],
    [6, 3.9, 52],
  ])('know less the fewer days are known: %d', (days, errorF, expectedF) => {
    const known = front.slice((7 - days) * 24);
    const estimate = rootEstimate(known, 6.5 * DAY_MS, 0);
    expect(estimate?.canopiedF).toBeCloseTo(expectedF, 6);
    expect(estimate?.errorF).toBe(errorF);
  });

  it('are estimated over hours that are missing, but not over many', () => {
    const missing = (count: number) => front.filter((_, i) => i >= count);
    expect(rootEstimate(missing(24 + 14), 6.5 * DAY_MS, 0)?.because).toMatchObject({ memoryDays: 6 });
    expect(rootEstimate(missing(24 + 16), 6.5 * DAY_MS, 0)?.because).toMatchObject({ memoryDays: 5 });
  });

  it('are not estimated without a whole day of air', () => {
    expect(rootEstimate([{ startMs: 0, temperatureF: 50 }], 0, 0)).toBeNull();
  });
});

describe('topped crowns (Michigan State University Extension, trial of 4 October 2011)', () => {
  it('gain about 5 °F an hour, and 13.5 °F at most', () => {
    expect(toppedGainF(1)).toBe(5);
    expect(toppedGainF(2.7)).toBeCloseTo(13.5, 10);
    expect(toppedGainF(8)).toBe(13.5);
    expect(toppedGainF(-1)).toBe(0);
  });
});
