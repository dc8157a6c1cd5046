import { execFile, spawnSync } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { promisify } from 'node:util';

const run = promisify(execFile);

/** Where the folder with Debian and Synapse in it is kept between runs. */
export const SYNAPSE_ROOT = process.env['FIELDBELL_SYNAPSE_ROOT'] ?? join(tmpdir(), 'fieldbell-synapse');

const READY = join(SYNAPSE_ROOT, 'fieldbell-ready');
const BUILD_WITHIN_MS = 15 * 60_000;
const PACKAGES = ['matrix-synapse', 'python3-cffi-backend', 'python3-matrix-nio', 'python3-olm'];

const quietEnv = { ...process.env, DEBIAN_FRONTEND: 'noninteractive', LC_ALL: 'C' };

const command = async (name: string, ...args: string[]): Promise<void> => {
  await run(name, args, { env: quietEnv, timeout: BUILD_WITHIN_MS, maxBuffer: 64 << 20 });
};

const has = (name: string): boolean =>
  spawnSync('sh', ['-c', `command -v ${name}`], { env: quietEnv }).status === 0;

/** The mirror that the machine itself uses; null = its sources name none. */
const mirror = (): string | null => {
  const folder = '/etc/apt/sources.list.d';
  const files = [
    '/etc/apt/sources.list',
    ...(existsSync(folder) ? readdirSync(folder) : []).map((each) => join(folder, each)),
  ];
  const text = files.map((file) => (existsSync(file) ? readFileSync(file, 'utf8') : '')).join('\n');
  return /(?:^URIs:|^deb(?: \[[^\]]*\])?)\s*(https?:\S+\/debian)\/?(?=\s)/m.exec(text)?.[1] ?? null;
};

const insideRoot = (path: string): string => join(SYNAPSE_ROOT, path);

/** A build that was broken off leaves the machine's /proc mounted in the folder: nothing may be deleted through it. */
const unmountAll = async (): Promise<void> => {
  const mounts = readFileSync('/proc/mounts', 'utf8')
    .split('\n')
    .map((line) => line.split(' ')[1] ?? '')
    .filter((at) => at.startsWith(`${SYNAPSE_ROOT}/`));
  for (const at of mounts.toReversed()) await command('umount', at);
};

const build = async (from: string): Promise<void> => {
  await unmountAll();
  rmSync(SYNAPSE_ROOT, { recursive: true, force: true });
  mkdirSync(SYNAPSE_ROOT, { recursive: true });
  await command('debootstrap', '--variant=minbase', '--include=ca-certificates', 'sid', SYNAPSE_ROOT, from);
  copyFileSync('/etc/resolv.conf', insideRoot('etc/resolv.conf'));
  // A mirror may be a frozen one.
  writeFileSync(insideRoot('etc/apt/apt.conf.d/99fieldbell'), 'Acquire::Check-Valid-Until "false";\n');
  // Nothing that is installed may start by itself.
  writeFileSync(insideRoot('usr/sbin/policy-rc.d'), '#!/bin/sh\nexit 101\n', { mode: 0o755 });
  await command('chroot', SYNAPSE_ROOT, 'apt-get', 'update');
  await command('chroot', SYNAPSE_ROOT, 'apt-get', 'install', '-y', '--no-install-recommends', ...PACKAGES);
  await command('chroot', SYNAPSE_ROOT, 'apt-get', 'clean');
  writeFileSync(READY, '');
};

const obstacle = async (): Promise<string | null> => {
  if (process.platform !== 'linux') return 'Synapse is set up from Debian packages, which needs Linux';
  if (process.getuid?.() !== 0) return 'setting up Synapse with debootstrap needs root';
  if (has('debootstrap')) return null;
  try {
    await command('apt-get', 'update');
    await command('apt-get', 'install', '-y', 'debootstrap');
    return null;
  } catch {
    return 'debootstrap is missing, and apt-get can not install it';
  }
};

/** What a failed command wrote last tells more than that it failed. */
const reasonOf = (error: unknown): string => {
  const written = error instanceof Error && 'stderr' in error ? String(error.stderr).trim() : '';
  const last = written.split('\n').at(-1) ?? '';
  const what = error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error);
  return last === '' ? what : `${what}: ${last}`;
};

/** Makes the folder ready; null = it is, else why it can't be here. */
const prepare = async (): Promise<string | null> => {
  const why = await obstacle();
  if (why !== null) return why;
  const from = mirror();
  if (!existsSync(READY) && from === null) return 'the sources of apt name no Debian mirror';
  if (!existsSync(READY) && from !== null) await build(from);
  // Where a sandbox lets the folder be filled but not be used, that shows here.
  await command('chroot', SYNAPSE_ROOT, 'python3', '-c', 'import nio, olm, synapse.app.homeserver');
  return null;
};

/** Null = Synapse is there; else why it can't be had here. The first call takes minutes. */
export const synapseMissing = async (): Promise<string | null> => {
  let lock: DatabaseSync | null = null;
  try {
    // SQLite's file lock makes a second run wait for the one that builds, and is let go when that one dies.
    lock = new DatabaseSync(`${SYNAPSE_ROOT}.lock`, { timeout: BUILD_WITHIN_MS });
    lock.exec('begin exclusive');
    return await prepare();
  } catch (error) {
    return `it could not be set up in ${SYNAPSE_ROOT}: ${reasonOf(error)}`;
  } finally {
    lock?.close();
  }
};
