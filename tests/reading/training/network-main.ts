/**
 * `npm run train:network`: learns the network from the learning writers and writes src/reading/ranker/{network.bin,
 * network-shape.ts}. It runs network.py, which needs PyTorch (Debian: python3-torch). `-- --input`: prints what
 * network.py is given, to run it elsewhere; `-- --from FILE`: takes what it wrote.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { z } from 'zod';
import { corpusSha256, examples } from './corpus.ts';
import { networkInput } from './network-input.ts';
import { MEASURING } from './writers.ts';

const RANKER = new URL('../../../src/reading/ranker/', import.meta.url);
const PROBES = 2;
const MOST_BYTES = 64 << 20;

const all = examples();
const acts = [...new Set(all.flatMap((example) => example.acts))].sort();
const learning = all.filter(({ writer }) => !MEASURING.includes(writer));
const probes = learning.slice(0, PROBES).map(({ message }) => message);
const input = networkInput(learning, acts, probes, []);

const learned = (): Buffer => {
  const script = new URL('network.py', import.meta.url).pathname;
  const run = spawnSync('python3', [script], {
    ...{ input: JSON.stringify(input), maxBuffer: MOST_BYTES },
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  if (run.status !== 0) throw new Error('network.py did not end well: is python3-torch installed?');
  return run.stdout;
};

const printed = z.object({ probes: z.array(z.array(z.number())) });

const written = (bytes: Buffer): void => {
  const end = bytes.indexOf('\n');
  const { probes: chances } = printed.parse(JSON.parse(bytes.subarray(0, end).toString()));
  const weights = bytes.subarray(end + 1);
  const { shape, states, roles, concepts } = input;
  const network = {
    ...{ shape, states, roles, concepts, corpusSha256: corpusSha256() },
    weightsSha256: createHash('sha256').update(weights).digest('hex'),
    probes: chances.map((row) => row.map((chance) => Number(chance.toFixed(5)))),
  };
  writeFileSync(new URL('network.bin', RANKER), weights);
  writeFileSync(
    new URL('network-shape.ts', RANKER),
    `/** Written by \`npm run train:network\` together with network.bin; not by hand. */\nexport const NETWORK = ${JSON.stringify(network, null, 2)} as const;\n`,
  );
};

const { values } = parseArgs({
  options: {
    input: { type: 'boolean', default: false },
    from: { type: 'string' },
  },
});
if (values.input) console.log(JSON.stringify(input));
else written(values.from === undefined ? learned() : readFileSync(values.from));
