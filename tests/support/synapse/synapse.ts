import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { createHmac, randomBytes } from 'node:crypto';
import { once } from 'node:events';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { waitFor } from '../wait-for.ts';
import { SYNAPSE_ROOT } from './root.ts';

const SERVER_NAME = 'crew.localhost';

export interface Account {
  user: string;
  password: string;
}

/** A homeserver on loopback with a database of its own. */
export interface Synapse {
  url: string;
  register: (name: string) => Promise<Account>;
  /** Kills the process; the data stay. */
  stop: () => Promise<void>;
  /** Starts it again on the same port. */
  start: () => Promise<void>;
  /** Holds the process still and lets it go on: connections stay open, nothing is answered. */
  freeze: () => void;
  thaw: () => void;
  dispose: () => Promise<void>;
}

const freePort = async (): Promise<number> => {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  if (address === null || typeof address === 'string') throw new Error('no free port');
  return address.port;
};

const RAISED = { per_second: 1000, burst_count: 10_000 };

/** JSON is YAML. Without `rc_*` Synapse keeps its own limits. */
const configuration = (home: string, port: number, secret: string, ownLimits: boolean): string =>
  JSON.stringify({
    server_name: SERVER_NAME,
    public_baseurl: `http://127.0.0.1:${port}/`,
    pid_file: `${home}/homeserver.pid`,
    listeners: [{ port, type: 'http', bind_addresses: ['127.0.0.1'], resources: [{ names: ['client'] }] }],
    database: { name: 'sqlite3', args: { database: `${home}/homeserver.db` } },
    media_store_path: `${home}/media`,
    signing_key_path: `${home}/signing.key`,
    registration_shared_secret: secret,
    macaroon_secret_key: secret,
    form_secret: secret,
    report_stats: false,
    suppress_key_server_warning: true,
    trusted_key_servers: [],
    presence: { enabled: false },
    // The lowest that bcrypt knows: passwords of tests need no protection.
    bcrypt_rounds: 4,
    // Else a first sync is answered from the one before for two minutes.
    caches: { sync_response_cache_duration: 0 },
    ...(ownLimits
      ? {}
      : {
          rc_message: RAISED,
          rc_registration: RAISED,
          rc_joins: { local: RAISED, remote: RAISED },
          rc_joins_per_room: RAISED,
          rc_invites: { per_room: RAISED, per_user: RAISED, per_issuer: RAISED },
          rc_login: { address: RAISED, account: RAISED, failed_attempts: RAISED },
          rc_room_creation: RAISED,
          rc_presence: { per_user: RAISED },
        }),
  });

const isUp = async (url: string): Promise<boolean> =>
  await fetch(`${url}/health`).then(
    ({ ok }) => ok,
    () => false,
  );

const launch = async (home: string, url: string): Promise<ChildProcess> => {
  const args = [SYNAPSE_ROOT, 'python3', '-m', 'synapse.app.homeserver', '-c', `${home}/homeserver.yaml`];
  const child = spawn('chroot', args, { stdio: 'ignore' });
  await waitFor('answer of Synapse', async () => child.exitCode !== null || (await isUp(url)), 180_000);
  if (child.exitCode !== null) throw new Error(`Synapse ended at its start: see ${SYNAPSE_ROOT}${home}`);
  return child;
};

const kill = async (child: ChildProcess): Promise<void> => {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const ended = once(child, 'exit');
  child.kill('SIGKILL');
  await ended;
};

/** The admin API that needs no admin but the secret: https://element-hq.github.io/synapse/latest/admin_api/register_api.html */
const register = async (url: string, secret: string, name: string): Promise<Account> => {
  const address = `${url}/_synapse/admin/v1/register`;
  const { nonce } = (await (await fetch(address)).json()) as { nonce: string };
  const password = randomBytes(9).toString('base64url');
  const mac = createHmac('sha1', secret).update([nonce, name, password, 'notadmin'].join('\0')).digest('hex');
  const body = JSON.stringify({ nonce, username: name, password, admin: false, mac });
  const answer = await fetch(address, { method: 'POST', body });
  if (!answer.ok) throw new Error(`Synapse does not register ${name}: ${await answer.text()}`);
  return { user: `@${name}:${SERVER_NAME}`, password };
};

/** `ownLimits`: with the rate limits that Synapse has when nothing is set, instead of none. */
export const startSynapse = async ({ ownLimits = false } = {}): Promise<Synapse> => {
  const home = `/srv/${randomBytes(6).toString('hex')}`;
  const outside = join(SYNAPSE_ROOT, home);
  const port = await freePort();
  const url = `http://127.0.0.1:${port}`;
  const secret = randomBytes(12).toString('hex');
  mkdirSync(outside, { recursive: true });
  writeFileSync(join(outside, 'homeserver.yaml'), configuration(home, port, secret, ownLimits));
  const seed = randomBytes(32).toString('base64').replace(/=+$/, '');
  writeFileSync(join(outside, 'signing.key'), `ed25519 a_test ${seed}\n`);
  let child = await launch(home, url);
  return {
    url,
    register: (name) => register(url, secret, name),
    stop: () => kill(child),
    start: async () => {
      child = await launch(home, url);
    },
    freeze: () => child.kill('SIGSTOP'),
    thaw: () => child.kill('SIGCONT'),
    dispose: async () => {
      await kill(child);
      rmSync(outside, { recursive: true, force: true });
    },
  };
};
