/**
 * Units of measure, in the type and in the name, with exact conversions.
 *
 * A unit type is a number whose unit only the compiler sees: a plain number can be passed as any unit, but pounds cannot
 * be passed as kilograms.
 *
 * Source of the factors: NIST Handbook 44, Appendix C (lb = 0.45359237 kg exactly; short ton = 907.18474 kg exactly).
 */
type InUnit<Name extends string> = number & { readonly unit?: Name };

export type Lb = InUnit<'lb'>;
export type Kg = InUnit<'kg'>;
/** 2,000 lb. "Tons" alone means short tons, unless the operation is metric. */
export type ShortTon = InUnit<'short ton'>;
/** 1,000 kg. */
export type Tonne = InUnit<'tonne'>;
export type Minutes = InUnit<'min'>;
/** Milliseconds since 1970-01-01T00:00Z. */
export type EpochMs = InUnit<'epoch ms'>;
export type Fahrenheit = InUnit<'degF'>;
export type Celsius = InUnit<'degC'>;

const KG_PER_LB = 0.45359237;
export const LB_PER_SHORT_TON = 2000;
/** Exact: 1 in. is 25.4 mm (NIST SP 811, Appendix B). */
export const MM_PER_INCH = 25.4;
export const MS_PER_SECOND = 1_000;
export const MIN_PER_HOUR = 60;
export const MS_PER_MINUTE = 60_000;
export const MS_PER_HOUR = 3_600_000;
/** 24 hours, whatever the calendar says; for calendar days see zone-clock.ts. */
export const MS_PER_DAY = 86_400_000;
export const HOURS_PER_DAY = 24;

export const lbFromKg = (kg: Kg): Lb => kg / KG_PER_LB;
export const kgFromLb = (lb: Lb): Kg => lb * KG_PER_LB;
export const lbFromShortTon = (tons: ShortTon): Lb => tons * LB_PER_SHORT_TON;
export const shortTonFromLb = (lb: Lb): ShortTon => lb / LB_PER_SHORT_TON;
export const lbFromTonne = (tonnes: Tonne): Lb => (tonnes * 1000) / KG_PER_LB;
export const tonneFromLb = (lb: Lb): Tonne => (lb * KG_PER_LB) / 1000;

export const minutesBetween = (fromMs: EpochMs, toMs: EpochMs): Minutes => (toMs - fromMs) / MS_PER_MINUTE;
export const hoursBetween = (fromMs: EpochMs, toMs: EpochMs): number => (toMs - fromMs) / MS_PER_HOUR;
export const addMinutes = (atMs: EpochMs, minutes: Minutes): EpochMs => atMs + minutes * MS_PER_MINUTE;

/**
 * Rounded to a thousandth: weather services send whole °F by way of °C, and 12.777777777777779 °C must not become
 * 55.00000000000001 °F and so "above 55".
 */
export const fahrenheitFromCelsius = (c: Celsius): Fahrenheit => Math.round((c * 1.8 + 32) * 1000) / 1000;
export const celsiusFromFahrenheit = (f: Fahrenheit): Celsius => (f - 32) / 1.8;

/** 0 °C. */
export const FREEZING_F: Fahrenheit = 32;

/** Services have sent values in the thousands; air beyond ±60 °C is a fault of the service. Grade: chosen. */
export const isPlausibleAirF = (temperatureF: Fahrenheit): boolean =>
  temperatureF >= -76 && temperatureF <= 140;

/** A span of time, `fromMs` before `toMs`. */
export interface Span {
  fromMs: EpochMs;
  toMs: EpochMs;
}
