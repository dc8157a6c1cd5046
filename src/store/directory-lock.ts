/**
 * One process a directory. PGlite does not lock its directory, and two processes on one corrupt it silently
 * (https://github.com/electric-sql/pglite/issues/1106).
 *
 * Every process first creates a file that names it, then looks for the files of others. Of two that start at once, at
 * least one sees the other: both may be refused, but never both admitted. The holder is in the file's name, not in its
 * content, so that it is written atomically.
 */
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';

export interface Holder {
  host: string;
  pid: number;
  /** Boot id and start time of the process, because pids are reused; empty if the system does not say. */
  started: string;
}

const PREFIX = 'in-use';

/** Directories locked by this process: for others, a file with its own pid is from an earlier process. */
const heldHere = new Set<string>();

/** Locks the directory (an absolute path that exists) or throws; returns the function that unlocks it. */
export const lockDirectory = (directory: string): (() => void) => {
  if (heldHere.has(directory)) throw new Error(`${directory} is open in this process already: use that one.`);
  const own = lockFileOf(holderNow(process.pid));
  writeFileSync(join(directory, own), '');
  try {
    for (const file of readdirSync(directory)) if (file !== own) removeStale(directory, file);
  } catch (error) {
    rmSync(join(directory, own), { force: true });
    throw error;
  }
  heldHere.add(directory);
  return () => {
    heldHere.delete(directory);
    rmSync(join(directory, own), { force: true });
  };
};

export const lockFileOf = ({ host, pid, started }: Holder): string =>
  [PREFIX, encodeURIComponent(host), pid, started].join(',');

/** The current process with this pid. */
export const holderNow = (pid: number): Holder => {
  const stat = contentOf(`/proc/${pid}/stat`);
  // proc_pid_stat(5): field 22 is the start in clock ticks since boot. Field 2, the name, ends with the last ")".
  const ticks = stat.slice(stat.lastIndexOf(')') + 2).split(' ')[22 - 3];
  const boot = contentOf('/proc/sys/kernel/random/boot_id').trim();
  return { host: hostname(), pid, started: ticks === undefined ? '' : `${boot}-${ticks}` };
};

const removeStale = (directory: string, file: string): void => {
  const [prefix, host = '', pid, started = ''] = file.split(',');
  if (prefix !== PREFIX) return;
  const holder = { host: decodeURIComponent(host), pid: Number(pid), started };
  const who = `Process ${holder.pid} on "${holder.host}" holds ${directory}`;
  const path = join(directory, file);
  if (holder.host !== hostname()) {
    throw new Error(
      `${who}, and whether it still runs can't be seen from "${hostname()}". If it is gone, delete ${path} ` +
        `and start again; if not, stop it first: two processes corrupt the data.`,
    );
  }
  if (isLive(holder)) {
    throw new Error(
      `${who}, and two processes would corrupt the data. ` +
        `Stop that process, or give this one a directory of its own.`,
    );
  }
  rmSync(path, { force: true });
};

const isLive = (holder: Holder): boolean => {
  if (holder.pid === process.pid || !exists(holder.pid)) return false;
  const { started } = holderNow(holder.pid);
  return holder.started === '' || started === '' || holder.started === started;
};

const exists = (pid: number): boolean => {
  try {
    return process.kill(pid, 0);
  } catch (error) {
    // EPERM: it runs, but as another user.
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
};

/** Empty if there is no such file: no /proc on this system, or the process has ended. */
const contentOf = (file: string): string => {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
};
