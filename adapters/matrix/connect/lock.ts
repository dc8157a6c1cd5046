import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';

/**
 * Locks the directory for this process and returns the function that unlocks it. Two clients would corrupt the key store.
 * Uses SQLite's file lock, because the system releases it whenever the process ends, however it ends.
 */
export const lockDirectory = (directory: string): (() => void) => {
  const lock = new DatabaseSync(join(directory, 'lock.sqlite'));
  try {
    lock.exec('pragma locking_mode = exclusive; begin exclusive');
  } catch {
    lock.close();
    throw new Error(
      `${directory} is in use by another process, and two would destroy the encryption keys: ` +
        'stop the other one, or set another directory and account.',
    );
  }
  return () => {
    lock.close();
  };
};
