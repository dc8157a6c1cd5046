/** Factors of NIST Handbook 44, Appendix C, and NIST SP 811, Appendix B. */
import { describe, expect, it } from 'vitest';
import {
  celsiusFromFahrenheit,
  fahrenheitFromCelsius,
  kgFromLb,
  lbFromKg,
  lbFromShortTon,
  lbFromTonne,
  shortTonFromLb,
  tonneFromLb,
} from '../../src/core/units.ts';

/** One unit in the fifteenth digit: as near as a double gets. */
const exactly = (value: number, decimal: string): void => {
  expect(value.toPrecision(15)).toBe(Number(decimal).toPrecision(15));
};

describe('weight, exact by definition (NIST Handbook 44, App. C)', () => {
  it('1 lb = 0.453 592 37 kg', () => {
    exactly(kgFromLb(1), '0.45359237');
    exactly(lbFromKg(0.45359237), '1');
  });

  it('1 short ton = 2,000 lb = 907.184 74 kg = 0.907 184 74 t', () => {
    expect(lbFromShortTon(1)).toBe(2_000);
    exactly(kgFromLb(lbFromShortTon(1)), '907.18474');
    exactly(tonneFromLb(lbFromShortTon(1)), '0.90718474');
  });

  it('1 long ton = 2,240 lb = 1,016.046 908 8 kg', () => {
    exactly(kgFromLb(2_240), '1016.0469088');
  });

  it('1 t = 1.102 311 31 short tons (rounded in the source)', () => {
    expect(shortTonFromLb(lbFromTonne(1)).toFixed(8)).toBe('1.10231131');
  });
});

describe('there and back', () => {
  it.each([20, 29_320, 50_520, 79_840, 129_000])('%i lb', (lb) => {
    exactly(lbFromKg(kgFromLb(lb)), String(lb));
    exactly(lbFromTonne(tonneFromLb(lb)), String(lb));
    expect(lbFromShortTon(shortTonFromLb(lb))).toBe(lb);
  });
});

describe('temperature: F = 1.8 C + 32 (NIST SP 811, App. B)', () => {
  it.each([
    [0, 32],
    [100, 212],
    [-40, -40],
    [12.8, 55.04],
    [18.3, 64.94],
    [-3, 26.6],
  ])('%f °C = %f °F', (celsius, fahrenheit) => {
    expect(fahrenheitFromCelsius(celsius)).toBe(fahrenheit);
    expect(celsiusFromFahrenheit(fahrenheit)).toBeCloseTo(celsius, 12);
  });

  // A weather service sends whole °F by way of °C.
  it('whole °F come back whole from °C', () => {
    for (let f = -20; f <= 110; f += 1) expect(fahrenheitFromCelsius(celsiusFromFahrenheit(f))).toBe(f);
  });
});
