import type { Roster } from '../core/roster.ts';
import type { Environment } from './environment.ts';

/** Where forecasts come from. `why`: for the log; null = they were switched off. */
export type Weather =
  | { service: 'off'; why: string | null }
  /** The US National Weather Service requires a contact and refuses requests without one. */
  | { service: 'nws'; baseUrl: string; contact: string }
  /** `apiKey` null = the free service, which is for non-commercial use only. */
  | { service: 'open-meteo'; baseUrl: string; apiKey: string | null };

const NO_CONTACT =
  'FIELDBELL_WEATHER_CONTACT: is missing, and the National Weather Service refuses requests without it: set it to your e-mail address.';
const NO_LOCATION =
  'FIELDBELL_WEATHER: names a weather service, but no station has a location: add "location:" to a station in the operation file, or set FIELDBELL_WEATHER=off.';

const openMeteo = ({
  FIELDBELL_OPEN_METEO_URL: url,
  FIELDBELL_OPEN_METEO_KEY: key,
}: Environment): Weather => {
  const baseUrl = key === undefined ? 'https://api.open-meteo.com' : 'https://customer-api.open-meteo.com';
  return { service: 'open-meteo', baseUrl: url ?? baseUrl, apiKey: key ?? null };
};

/** The weather service that was named, else the National Weather Service if all that it needs is set. */
export const readWeather = (
  environment: Environment,
  { stations }: Roster,
): { weather: Weather } | { faults: string[] } => {
  const { FIELDBELL_WEATHER: named, FIELDBELL_WEATHER_CONTACT: contact } = environment;
  const baseUrl = environment.FIELDBELL_NWS_URL;
  const hasPlace = stations.some(({ location }) => location !== null);
  switch (named) {
    case undefined:
      if (hasPlace && contact !== undefined) return { weather: { service: 'nws', baseUrl, contact } };
      return {
        weather: {
          service: 'off',
          why: hasPlace
            ? 'FIELDBELL_WEATHER_CONTACT is not set'
            : 'no station in the operation file has a location',
        },
      };
    case 'off':
      return { weather: { service: 'off', why: null } };
    case 'nws':
      if (!hasPlace || contact === undefined)
        return {
          faults: [...(hasPlace ? [] : [NO_LOCATION]), ...(contact === undefined ? [NO_CONTACT] : [])],
        };
      return { weather: { service: 'nws', baseUrl, contact } };
    case 'open-meteo':
      return hasPlace ? { weather: openMeteo(environment) } : { faults: [NO_LOCATION] };
  }
};
