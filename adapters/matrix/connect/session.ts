import { randomBytes } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { MatrixClient } from 'matrix-js-sdk';
import { z } from 'zod';
import { errorCode, isLoggedOut } from '../failure.ts';
import { sdkLogger, silenceConsole } from '../log.ts';
import type { RetryContext } from '../patience.ts';
import { persistently } from '../patience.ts';
import type { MatrixSettings } from '../settings.ts';
import { readWhole, writeWhole } from './files.ts';
import { lockDirectory } from './lock.ts';

const savedSession = z.object({
  user: z.string(),
  device: z.string(),
  token: z.string(),
  /** Encrypts the key store on disk; 32 bytes, base64. */
  storageKey: z.string(),
});

type Saved = z.output<typeof savedSession>;

/** One device of the bot's account, and its directory. */
export interface Session extends Saved {
  homeserver: string;
  directory: string;
  /** Unlocks the directory. */
  release: () => void;
}

const DEVICE_NAME = 'Fieldbell';

/**
 * The session saved in the directory, else a new one by logging in once. Keeps trying while the homeserver is unreachable.
 * Rejects, with what to do, if the login is refused or the directory belongs to another account or device.
 */
export const openSession = async (settings: MatrixSettings, patience: RetryContext): Promise<Session> => {
  silenceConsole();
  mkdirSync(settings.directory, { recursive: true, mode: 0o700 });
  const release = lockDirectory(settings.directory);
  try {
    const saved = await savedOrNew(settings, patience);
    return { ...saved, homeserver: settings.homeserver, directory: settings.directory, release };
  } catch (error) {
    release();
    throw error;
  }
};

const savedOrNew = async (settings: MatrixSettings, patience: RetryContext): Promise<Saved> => {
  const file = join(settings.directory, 'session.json');
  const text = readWhole(file);
  const saved = text === null ? null : savedSession.parse(JSON.parse(text));
  if (saved !== null && saved.user !== settings.user)
    throw new Error(
      `${settings.directory} belongs to ${saved.user}: give ${settings.user} a directory of its own.`,
    );
  const device = await deviceFor(settings, saved, patience);
  if (saved !== null && saved.device !== device.device)
    throw new Error(
      `The token belongs to device ${device.device}, but ${settings.directory} has the keys of device ` +
        `${saved.device}: set the old token, or a new directory.`,
    );
  const session = { ...device, storageKey: saved?.storageKey ?? randomBytes(32).toString('base64') };
  if (JSON.stringify(session) !== JSON.stringify(saved)) writeWhole(file, JSON.stringify(session));
  return session;
};

type Device = Pick<Saved, 'user' | 'device' | 'token'>;

const deviceFor = async (
  settings: MatrixSettings,
  saved: Saved | null,
  patience: RetryContext,
): Promise<Device> => {
  const { login } = settings;
  const token = login.by === 'token' ? login.token : (saved?.token ?? null);
  try {
    return await persistently(patience, `Logging in at ${settings.homeserver}`, () =>
      token === null ? logIn(settings, patience) : ownerOf(token, settings, patience),
    );
  } catch (error) {
    throw refusal(error, settings, saved) ?? error;
  }
};

const clientFor = (
  settings: MatrixSettings,
  { log }: RetryContext,
  accessToken: string | null,
): MatrixClient =>
  new MatrixClient({
    baseUrl: settings.homeserver,
    logger: sdkLogger(log),
    ...(accessToken === null ? {} : { accessToken }),
  });

const logIn = async (settings: MatrixSettings, patience: RetryContext): Promise<Device> => {
  const password = settings.login.by === 'password' ? settings.login.password : '';
  const answer = await clientFor(settings, patience, null).loginRequest({
    type: 'm.login.password',
    identifier: { type: 'm.id.user', user: settings.user },
    password,
    initial_device_display_name: DEVICE_NAME,
  });
  return { user: settings.user, device: answer.device_id, token: answer.access_token };
};

const ownerOf = async (token: string, settings: MatrixSettings, patience: RetryContext): Promise<Device> => {
  const { user_id: user, device_id: device } = await clientFor(settings, patience, token).whoami();
  if (user !== settings.user)
    throw new Error(`The token belongs to ${user}, not to ${settings.user}: set that user's own token.`);
  if (device === undefined)
    throw new Error(`The token of ${user} belongs to no device: use one from a login.`);
  return { user, device, token };
};

const refusal = (error: unknown, settings: MatrixSettings, saved: Saved | null): Error | null => {
  if (isLoggedOut(error) && saved !== null && settings.login.by === 'password')
    return new Error(
      `${settings.homeserver} has logged ${settings.user} out, and the keys in ${settings.directory} are useless now: ` +
        'move that directory away, start again, and set the encryption up again with the recovery key.',
    );
  if (isLoggedOut(error))
    return new Error(`${settings.homeserver} does not know the token of ${settings.user}: set a valid one.`);
  if (errorCode(error) === 'M_FORBIDDEN')
    return new Error(`${settings.homeserver} refuses the password of ${settings.user}: correct it.`);
  return null;
};
