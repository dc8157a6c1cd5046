/** Whatever a document names must be there in the program, and what people are told to write must be read. */
import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { beforeAll, describe, expect, test } from 'vitest';
import { commandFaults, commandsIn, readProgram } from './commands.ts';
import type { Program } from './commands.ts';
import { documentedFields, fieldFaults, fieldsByEntry, fieldsByKind } from './data-fields.ts';
import { operationFaults, phraseFaults, phrasesIn, replayFaults } from './examples.ts';
import { documentAt, documentOf, filesOfRepository, fromRoot, textOf } from './markdown.ts';
import type { Document } from './markdown.ts';
import { fileFaults, linkFaults, settingFaults, settingNames } from './names.ts';
import { readmePictures } from './pictures.ts';

const documents = filesOfRepository('**/*.md').map(documentAt);
const byPath = documents.map((document) => [document.path, document] as const);
const at = (path: string): Document => documentAt(path);

let program: Program;
beforeAll(async () => {
  program = await readProgram();
});

const allFaults = (document: Document): string[] => [
  ...commandFaults(document, program),
  ...fileFaults(document),
  ...linkFaults(document),
  ...settingFaults(document),
  ...operationFaults(document),
  ...replayFaults(document),
  ...phraseFaults(document),
];

describe.each(byPath)('%s', (_, document) => {
  test('names only commands, options, files, headings and settings that there are, and examples that are read', () => {
    expect(allFaults(document)).toEqual([]);
  });
});

test.each([
  ['an npm script', 'Run `npm run harvest`.'],
  ['an option of the replay', '```sh\nnpm run -s replay -- day.ndjson --loud\n```'],
  ['a command of the program', 'Run `fieldbell dig`.'],
  ['an option of another command', 'Run `npm start -- notice-xml --demo`.'],
  ['an option of the backtest', 'Run `npm run backtest -- --fields 3`.'],
  ['an option by itself', 'With `--harder` it is quicker.'],
  ['a file', 'See `src/core/nothing.ts`.'],
  ['a folder', 'See `src/nothing`.'],
  ['a file in a command', '```sh\nnode tests/bench/nothing.ts\n```'],
  ['a link', 'See [that](nothing.md).'],
  ['a heading', 'See [that](README.md#nothing-of-the-sort).'],
  ['a setting', 'Set `FIELDBELL_NOTHING`.'],
  ['a variable', 'Set `BEET_COLOR`.'],
  ['a setting of the operation file', '```yaml\nrooms:\n  - id: crew\n    platform: pigeon\n```'],
  ['a replay line', '```ndjson\n{"at":"seven","id":"m1","from":"ana","text":"loaded"}\n```'],
  ['a phrase', '| write |\n| --- |\n| `the beets are singing` |\n'],
  ['talk that is no phrase', '| Escriba |\n| --- |\n| `buenos días` |\n'],
])('%s that is not there is found', (_, text) => {
  expect(allFaults(documentOf('planted.md', text))).toHaveLength(1);
});

describe('README.md', () => {
  const readme = at('README.md');

  test('has its title, and no more than 150 lines', () => {
    expect(readme.text).toMatch(/^# Fieldbell\n/);
    expect(readme.text.trimEnd().split('\n').length).toBeLessThanOrEqual(150);
  });

  test('starts the demo, the chat and the tests', () => {
    const typed = commandsIn(readme).map((words) => words.join(' '));
    expect(typed).toEqual(expect.arrayContaining(['npm ci', 'npm start -- --demo', 'npm start', 'npm test']));
  });

  test('shows pictures of the demo day, with the words that the bot says there', async () => {
    for (const { file, altText, png } of await readmePictures()) {
      expect(readme.text).toContain(`![${altText}](deploy/pictures/${file})`);
      // Signature and size: https://www.w3.org/TR/png-3/#11IHDR.
      const [drawn, kept] = [Buffer.from(await png()), readFileSync(fromRoot(`deploy/pictures/${file}`))];
      expect(kept.subarray(0, 24)).toEqual(drawn.subarray(0, 24));
    }
  });
});

test.each(['README.md', 'deploy/crew-en.md', 'deploy/crew-es.md', 'deploy/README.md'])(
  '%s has phrases to be read',
  (path) => {
    expect(phrasesIn(at(path)).length).toBeGreaterThan(20);
  },
);

test.each(['deploy/crew-en.md', 'deploy/crew-es.md'])('%s fits on a page', (path) => {
  expect(at(path).text.split(/\s+/).length).toBeLessThan(700);
  expect(at(path).text.trimEnd().split('\n').length).toBeLessThan(55);
});

describe('deploy/README.md', () => {
  test('explains every setting of the environment', () => {
    expect(settingNames().length).toBeGreaterThan(20);
    expect(settingNames().filter((name) => !at('deploy/README.md').spans.includes(name))).toEqual([]);
  });

  test('lists every file beside it', () => {
    const files = filesOfRepository('deploy/*.*').map((path) => path.replace('deploy/', ''));
    expect(
      files.filter((file) => file !== 'README.md' && !at('deploy/README.md').spans.includes(file)),
    ).toEqual([]);
  });
});

test('deploy/compose.yaml hands every setting on, but for those that the container fixes', () => {
  const { services } = parse(textOf('deploy/compose.yaml'), { merge: true }) as {
    services: { bot: { environment: Record<string, string> } };
  };
  const handedOn = Object.keys(services.bot.environment);
  const isFixed = (name: string): boolean =>
    textOf('deploy/Dockerfile').includes(`${name}=`) || name.startsWith('FIELDBELL_HEALTH_');
  expect(settingNames().filter((name) => !handedOn.includes(name) && !isFixed(name))).toEqual([]);
});

describe('deploy/replay.md', () => {
  const documented = documentedFields(at('deploy/replay.md'));

  test.each([...fieldsByKind()])('documents the data of "%s", and nothing else', (kind, fields) => {
    expect(documented.has(kind)).toBe(true);
    expect(fieldFaults(documented, kind, fields)).toEqual([]);
  });

  test.each([...fieldsByEntry()])('documents the entry "%s", and nothing else', (kind, { names, values }) => {
    const ofEvery = new Set(documented.get('every entry')?.spans);
    const own = new Set([...names].filter((name) => !ofEvery.has(name)));
    expect(documented.has(kind)).toBe(true);
    expect(fieldFaults(documented, kind, { names: own, values })).toEqual([]);
  });

  test('documents every reason of a refusal', () => {
    const reasons = [...(fieldsByKind().get('refusal')?.values ?? [])];
    expect(reasons.length).toBeGreaterThan(20);
    expect(reasons.filter((reason) => !at('deploy/replay.md').spans.includes(reason))).toEqual([]);
  });
});
