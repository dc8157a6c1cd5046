/** Which lines of the core are changed. */
import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { mulberry32 } from '../support/random.ts';

const filesUnder = (path: string): string[] =>
  statSync(path).isDirectory()
    ? readdirSync(path, { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.ts'))
        .map((name) => join(path, name))
        .sort()
    : [path];

/** Of files and folders: the files, and all files in the folders. */
export const filesIn = (paths: readonly string[]): string[] => paths.flatMap(filesUnder);

/** Not blank, and no comment, import or type that is passed on. */
const isCode = (text: string): boolean => !/^\s*($|\/\/|\/\*|\*|import |export (type|\{) )/.test(text);

/** Each as `file:from-to`. A change that spans several lines is in none of them. */
export const linesOfCode = (files: readonly string[]): string[] =>
  files.flatMap((file) =>
    readFileSync(file, 'utf8')
      .split('\n')
      .flatMap((text, index) => (isCode(text) ? [`${file}:${index + 1}-${index + 1}`] : [])),
  );

/** At most so many of them, in their order: the same ones for the same seed. */
export const sampleOf = (lines: readonly string[], most: number, seed: number): string[] => {
  const random = mulberry32(seed);
  const drawn = lines.map((line, index) => ({ line, index, draw: random() }));
  return drawn
    .sort((a, b) => a.draw - b.draw)
    .slice(0, most)
    .sort((a, b) => a.index - b.index)
    .map(({ line }) => line);
};
