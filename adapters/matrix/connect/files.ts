import { closeSync, fsyncSync, openSync, readFileSync, renameSync, writeSync } from 'node:fs';

/** Atomic, crash-safe write with mode 0600. */
export const writeWhole = (file: string, text: string): void => {
  const draft = `${file}.new`;
  const handle = openSync(draft, 'w', 0o600);
  try {
    writeSync(handle, text);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
  renameSync(draft, file);
};

/** Null = there is no such file. */
export const readWhole = (file: string): string | null => {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  }
};
