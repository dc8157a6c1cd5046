/** Works stored values out again with the program that they are from, where the machine has it. */
import { spawnSync } from 'node:child_process';

/** Null where the program or its package is missing. */
const printed = (program: string, args: readonly string[]): number[] | null => {
  const { status, stdout } = spawnSync(program, args, { encoding: 'utf8', timeout: 60_000 });
  if (status !== 0) return null;
  return stdout.trim().split(/\s+/).map(Number);
};

export const byOctave = (expressions: readonly string[]): number[] | null =>
  printed('octave', [
    '-q',
    '--no-gui',
    '--eval',
    ['pkg load queueing', ...expressions.map((expression) => `printf("%.9g\\n", ${expression})`)].join(';'),
  ]);

export const byScipy = (expressions: readonly string[]): number[] | null =>
  printed('/usr/bin/python3', [
    '-c',
    [
      'import math',
      'from scipy import stats',
      ...expressions.map((expression) => `print(${expression})`),
    ].join('\n'),
  ]);
