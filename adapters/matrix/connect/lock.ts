import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';

/**
 * Takes the directory for this process and gives back the function that lets it go. Two clients on one store of keys
 * corrupt it. SQLite's own file lock is used, because the system lets it go when the process dies, however it dies.
 */
export const lockDirectory = (directory: string): (() => void) => {
  const lock = new DatabaseSync(join(directory, 'lock.sqlite'));
  try {
    lock.exec('pragma locking_mode = exclusive; begin exclusive');
  } catch {
    lock.close();
    throw new Error(
      `${directory} is in use by another process, and two on one would destroy the encryption keys: ` +
        'stop the other one, or set another directory and account.',
    );
  }
  return () => {
    lock.close();
  };
};
