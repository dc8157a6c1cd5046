/** The labelled messages of tests/reading/corpus, and what the ranker is given of each. */
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import { z } from 'zod';
import type { RankedMessage } from '../../../src/reading/ranker/features.ts';
import { wordsFor } from '../../../src/reading/ranker/words.ts';
import { MEASURING } from './writers.ts';

const CORPUS = new URL('../corpus/', import.meta.url);

/** The places of the scene that all writers share, as they write them. */
const SCENE = {
  fields: [
    ...[
      'river',
      'the river',
      'rio',
      'el rio',
      'north 40',
      'north forty',
      'norte 40',
      'norte cuarenta',
      'n40',
    ],
    ...['schoolhouse', 'school house', 'escuelita', 'la escuelita'],
  ],
  stations: ['cedar'],
};

const act = z.looseObject({ act: z.string(), sure: z.boolean().optional() });
const line = z.object({
  id: z.string(),
  lang: z.enum(['en', 'es', 'mix']),
  role: z.string().transform((role) => role.split(' ')[0] ?? role),
  truck: z.union([z.string(), z.number()]).nullish(),
  where: z.enum(['room', 'dm']),
  state: z
    .string()
    .nullish()
    .transform((state) => state ?? 'none'),
  now: z.string(),
  text: z.string(),
  acts: z.array(act),
  also: z.array(z.array(act)).default([]),
  kind: z.string(),
  day: z.union([z.string(), z.number()]).optional(),
  from: z.string().optional(),
});
export type Line = z.infer<typeof line>;

/** The acts as the ranker names them: a danger that is not sure is an act of its own. */
export const labelOf = (acts: Line['acts']): string[] =>
  [...new Set(acts.map((one) => (one.act === 'danger' && one.sure !== true ? 'danger?' : one.act)))].sort();

export interface Example {
  writer: string;
  line: Line;
  message: RankedMessage;
  acts: readonly string[];
  /** Other readings that are fair too. */
  also: readonly (readonly string[])[];
}

const words = wordsFor(SCENE);
const files = (): string[] =>
  readdirSync(CORPUS)
    .filter((name) => name.endsWith('.ndjson'))
    .sort();

const writerOf = (file: string): string => file.replace('.ndjson', '');

/** Of all files that are learned from, so that weights and corpus are known to belong together. */
export const corpusSha256 = (): string =>
  files()
    .filter((file) => !MEASURING.includes(writerOf(file)))
    .reduce((hash, file) => hash.update(readFileSync(new URL(file, CORPUS))), createHash('sha256'))
    .digest('hex');

export const linesIn = (file: string | URL): Line[] =>
  readFileSync(file, 'utf8')
    .split('\n')
    .filter((text) => text.trim() !== '')
    .map((text) => line.parse(JSON.parse(text)));

export const linesOf = (writer: string): Line[] => linesIn(new URL(`${writer}.ndjson`, CORPUS));

/** All writers, by the names of their files. */
export const writers = (): string[] => files().map((file) => file.replace('.ndjson', ''));

export const examples = (): Example[] =>
  files().flatMap((file) => {
    const writer = writerOf(file);
    const lines = linesOf(writer);
    return lines.map((one) => ({
      writer,
      line: one,
      message: { words: words(one.text), state: one.state, role: one.role },
      acts: labelOf(one.acts),
      also: one.also.map(labelOf),
    }));
  });
