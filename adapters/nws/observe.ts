import { z } from 'zod';
import { MS_PER_MINUTE, isPlausibleAirF } from '../../src/core/units.ts';
import type { ObservedAir } from '../../src/ports/weather.ts';
import { getJson, onBase } from './get.ts';
import type { NwsAccess } from './get.ts';
import { fieldsOf, quantity, toF, unitName } from './parse.ts';

/** Nearest first. */
const stations = z.object({
  features: z.array(z.object({ properties: z.object({ stationIdentifier: z.string() }) })),
});

const observation = z.object({
  timestamp: z.string(),
  temperature: quantity.extend({ qualityControl: z.string().nullish() }),
});

/** The first station often has no temperature (value null); then the next ones are asked. Grade: chosen. */
const STATIONS_ASKED = 3;
/** Grade: chosen: stations report about once an hour. */
const OLDEST_MS = 90 * MS_PER_MINUTE;

/** Rejected, questioned or bad by the quality control of MADIS. Grade of the codes: from memory. */
const DOUBTED = new Set(['X', 'Q', 'B']);

const parseStations = (body: unknown): string[] =>
  stations
    .safeParse(body)
    .data?.features.slice(0, STATIONS_ASKED)
    .map(({ properties }) => properties.stationIdentifier) ?? [];

/** A reply of `/stations/{id}/observations/latest`; null = it has no usable temperature. */
const parseObservation = (body: unknown, nowMs: number): ObservedAir | null => {
  const fields = fieldsOf(observation, body);
  if ('faulty' in fields) return null;
  const { value, unitCode, qualityControl } = fields.read.temperature;
  const convert = toF[unitName(unitCode)];
  const atMs = Date.parse(fields.read.timestamp);
  if (value === null || !convert || DOUBTED.has(qualityControl ?? '')) return null;
  const isRecent = atMs <= nowMs && nowMs - atMs <= OLDEST_MS;
  const temperatureF = convert(value);
  return isRecent && isPlausibleAirF(temperatureF) ? { atMs, temperatureF } : null;
};

/** Asks the stations listed at that address, nearest first, until one has an air temperature. */
export const observeAt = async (
  access: NwsAccess,
  stationsAddress: string,
  nowMs: number,
): Promise<ObservedAir | null> => {
  const listed = await getJson(access, onBase(access.baseUrl, stationsAddress));
  for (const id of listed.got === 'json' ? parseStations(listed.body) : []) {
    const url = onBase(access.baseUrl, `/stations/${encodeURIComponent(id)}/observations/latest`);
    const got = await getJson(access, url);
    const observed = got.got === 'json' ? parseObservation(got.body, nowMs) : null;
    if (observed) return observed;
  }
  return null;
};
