import { z } from 'zod';
import { MM_PER_INCH, MS_PER_HOUR, fahrenheitFromCelsius, isPlausibleAirF } from '../../src/core/units.ts';
import type { Span } from '../../src/core/units.ts';
import type { WeatherResult, PeriodHigh, RainTotal } from '../../src/ports/weather.ts';
import { parseInterval } from './interval.ts';

type Fresh = Extract<WeatherResult, { result: 'fresh' }>;
export type NwsForecast = Omit<Fresh, 'result' | 'freezeAlerts' | 'zone'>;
/** A reply of the right shape, or what is wrong with it. */
export type Checked<T> = { read: T } | { faulty: string };

const layer = z.object({
  // An empty layer has no unit at all.
  uom: z.string().nullish(),
  // A fault in a value costs that value alone.
  values: z.array(
    z
      .object({ validTime: z.string(), value: z.number().nullable().catch(Number.NaN) })
      .catch({ validTime: '', value: Number.NaN }),
  ),
});
type Layer = z.infer<typeof layer>;

const grid = z.object({
  updateTime: z.string(),
  temperature: layer.nullish(),
  maxTemperature: layer.nullish(),
  quantitativePrecipitation: layer.nullish(),
});

export const quantity = z.object({ unitCode: z.string(), value: z.number().nullable() });
const hourly = z.object({
  updateTime: z.string(),
  periods: z.array(z.unknown()),
});
const hourlyPeriod = z.object({
  startTime: z.string(),
  endTime: z.string(),
  // A number; an object if the service is asked for quantities, which may become its default.
  temperature: z.union([z.number(), quantity]).nullable(),
  temperatureUnit: z.string().nullish(),
});

const points = z.object({
  forecastGridData: z.string(),
  forecastHourly: z.string(),
  observationStations: z.string().nullish(),
  forecastZone: z.string().nullish(),
  county: z.string().nullish(),
  timeZone: z.string().nullish(),
});
export type Links = z.infer<typeof points>;

/** GeoJSON keeps the fields in `properties`, JSON-LD at the top. */
export const fieldsOf = <T>(schema: z.ZodType<T>, body: unknown): Checked<T> => {
  const wrapped = z.object({ properties: z.unknown() }).safeParse(body);
  const result = schema.safeParse(wrapped.data?.properties ?? body);
  return result.success ? { read: result.data } : { faulty: z.prettifyError(result.error) };
};

export const toF: Record<string, (value: number) => number> = {
  degC: fahrenheitFromCelsius,
  degF: (value) => value,
};
export const unitName = (unit: string): string => unit.replace(/^(?:wmoUnit|unit):/, '');

interface Values {
  values: (Span & { value: number })[];
  remarks: string[];
}

/** Hourly values of the 8 days that a grid covers are 192; more than this are corrupt. Grade: chosen. */
const MOST_VALUES = 1_000;

/** The values of a layer with their intervals. Null means "not forecast"; anything else that is dropped gets a remark. */
const valuesOf = (name: string, found: Layer | null | undefined, unit: string, nowMs: number): Values => {
  const given = found?.values ?? [];
  if (given.length === 0) return { values: [], remarks: [] };
  if (unitName(found?.uom ?? '') !== unit) {
    return { values: [], remarks: [`${name} is in ${found?.uom ?? 'no unit'}, not in ${unit}: left out`] };
  }
  const odd = { times: new Set<string>(), values: 0 };
  const values = given.slice(0, MOST_VALUES).flatMap(({ validTime, value }) => {
    const interval = parseInterval(validTime, nowMs);
    if (!interval) odd.times.add(validTime);
    if (Number.isNaN(value)) odd.values += 1;
    return interval && value !== null && !Number.isNaN(value) ? [{ ...interval, value }] : [];
  });
  const [time] = odd.times;
  return {
    values,
    remarks: [
      ...(time === undefined ? [] : [`${name} has a time that cannot be read: "${time}"`]),
      ...(odd.values === 0 ? [] : [`${name} has ${odd.values} values that are no numbers: left out`]),
      ...(given.length > MOST_VALUES ? [`${name} has ${given.length} values: only the first are read`] : []),
    ],
  };
};

/** Drops implausible values, which do occur: https://github.com/weather-gov/api/blob/master/general-faqs.md. */
const earthly = <T extends { temperatureF: number }>(
  name: string,
  list: readonly T[],
): { kept: T[]; remarks: string[] } => {
  const kept = list.filter((entry) => isPlausibleAirF(entry.temperatureF));
  const dropped = list.length - kept.length;
  return { kept, remarks: dropped === 0 ? [] : [`${name} has ${dropped} values beyond ±60 °C: left out`] };
};

/** One entry an hour, sorted, from the current hour on: a fresh grid starts 6-9 h in the past. */
const clipped = (
  hours: readonly { startMs: number; temperatureF: number }[],
  nowMs: number,
): NwsForecast['hours'] => {
  const byStart = new Map(hours.map((hour) => [hour.startMs, hour]));
  return [...byStart.values()]
    .filter((hour) => hour.startMs + MS_PER_HOUR > nowMs)
    .sort((a, b) => a.startMs - b.startMs);
};

const hoursOf = ({
  fromMs,
  toMs,
  value,
}: Span & { value: number }): { startMs: number; temperatureF: number }[] =>
  Array.from({ length: Math.ceil((toMs - fromMs) / MS_PER_HOUR) }, (_, i) => ({
    startMs: fromMs + i * MS_PER_HOUR,
    temperatureF: fahrenheitFromCelsius(value),
  }));

const whole = (updateTime: string, parsed: Omit<NwsForecast, 'issuedMs'>): Checked<NwsForecast> => {
  const issuedMs = Date.parse(updateTime);
  if (Number.isNaN(issuedMs)) return { faulty: `updateTime cannot be read: "${updateTime}"` };
  if (parsed.hours.length === 0) return { faulty: ['no temperatures to come', ...parsed.remarks].join('; ') };
  return { read: { issuedMs, ...parsed } };
};

/** A reply of `/gridpoints/{wfo}/{x},{y}`. Values are for merged intervals of 1 h to several days. */
export const parseGrid = (body: unknown, nowMs: number): Checked<NwsForecast> => {
  const fields = fieldsOf(grid, body);
  if ('faulty' in fields) return fields;
  const { updateTime, temperature, maxTemperature, quantitativePrecipitation } = fields.read;
  const air = valuesOf('temperature', temperature, 'degC', nowMs);
  const high = valuesOf('maxTemperature', maxTemperature, 'degC', nowMs);
  const fall = valuesOf('quantitativePrecipitation', quantitativePrecipitation, 'mm', nowMs);
  const hours = earthly('temperature', air.values.flatMap(hoursOf));
  const highs = earthly(
    'maxTemperature',
    high.values.map(({ fromMs, toMs, value }): PeriodHigh => ({
      fromMs,
      toMs,
      temperatureF: fahrenheitFromCelsius(value),
    })),
  );
  const rain = fall.values.map(({ fromMs, toMs, value }): RainTotal => ({
    fromMs,
    toMs,
    inches: value / MM_PER_INCH,
  }));
  return whole(updateTime, {
    hours: clipped(hours.kept, nowMs),
    highs: highs.kept.filter((period) => period.toMs > nowMs),
    rain: rain.filter((period) => period.toMs > nowMs),
    remarks: [...air.remarks, ...high.remarks, ...fall.remarks, ...hours.remarks, ...highs.remarks],
  });
};

/** A reply of `.../forecast/hourly`: temperatures only, each period with its unit. */
export const parseHourly = (body: unknown, nowMs: number): Checked<NwsForecast> => {
  const fields = fieldsOf(hourly, body);
  if ('faulty' in fields) return fields;
  const remarks: string[] = [];
  const hours = fields.read.periods.slice(0, MOST_VALUES).flatMap((entry) => {
    const { data } = hourlyPeriod.safeParse(entry);
    if (!data) {
      remarks.push('a period cannot be read: left out');
      return [];
    }
    const { startTime, endTime, temperature, temperatureUnit } = data;
    const plain = typeof temperature === 'number';
    const value = plain ? temperature : temperature?.value;
    const unit = plain ? `deg${temperatureUnit ?? '?'}` : unitName(temperature?.unitCode ?? '');
    const interval = parseInterval(`${startTime}/${endTime}`, nowMs);
    if (value == null || !interval) return [];
    const convert = toF[unit];
    if (!convert) remarks.push(`${startTime} is in ${unit}: left out`);
    return convert ? [{ startMs: interval.fromMs, temperatureF: convert(value) }] : [];
  });
  const { kept, remarks: odd } = earthly('hourly temperature', hours);
  return whole(fields.read.updateTime, {
    hours: clipped(kept, nowMs),
    highs: [],
    rain: [],
    remarks: [...new Set([...remarks, ...odd])],
  });
};

/** A reply of `/points/{lat},{lon}`: the addresses of that point's forecasts. */
export const parsePoints = (body: unknown): Checked<Links> => fieldsOf(points, body);
