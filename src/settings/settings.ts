import type { Roster } from '../core/roster.ts';
import { readEnvironment, type DatabaseSetting, type Environment } from './environment.ts';
import type { MatrixAccount } from './matrix.ts';
import { matrixOf } from './matrix.ts';
import { readOperation } from './operation-file.ts';
import type { SlackAccount } from './slack.ts';
import { slackOf } from './slack.ts';
import { readWeather, type Weather } from './weather.ts';

/** All settings of a start. Deeply frozen. */
export interface Settings {
  roster: Roster;
  database: DatabaseSetting;
  logLevel: Environment['FIELDBELL_LOG'];
  /** Where /health and /metrics answer. Port 0 = any free one. */
  health: { host: string; port: number };
  /** Null = the platform is not used. */
  slack: SlackAccount | null;
  matrix: MatrixAccount | null;
  /** Settings that do not keep the bot from starting but are probably a mistake; each a sentence. */
  warnings: readonly string[];
  weather: Weather;
}

/** Warns of rooms and people on a platform on which the bot has no account. */
const unreachable = (roster: Roster, platform: string, isUsed: boolean, remedy: string): string[] => {
  if (isUsed) return [];
  const rooms = roster.rooms.filter((room) => room.platform === platform).map(({ id }) => id);
  const people = roster.people
    .filter(({ addresses }) => addresses.some((address) => address.platform === platform))
    .map(({ name }) => name);
  if (rooms.length + people.length === 0) return [];
  const who = [...rooms.map((id) => `room "${id}"`), ...people].join(', ');
  return [
    `The operation file has ${platform} addresses (${who}), but the bot has no account there: ${remedy}.`,
  ];
};

/** Warns of a pool that nobody can share: the embedded database admits only one process, so only one operation. */
const pooledAlone = ({ pools }: Roster, database: DatabaseSetting): string[] => {
  const pool = Object.values(pools)[0];
  if (pool === undefined || 'url' in database) return [];
  return [
    `The operation file shares tickets in pool "${pool}", but nobody else can use the embedded database: set FIELDBELL_DATABASE to the Postgres database of the other operations.`,
  ];
};

const frozen = <T>(value: T): Readonly<T> => {
  if (typeof value !== 'object' || value === null) return value;
  Object.values(value).forEach(frozen);
  return Object.freeze(value);
};

/**
 * The settings, or all faults of the environment and of the operation file, each a sentence that says where, what is
 * wrong and what to do. Never throws. `isZone`: whether a name is in the IANA list of time zones.
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
  const { roster } = file;
  const [slack, matrix] = [slackOf(environment), matrixOf(environment)];
  const weather = readWeather(environment, roster);
  if ('faults' in weather) return weather;
  const settings = {
    roster,
    database: environment.FIELDBELL_DATABASE,
    logLevel: environment.FIELDBELL_LOG,
    health: { host: environment.FIELDBELL_HEALTH_HOST, port: environment.FIELDBELL_HEALTH_PORT },
    slack,
    matrix,
    warnings: [
      ...unreachable(roster, 'slack', slack !== null, 'set FIELDBELL_SLACK_BOT_TOKEN'),
      ...unreachable(roster, 'matrix', matrix !== null, 'set FIELDBELL_MATRIX_HOMESERVER'),
      ...pooledAlone(roster, environment.FIELDBELL_DATABASE),
    ],
    weather: weather.weather,
  };
  return { settings: frozen(settings) };
};
