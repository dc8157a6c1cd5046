import { stat } from 'node:fs/promises';
import { recordedNws } from '../../adapters/nws/recorded.ts';
import { nws } from '../../adapters/nws/listen.ts';
import { openMeteo } from '../../adapters/open-meteo/listen.ts';
import type { WeatherSource } from '../ports/weather.ts';
import type { Weather } from '../settings/weather.ts';
import type { Log } from '../ports/log.ts';

/** The slowest answers seen took some seconds; a request that takes longer is tried again later. */
const TIMEOUT_MS = 15_000;

const serviceOf = (weather: Weather, log: Log): WeatherSource | null => {
  switch (weather.service) {
    case 'off':
      if (weather.why !== null)
        log.info({ why: weather.why }, 'No weather service is asked; README.md, "Weather"');
      return null;
    case 'nws':
      return nws({ baseUrl: weather.baseUrl, contact: weather.contact, timeoutMs: TIMEOUT_MS });
    case 'open-meteo':
      if (weather.apiKey === null)
        log.warn(
          {},
          'Open-Meteo without a key is for non-commercial use only: https://open-meteo.com/en/terms',
        );
      return openMeteo({ baseUrl: weather.baseUrl, apiKey: weather.apiKey, timeoutMs: TIMEOUT_MS });
  }
};

/** A path that is not there yet is a file to come. */
const isFolder = (path: string): Promise<boolean> =>
  stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );

/**
 * Where forecasts come from: the service of the settings, or in its place what `--forecast` names: a folder with
 * recorded replies of the National Weather Service, or a file of replay lines, which brings its forecasts by itself.
 */
export const weatherService = async (
  weather: Weather,
  recorded: string | undefined,
  log: Log,
): Promise<{ source: WeatherSource | null; file: string | undefined }> => {
  if (recorded === undefined) return { source: serviceOf(weather, log), file: undefined };
  return (await isFolder(recorded))
    ? { source: recordedNws(recorded), file: undefined }
    : { source: null, file: recorded };
};
