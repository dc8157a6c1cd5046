import { z } from 'zod';
import { FIRST_LANGUAGE, LANGUAGES } from '../core/roster.ts';
import type { CrewRole } from '../core/roster.ts';
import * as values from './values.ts';

const { text } = values;

const ROLES = [
  'grower',
  'foreman',
  'driver',
  'digger-operator',
  'topper-operator',
] as const satisfies readonly CrewRole[];
/** Shortest believable round trip: half of a near one of 30 min. Grade: common practice. */
const SHORTEST_CYCLE_MIN = 15;
const PLATFORMS = ['local', 'slack', 'matrix'] as const;

/** Unknown keys are faults: a misspelt setting that is silently ignored would be noticed only on the harvest day. */
const entry = <S extends z.ZodRawShape>(shape: S) =>
  z.strictObject(shape, {
    error: (issue) =>
      issue.code === 'unrecognized_keys'
        ? `is not a setting here: correct it to one of ${Object.keys(shape).join(', ')}, or remove it`
        : undefined,
  });

/** `driver`, or `[grower, foreman]`. */
const roles = z.preprocess(
  (said) => (typeof said === 'string' ? [said] : said),
  z.array(z.enum(ROLES)).min(1),
);
const id = text.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, {
  error: 'is not a short name: write small letters, digits and single hyphens, as in "north-40"',
});
const aliases = z.array(text).default([]);
const optional = <T extends z.ZodType>(value: T) => value.nullable().default(null);

const person = entry({
  name: text,
  id: id.optional(),
  role: roles,
  language: z.enum(LANGUAGES).default(FIRST_LANGUAGE),
  truck: optional(text),
  aliases,
  shift: optional(values.shiftHours),
  addresses: entry({ local: text.optional(), slack: text.optional(), matrix: text.optional() }).optional(),
});

const truck = entry({
  id,
  name: text.optional(),
  aliases,
  'gross-limit': optional(values.grossWeight),
  axles: optional(values.axles),
  wheelbase: optional(values.feet),
  'usual-tare': optional(values.tareRange),
});

const location = entry({ latitude: values.latitude, longitude: values.longitude });

const room = entry({ id, platform: z.enum(PLATFORMS), room: text.optional() });

const digger = entry({
  rows: values.rows,
  'row-spacing': values.inches,
  speed: values.mph,
  efficiency: values.percent,
});

const limits = entry({
  'line-limit': optional(values.minutes),
  'shortest-cycle': values.minutes.default(SHORTEST_CYCLE_MIN),
});

/** The operation file. `isZone`: whether a name is in the IANA list of time zones. */
export const operationSchema = (isZone: (name: string) => boolean) => {
  const zone = text.refine(isZone, {
    error: (issue) =>
      `${JSON.stringify(issue.input)} is not an IANA time zone: write one such as America/Boise`,
  });
  const field = entry({
    name: text,
    id: id.optional(),
    aliases,
    acres: optional(values.acres),
    yield: optional(values.tonsPerAcre),
    zone: optional(zone),
    station: optional(text),
  });
  const station = entry({
    name: text,
    id: id.optional(),
    aliases,
    zone: optional(zone),
    'air-limit': values.temperature,
    'root-limit': values.temperature,
    pilers: values.pilers,
    location: optional(location),
    pool: optional(id),
  });
  return entry({
    name: text,
    id: id.optional(),
    zone,
    units: z.enum(['short-tons', 'metric']).default('short-tons'),
    people: z.array(person).min(1),
    trucks: z.array(truck).default([]),
    fields: z.array(field).default([]),
    stations: z.array(station).min(1),
    rooms: z.array(room).default([]),
    limits: limits.prefault({}),
    digger: optional(digger),
    'work-hours': values.workHours.default([0, 24]),
    'outlook-to': z.enum(['managers', 'crew', 'nobody']).default('managers'),
  });
};

export type OperationFile = z.output<ReturnType<typeof operationSchema>>;
