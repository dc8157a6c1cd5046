import { describe, expect, test } from 'vitest';
import type { Fact } from '../../../src/core/book/facts.ts';
import type { EpochMs, Fahrenheit } from '../../../src/core/units.ts';
import { FEWEST_PAIRS } from '../../../src/core/weather/assumptions.ts';
import { expectedError } from '../../../src/core/weather/forecast-error.ts';
import { forecastPairs } from '../../../src/core/weather/forecast-pairs.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, fact, given } from '../../support/given.ts';

const HOUR_MS = 3_600_000;
const place = { id: 'north-station', zone: 'America/Boise' };

/** 60 h from `issuedMs` on, at one temperature. */
const forecast = (issuedMs: EpochMs, temperatureF: Fahrenheit): Fact => {
  const firstMs = Math.floor(issuedMs / HOUR_MS) * HOUR_MS;
  const hours = Array.from({ length: 60 }, (_, hour) => ({
    startMs: firstMs + hour * HOUR_MS,
    temperatureF,
  }));
  const happening = {
    kind: 'forecast-issued',
    place: place.id,
    issuedMs,
    hours,
    rain: [],
    freezeAlerts: null,
  } as const;
  return fact(happening, '00:00', { atMs: issuedMs });
};
/** One a full hour of the afternoon of that date, rising to `highF` at 15:00. */
const afternoon = (date: string, highF: Fahrenheit, hours = [12, 13, 14, 15, 16, 17, 18]): Fact[] =>
  hours.map((hour) =>
    fact(
      { kind: 'air-observed', place: place.id, temperatureF: highF - Math.abs(hour - 15) },
      `${date} ${hour}:00`,
    ),
  );
const pairsAt = (station: string, facts: readonly Fact[]) => {
  const { issued, observed } = given(facts).harvest;
  return forecastPairs(issued.get(station) ?? [], observed.get(station) ?? [], place.zone, zoneClock);
};
const pairs = (...facts: readonly (Fact | Fact[])[]) => pairsAt(place.id, facts.flat());

describe('a forecast and what came', () => {
  test('make a pair for the morning of the day and one for the morning before', () => {
    const dayBefore = forecast(at('2026-10-19 04:20'), 61);
    const sameDay = forecast(at('2026-10-20 04:20'), 63);
    expect(pairs(dayBefore, sameDay, afternoon('2026-10-20', 65))).toEqual([
      { leadHours: 10 + 2 / 3, forecastF: 63, observedF: 65 },
      { leadHours: 34 + 2 / 3, forecastF: 61, observedF: 65 },
    ]);
  });

  test('are compared by the last forecast before five, not by later ones nor by those of the day before that', () => {
    const facts = ['2026-10-19 16:00', '2026-10-20 03:20', '2026-10-20 04:50', '2026-10-20 05:10'].map(
      (time, nth) => forecast(at(time), 60 + nth),
    );
    expect(pairs(facts, afternoon('2026-10-20', 65)).map(({ forecastF }) => forecastF)).toEqual([62]);
  });

  test('count only where the forecast came in the twelve hours before five', () => {
    const highsBy = (issued: string) =>
      pairs(forecast(at(issued), 60), afternoon('2026-10-20', 65)).map(({ forecastF }) => forecastF);
    expect(highsBy('2026-10-20 05:00')).toEqual([60]);
    expect(highsBy('2026-10-19 17:01')).toEqual([60]);
    expect(highsBy('2026-10-19 17:00')).toEqual([]);
  });

  test('make none where too few hours were measured, or the forecast does not reach so far', () => {
    const issuedMs = at('2026-10-20 04:20');
    expect(pairs(forecast(issuedMs, 63), afternoon('2026-10-20', 65, [12, 13, 14, 15]))).toEqual([]);
    expect(pairs(forecast(issuedMs, 63), afternoon('2026-10-20', 65, [12, 13, 14, 15, 16]))).toHaveLength(1);
    const hours = [{ startMs: issuedMs, temperatureF: 63 }];
    const short = {
      kind: 'forecast-issued',
      place: place.id,
      issuedMs,
      hours,
      rain: [],
      freezeAlerts: null,
    } as const;
    expect(pairs(fact(short, '04:20'), afternoon('2026-10-20', 65))).toEqual([]);
  });

  test('belong to one place', () => {
    const facts = [forecast(at('2026-10-20 04:20'), 63), ...afternoon('2026-10-20', 65)];
    expect(pairsAt('south-station', facts)).toEqual([]);
  });

  test('are matched by the wall clock over the end of daylight time', () => {
    // 5:00 is 11:00Z on 31 October and 12:00Z on 1 November (National Institute of Standards: ends at 2:00 on the first Sunday of November).
    const facts = [forecast(at('2026-11-01 04:50'), 60), ...afternoon('2026-11-01', 61)];
    expect(at('2026-11-01 04:50')).toBe(Date.parse('2026-11-01T11:50Z'));
    expect(pairs(facts)).toEqual([{ leadHours: 10 + 1 / 6, forecastF: 60, observedF: 61 }]);
  });
});

test('a season of them teaches the bias of the place: 30 count as much as the usual, as many as that again three quarters', () => {
  // A valley that is always 4 °F warmer than forecast, give or take 1 °F.
  const days = Array.from({ length: FEWEST_PAIRS }, (_, nth) => {
    const date = nth < 16 ? `2026-09-${15 + nth}` : `2026-10-${String(nth - 15).padStart(2, '0')}`;
    return [forecast(at(`${date} 04:00`), 60), ...afternoon(date, 64 + (nth % 2 === 0 ? 1 : -1))];
  });
  const { biasF, sdF } = expectedError(11, pairs(days.flat()));
  // Half of 4 °F, and half of the usual 0.8 + 0.1/6 °F at 11 h.
  expect(biasF).toBeCloseTo(2 + (0.8 + 0.1 / 6) / 2, 6);
  // sqrt((30/29 · 1 + sd²) / 2), sd = 2.5 + 0.2/6 °F at 11 h.
  expect(sdF).toBeCloseTo(Math.sqrt((30 / 29 + (2.5 + 0.2 / 6) ** 2) / 2), 6);
});
