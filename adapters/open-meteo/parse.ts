import { z } from 'zod';
import { MS_PER_HOUR, MS_PER_SECOND, isPlausibleAirF } from '../../src/core/units.ts';
import type { RainTotal } from '../../src/ports/weather.ts';
import type { HourlyTemperature } from '../../src/core/weather/types.ts';

interface OpenMeteoForecast {
  /** The hourly block as received: equal blocks are the same forecast (the rest of a reply has run times). */
  block: unknown;
  hours: HourlyTemperature[];
  rain: RainTotal[];
  remarks: string[];
}

/** Entries beyond the model's range are null. Units are checked, because they depend on the query. */
const reply = z.object({
  hourly_units: z.object({
    time: z.literal('unixtime'),
    temperature_2m: z.literal('°F'),
    precipitation: z.literal('inch'),
  }),
  hourly: z.object({
    time: z.array(z.number()),
    temperature_2m: z.array(z.number().nullable()),
    precipitation: z.array(z.number().nullable()),
  }),
});

/** A reply of `/v1/forecast`: arrays side by side, each hour in seconds of Unix time. */
export const parseForecast = (
  body: unknown,
  nowMs: number,
): { read: OpenMeteoForecast } | { faulty: string } => {
  const checked = reply.safeParse(body);
  if (!checked.success) return { faulty: z.prettifyError(checked.error) };
  const { time, temperature_2m: air, precipitation } = checked.data.hourly;
  const toCome = time.flatMap((seconds, i) => {
    const startMs = seconds * MS_PER_SECOND;
    return startMs + MS_PER_HOUR > nowMs
      ? [{ startMs, temperatureF: air[i] ?? null, inches: precipitation[i] ?? null }]
      : [];
  });
  const hours = toCome.flatMap(({ startMs, temperatureF }) =>
    temperatureF === null ? [] : [{ startMs, temperatureF }],
  );
  const kept = hours.filter((hour) => isPlausibleAirF(hour.temperatureF));
  // The precipitation of a time stamp falls in the hour before it.
  const rain = toCome.flatMap(({ startMs, inches }) =>
    inches === null ? [] : [{ fromMs: startMs - MS_PER_HOUR, toMs: startMs, inches }],
  );
  if (kept.length === 0) return { faulty: 'no temperatures to come' };
  const dropped = hours.length - kept.length;
  const remarks = dropped === 0 ? [] : [`${dropped} temperatures beyond ±60 °C: left out`];
  return {
    read: { block: checked.data.hourly, hours: kept.sort((a, b) => a.startMs - b.startMs), rain, remarks },
  };
};
