import { stat } from 'node:fs/promises';
import { recordedNws } from '../../adapters/nws/recorded.ts';
import { nws } from '../../adapters/nws/listen.ts';
import { openMeteo } from '../../adapters/open-meteo/listen.ts';
import type { ForecastSupply } from '../core/notices/forecast-gaps.ts';
import type { WeatherSource } from '../ports/weather.ts';
import type { Weather } from '../settings/weather.ts';
import type { Log } from '../ports/log.ts';

/** The slowest answers seen took some seconds. Grade: chosen, well above that. */
const TIMEOUT_MS = 15_000;

const serviceOf = (weather: Weather, log: Log): WeatherSource | null => {
  switch (weather.service) {
    case 'off':
      if (weather.why !== null)
        log.info({ why: weather.why }, 'No weather service is in use; deploy/README.md, "Weather"');
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

/** Whoever switched the weather off wants no forecast; whoever only left a setting out must hear what is missing. */
const supplyWithout = (weather: Weather): ForecastSupply | null =>
  weather.service === 'off' && weather.why !== null ? { by: 'nobody', startedMs: Date.now() } : null;

/** A path that does not exist yet counts as a file. */
const isFolder = (path: string): Promise<boolean> =>
  stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );

/**
 * The source of forecasts: the service of the settings, or instead of it what `--forecast` names: a folder of recorded
 * replies of the National Weather Service, or a file of replay lines, which `forecastFileTicker` reads.
 */
export const weatherService = async (
  weather: Weather,
  recorded: string | undefined,
  log: Log,
): Promise<{ source: WeatherSource | null; file: string | undefined; supply: ForecastSupply | null }> => {
  if (recorded === undefined)
    return { source: serviceOf(weather, log), file: undefined, supply: supplyWithout(weather) };
  return (await isFolder(recorded))
    ? { source: recordedNws(recorded), file: undefined, supply: null }
    : { source: null, file: recorded, supply: { by: 'file' } };
};
