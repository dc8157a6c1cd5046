/**
 * `npm run train`: learns the ranker from the learning writers, writes src/reading/ranker/{linear.bin,shape.ts}, and
 * prints how it does on the measuring writers. `npm run train -- --leave-one-out`: instead learns once without each
 * learning writer, measures on that one, and writes nothing.
 */
import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { openLinear } from '../../../src/reading/ranker/linear.ts';
import { corpusSha256, examples } from './corpus.ts';
import type { Example } from './corpus.ts';
import { asBytes, learn } from './learn.ts';
import { asLine, measure } from './measure.ts';
import { MEASURING } from './writers.ts';

const SEED = 1;
const RANKER = new URL('../../../src/reading/ranker/', import.meta.url);

const all = examples();
const acts = [...new Set(all.flatMap((example) => example.acts))].sort();
const isMeasuring = ({ writer }: Example): boolean => MEASURING.includes(writer);
const learning = all.filter((example) => !isMeasuring(example));

const show = (writer: string, bytes: Uint8Array): void => {
  const some = all.filter((example) => example.writer === writer);
  console.log(asLine(writer, measure(some, openLinear(bytes, acts))));
};

const leaveOneOut = (): void => {
  for (const writer of new Set(learning.map((example) => example.writer))) {
    const others = learning.filter((example) => example.writer !== writer);
    show(writer, asBytes(learn(others, acts, SEED)));
  }
};

const shapeFile = (bytes: Uint8Array): string => {
  const list = acts.map((act) => `    '${act}',\n`).join('');
  const weights = createHash('sha256').update(bytes).digest('hex');
  return [
    '/** Written by `npm run train` together with linear.bin; not by hand. */\n',
    'export const SHAPE = {\n',
    `  acts: [\n${list}  ],\n`,
    `  corpusSha256: '${corpusSha256()}',\n`,
    `  weightsSha256: '${weights}',\n`,
    '} as const;\n',
  ].join('');
};

if (process.argv.includes('--leave-one-out')) leaveOneOut();
else {
  const bytes = asBytes(learn(learning, acts, SEED));
  writeFileSync(new URL('linear.bin', RANKER), bytes);
  writeFileSync(new URL('shape.ts', RANKER), shapeFile(bytes));
  for (const writer of MEASURING) show(writer, bytes);
}
