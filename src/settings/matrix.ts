import { z } from 'zod';
import { webAddress } from './environment-values.ts';
import type { IsSet } from './together.ts';
import { allOrNone, eitherOr } from './together.ts';

/** The account on Matrix. `inviters` null = the managers of the operation who have an address there. */
export interface MatrixAccount {
  homeserver: string;
  user: string;
  login: { by: 'password'; password: string } | { by: 'token'; token: string };
  directory: string;
  encryption: boolean;
  inviters: readonly string[] | null;
}

// https://spec.matrix.org/latest/appendices/#user-identifiers; old ids may have more characters than new ones.
const USER = /^@[^:\s]+:[^\s,]+$/;

const inviters = z
  .string()
  .transform((said) => said.split(/[\s,]+/).filter((one) => one !== ''))
  .refine((all) => all.every((one) => USER.test(one) || /^[^@:\s]+(:\d+)?$/.test(one)), {
    error: 'has something other than full ids and servers in it: write "@ruth:example.org example.org"',
  });

export const matrixShape = {
  FIELDBELL_MATRIX_HOMESERVER: webAddress('https://matrix.example.org').optional(),
  FIELDBELL_MATRIX_USER: z
    .string()
    .regex(USER, { error: 'is not a full Matrix id: write one such as @bell:example.org' })
    .optional(),
  FIELDBELL_MATRIX_PASSWORD: z.string().optional(),
  FIELDBELL_MATRIX_TOKEN: z.string().optional(),
  FIELDBELL_MATRIX_DIRECTORY: z.string().default('.fieldbell/matrix'),
  FIELDBELL_MATRIX_ENCRYPTION: z.enum(['on', 'off']).default('on'),
  FIELDBELL_MATRIX_INVITERS: inviters.optional(),
};
type MatrixEnvironment = z.output<z.ZodObject<typeof matrixShape>>;

const PASSWORD = 'FIELDBELL_MATRIX_PASSWORD';
const TOKEN = 'FIELDBELL_MATRIX_TOKEN';

/** These do no harm without an account: container images and service units set them in advance. */
const IN_ADVANCE = ['FIELDBELL_MATRIX_DIRECTORY', 'FIELDBELL_MATRIX_ENCRYPTION'];

export const matrixFaults = (isSet: IsSet): string[] => {
  const names = Object.keys(matrixShape).filter((name) => !IN_ADVANCE.includes(name));
  if (!names.some(isSet)) return [];
  return [
    ...allOrNone(names, ['FIELDBELL_MATRIX_HOMESERVER', 'FIELDBELL_MATRIX_USER'], isSet),
    ...eitherOr([PASSWORD, TOKEN], 'one way to log in', isSet),
  ];
};

/** Null = Matrix is not used. Expects settings without `matrixFaults`. */
export const matrixOf = (env: MatrixEnvironment): MatrixAccount | null => {
  const { FIELDBELL_MATRIX_HOMESERVER: homeserver, FIELDBELL_MATRIX_USER: user } = env;
  const { [PASSWORD]: password, [TOKEN]: token } = env;
  if (homeserver === undefined || user === undefined) return null;
  return {
    homeserver,
    user,
    login: token === undefined ? { by: 'password', password: password ?? '' } : { by: 'token', token },
    directory: env.FIELDBELL_MATRIX_DIRECTORY,
    encryption: env.FIELDBELL_MATRIX_ENCRYPTION === 'on',
    inviters: env.FIELDBELL_MATRIX_INVITERS ?? null,
  };
};
