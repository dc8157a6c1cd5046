import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import type { WeatherSource } from '../../src/ports/weather.ts';
import { freezeAlerts } from './alerts.ts';
import { parseGrid, parseHourly } from './parse.ts';

const hourlyReply = z.object({ properties: z.object({ periods: z.array(z.unknown()) }) });

/**
 * Recorded replies instead of the service: `<folder>/<station id>.json` is a saved reply of the grid or of the hourly
 * forecast, `<station id>.alerts.json` (optional) one of the alerts. They are read by the same parser, and again for each
 * request, so that a newer file is a newer forecast.
 */
export const recordedNws = (folder: string): WeatherSource => {
  const issued = new Map<string, number>();
  const bodyOf = async (name: string): Promise<unknown> =>
    JSON.parse(await readFile(join(folder, name), 'utf8'));
  return {
    name: 'nws-recorded',
    attribution: null,
    fetch: async (place, nowMs) => {
      try {
        const body = await bodyOf(`${place.id}.json`);
        const alerts = await bodyOf(`${place.id}.alerts.json`).catch(() => null);
        const reading = hourlyReply.safeParse(body).success
          ? parseHourly(body, nowMs)
          : parseGrid(body, nowMs);
        if ('faulty' in reading) return { result: 'refused', why: `${place.id}.json: ${reading.faulty}` };
        const { issuedMs } = reading.read;
        const found = freezeAlerts([alerts], nowMs);
        if (issued.get(place.id) === issuedMs)
          return { result: 'unchanged', issuedMs, freezeAlerts: found, remarks: [] };
        issued.set(place.id, issuedMs);
        return { result: 'fresh', ...reading.read, freezeAlerts: found, zone: null };
      } catch (error) {
        return { result: 'refused', why: `${place.id}.json: ${String(error)}` };
      }
    },
    observe: async () => null,
    close: () => undefined,
  };
};
