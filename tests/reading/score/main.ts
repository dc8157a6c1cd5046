/**
 * `npm run score -- FILE...`: plays labelled messages (../corpus/README.md) through the bot and prints how it did.
 * `--failures`: also each line that did not come out right. `--json`: instead one line of JSON for each.
 */
import { parseArgs } from 'node:util';
import type { Act } from './acts.ts';
import { linesIn } from '../training/corpus.ts';
import { score } from './score.ts';
import type { Scored } from './score.ts';
import { tables } from './tables.ts';

const { values, positionals } = parseArgs({
  options: {
    failures: { type: 'boolean', default: false },
    json: { type: 'boolean', default: false },
  },
  allowPositionals: true,
});

const shown = (acts: readonly Act[]): string =>
  acts
    .map(({ act, slots }) => [act, ...Object.entries(slots).map(([k, v]) => `${k}=${v}`)].join(' '))
    .join(' + ');

const asLine = ({ line, place, outcome, harms, read, meant, replies }: Scored): string =>
  [
    `${line.id} ${place} ${outcome}${harms.map((harm) => ` !${harm}`).join('')} (${line.role} ${line.truck ?? '-'} ${line.state} ${line.now} ${line.kind})`,
    `  ${line.text}`,
    `  meant: ${shown(meant)}`,
    `  got:   ${shown(read)} [${replies.join(' ')}]`,
  ].join('\n');

const isFailure = ({ outcome }: Scored): boolean => outcome !== 'right' && outcome !== 'leftAlone';

const all: Scored[] = [];
for (const file of positionals) all.push(...(await score(linesIn(file))));
if (values.json)
  for (const { line, ...rest } of all) console.log(JSON.stringify({ id: line.id, text: line.text, ...rest }));
else {
  if (values.failures) for (const one of all.filter(isFailure)) console.log(asLine(one));
  console.log(tables(all).join('\n'));
}
