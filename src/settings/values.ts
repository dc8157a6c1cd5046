import { z } from 'zod';
import { fahrenheitFromCelsius, lbFromKg } from '../core/units.ts';

/** Every value of the operation file arrives as text, so that truck "01" keeps its zero. */
export const text = z.string().trim().min(1, { error: 'is empty: write a value, or remove the line' });

interface Measure {
  /** Each unit that may be written, with its conversion to the roster's unit. */
  units: Readonly<Record<string, (value: number) => number>>;
  min: number;
  max: number;
  example: string;
}

const same = (value: number): number => value;
const NUMBER = /^-?(\d{1,3}(,\d{3})+|\d+)(\.\d+)?/;

/** The value in the roster's unit; null = not a number, or none of the units. */
const measured = (said: string, units: Measure['units']): number | null => {
  const digits = NUMBER.exec(said)?.[0];
  if (digits === undefined) return null;
  const convert = units[said.slice(digits.length).replace('°', '').trim()];
  return convert === undefined ? null : convert(Number(digits.replaceAll(',', '')));
};

/** A number with its unit, such as "86,000 lb". A number without one is refused, because its unit could be wrong. */
const measure = ({ units, min, max, example }: Measure) =>
  text.transform((said, context) => {
    const value = measured(said, units);
    if (value !== null && value >= min && value <= max) return value;
    const wrong = value === null ? 'cannot be read' : 'is not plausible';
    context.addIssue({ code: 'custom', message: `"${said}" ${wrong}: write it as in "${example}"` });
    return z.NEVER;
  });

const plain = (min: number, max: number, example: string) =>
  measure({ units: { '': same }, min, max, example });

const weights = { lb: same, kg: lbFromKg };

// The bounds only catch slips (tons or kilograms meant, a digit too many). Grade: source for 200,000 lb, the capacity of
// a vehicle scale with 10,000 divisions of 20 lb (NIST Handbook 44, Scales, class III L); common practice for the rest.
export const grossWeight = measure({ units: weights, min: 20_000, max: 200_000, example: '86,000 lb' });
export const temperature = measure({
  units: { F: same, C: fahrenheitFromCelsius },
  min: 33,
  max: 90,
  example: '60 F',
});
export const minutes = measure({ units: { min: same }, min: 1, max: 600, example: '45 min' });
export const acres = plain(0.1, 10_000, '38');
export const pilers = plain(1, 20, '2').refine(Number.isInteger, {
  error: 'must be a whole number: write "2"',
});
export const axles = plain(2, 12, '5').refine(Number.isInteger, {
  error: 'must be a whole number: write "5"',
});
export const feet = measure({ units: { ft: same }, min: 9, max: 120, example: '51 ft' });
export const tonsPerAcre = measure({ units: { 't/ac': same }, min: 5, max: 80, example: '30 t/ac' });
export const rows = plain(1, 24, '8').refine(Number.isInteger, {
  error: 'must be a whole number: write "8"',
});
export const inches = measure({ units: { in: same }, min: 10, max: 60, example: '22 in' });
export const mph = measure({ units: { mph: same }, min: 0.5, max: 10, example: '3 mph' });
export const percent = measure({ units: { '%': (value) => value / 100 }, min: 0.1, max: 1, example: '60 %' });
export const latitude = plain(-90, 90, '43.615');
export const longitude = plain(-180, 180, '-116.202');

/** "28,000 lb to 34,000 lb". */
export const tareRange = text.transform((said, context) => {
  const [min = null, max = null, more] = said.split(' to ').map((part) => measured(part.trim(), weights));
  if (min !== null && max !== null && more === undefined && min >= 5_000 && min < max && max <= 60_000) {
    return { min, max };
  }
  const example = '28,000 lb to 34,000 lb';
  context.addIssue({
    code: 'custom',
    message: `"${said}" is not a range of empty weights: write it as in "${example}"`,
  });
  return z.NEVER;
});

const hourSpan = z.string().transform((said): [number, number] => {
  const [, from, to] = /^(\d{1,2})\s*-\s*(\d{1,2})$/.exec(said.trim()) ?? [];
  return [Number(from), Number(to)];
});

/** "18-6": from six in the evening to six in the morning. */
export const shiftHours = hourSpan.refine(([from, to]) => from !== to && from <= 24 && to <= 24, {
  error: 'is no shift: write the hours such as 6-18, or 18-6 for a night, or leave it out',
});

/** "5-22": from five in the morning to ten at night. */
export const workHours = hourSpan.refine(([from, to]) => from < to && to <= 24, {
  error: 'is not a span of hours within a day: write one such as 5-22, or leave it out for all day and night',
});
