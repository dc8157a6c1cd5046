import type { Roster } from '../core/roster.ts';
import { readEnvironment, type Database, type Environment } from './environment.ts';
import { readOperation } from './operation-file.ts';
import { readWeather, type Weather } from './weather.ts';

/** All that the bot is told from outside before it starts. Deeply frozen. */
export interface Settings {
  roster: Roster;
  database: Database;
  logLevel: Environment['FIELDBELL_LOG'];
  /** Where /health and /metrics answer. Port 0 = any free one. */
  health: { host: string; port: number };
  weather: Weather;
}

const frozen = <T>(value: T): Readonly<T> => {
  if (typeof value !== 'object' || value === null) return value;
  Object.values(value).forEach(frozen);
  return Object.freeze(value);
};

/**
 * The settings, or every fault of the environment and of the operation file at once, each a sentence that says where,
 * what is wrong and what to do. Never throws. `isZone` tells whether a name is on the IANA list of time zones.
 */
export const readSettings = (
  env: Readonly<Record<string, string | undefined>>,
  fileText: string,
  fileName: string,
  isZone: (name: string) => boolean,
): { settings: Settings } | { faults: string[] } => {
  const outer = readEnvironment(env);
  const file = readOperation(fileText, fileName, isZone);
  if ('faults' in outer || 'faults' in file) {
    return { faults: [outer, file].flatMap((part) => ('faults' in part ? part.faults : [])) };
  }
  const { environment } = outer;
  const weather = readWeather(environment, file.roster);
  if ('faults' in weather) return weather;
  const settings = {
    roster: file.roster,
    database: environment.FIELDBELL_DATABASE,
    logLevel: environment.FIELDBELL_LOG,
    health: { host: environment.FIELDBELL_HEALTH_HOST, port: environment.FIELDBELL_HEALTH_PORT },
    weather: weather.weather,
  };
  return { settings: frozen(settings) };
};
