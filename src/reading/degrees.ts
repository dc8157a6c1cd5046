import { fahrenheitFromCelsius } from '../core/units.ts';
import type { Fahrenheit } from '../core/units.ts';
import { numeralOf } from './numbers.ts';

/** Bare degrees of a metric operation are Celsius up to here; no beet or air limit is as cold as 35 °F or as hot as 35 °C. */
const MAX_BARE_CELSIUS = 35;

/** Degrees as written, in Fahrenheit. `unit` null: not said. */
export const fahrenheitOf = (text: string, unit: 'F' | 'C' | null, metric: boolean): Fahrenheit => {
  const { decimal } = numeralOf(text);
  const isCelsius = unit === 'C' || (unit === null && metric && decimal <= MAX_BARE_CELSIUS);
  return isCelsius ? fahrenheitFromCelsius(decimal) : decimal;
};
