import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readEnvironment } from './environment.ts';
import { readSettings, type Settings } from './settings.ts';

/** The invented operation that the bot runs if no file is named. */
const SAMPLE = fileURLToPath(new URL('../../deploy/operation.yaml', import.meta.url));

const fileAt = (path: string): { text: string } | { fault: string } => {
  try {
    return { text: readFileSync(path, 'utf8') };
  } catch (error) {
    const why = error instanceof Error && 'code' in error ? String(error.code) : 'not readable';
    const what = why === 'ENOENT' ? 'there is no such file' : `it cannot be read (${why})`;
    return {
      fault: `FIELDBELL_OPERATION: ${path}: ${what}. Set it to the path of your operation file.`,
    };
  }
};

/** `readSettings` over the file that FIELDBELL_OPERATION names, else the sample operation. */
export const loadSettings = (
  env: Readonly<Record<string, string | undefined>>,
  isZone: (name: string) => boolean,
): { settings: Settings } | { faults: string[] } => {
  const named = env['FIELDBELL_OPERATION']?.trim() ?? '';
  const path = named === '' ? SAMPLE : named;
  const file = fileAt(path);
  if ('text' in file) return readSettings(env, file.text, path, isZone);
  const outer = readEnvironment(env);
  return { faults: [...('faults' in outer ? outer.faults : []), file.fault] };
};
