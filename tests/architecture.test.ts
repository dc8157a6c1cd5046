/** The walls of the house: who may import what, and what the pure folders may not touch. A wall counts once it has stopped somebody. */
import { spawnSync } from 'node:child_process';
import { cpSync, globSync, mkdirSync, mkdtempSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const tool = (path: string): string => join(ROOT, 'node_modules', path);
const run = (cwd: string, script: string, ...args: readonly string[]): string =>
  spawnSync(process.execPath, [script, ...args], { cwd, encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 })
    .stdout;

/** A tree with this project's rules and only these files. */
const planted = (files: Readonly<Record<string, string>>): string => {
  const root = mkdtempSync(join(tmpdir(), 'fieldbell-planted-'));
  for (const name of ['.config', 'tsconfig.json', 'package.json'])
    cpSync(join(ROOT, name), join(root, name), { recursive: true });
  symlinkSync(join(ROOT, 'node_modules'), join(root, 'node_modules'));
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  }
  return root;
};

const cruised = z.object({
  modules: z.array(z.object({ source: z.string() })),
  summary: z.object({
    violations: z.array(z.object({ from: z.string(), rule: z.object({ name: z.string() }) })),
  }),
});
const cruise = (root: string) => {
  const args = ['--config', '.config/depcruise.cjs', 'src', 'adapters', '--output-type', 'json'];
  const { modules, summary } = cruised.parse(
    JSON.parse(run(root, tool('dependency-cruiser/bin/dependency-cruiser.mjs'), ...args)),
  );
  return {
    modules: modules.map(({ source }) => source),
    violations: summary.violations.map(({ from, rule }) => `${from}: ${rule.name}`),
  };
};

describe('imports', { timeout: 120_000 }, () => {
  test('keep to their directions in the whole product', () => {
    const { modules, violations } = cruise(ROOT);
    expect(modules.filter((source) => /^(src|adapters)\//.test(source)).length).toBeGreaterThan(100);
    expect(violations).toEqual([]);
  });

  test('that break a rule are found, each by its rule', () => {
    const root = planted({
      'src/core/now.ts': `import { DateTime } from 'luxon';\nexport const now = DateTime;`,
      'src/core/a.ts': `import { b } from './b.ts';\nexport const a = (): number => b();`,
      'src/core/b.ts': `import { a } from './a.ts';\nexport const b = (): number => a();`,
      'src/core/c.ts': `import type { D } from './d.ts';\nexport type C = D | 1;`,
      'src/core/d.ts': `import type { C } from './c.ts';\nexport type D = readonly C[];`,
      'src/core/alone.ts': `export const alone = 1;`,
      'src/ports/file.ts': `import type { PathLike } from 'node:fs';\nexport type File = PathLike;`,
      'src/reading/read.ts': `import { now } from '../run/host/zone-clock.ts';\nexport const read = now;`,
      'src/saying/say.ts': `import { read } from '../reading/read.ts';\nexport const say = read;`,
      'src/settings/load.ts': `import { hear } from '../run/hear.ts';\nexport const load = hear;`,
      'src/store/page.ts': `import { hear } from '../run/hear.ts';\nexport const page = hear;`,
      'src/run/host/zone-clock.ts': `import { parse } from 'yaml';\nexport const now = parse;`,
      'src/run/host/health.ts': `import { hear } from './none.ts';\nexport const health = hear;`,
      'src/run/host/metrics.ts': `import { page } from '../store/page.ts';\nexport const metrics = page;`,
      'src/run/in/hear.ts': `import { chat } from '../../../adapters/slack/chat.ts';\nexport const hear = chat;`,
      'src/run/tick.ts': `import { live } from '../command/live.ts';\nexport const tick = live;`,
      'src/run/sdk.ts': `import { App } from '@slack/bolt';\nimport { createClient } from 'matrix-js-sdk';\nexport const sdk = [App, createClient];`,
      'src/run/tool.ts': `import { test } from 'vitest';\nexport const tool = test;`,
      'src/command/live.ts': `import { crew } from '../../tests/crew.ts';\nexport const live = crew;`,
      'tests/crew.ts': `export const crew = 1;`,
      'adapters/slack/chat.ts': `import { chat as other } from '../matrix/chat.ts';\nexport const chat = other;`,
      'adapters/matrix/chat.ts': `import { alone } from '../../src/core/a2.ts';\nexport const chat = alone;`,
      'src/core/a2.ts': `export const alone = 2;`,
    });
    expect(cruise(root).violations).toEqual(
      expect.arrayContaining([
        'src/core/now.ts: core-imports-nothing',
        'src/core/a.ts: no-cycles',
        'src/core/c.ts: no-cycles',
        'src/core/alone.ts: no-orphans',
        'src/ports/file.ts: ports-are-types-over-core',
        'src/reading/read.ts: reading-is-pure',
        'src/saying/say.ts: saying-is-pure',
        'src/settings/load.ts: settings-know-types-of-core',
        'src/store/page.ts: store-implements-ports',
        'src/run/host/zone-clock.ts: zone-clock-is-luxon',
        'src/run/host/health.ts: all-resolvable',
        'src/run/host/metrics.ts: health-is-http',
        'src/run/in/hear.ts: run-knows-ports-not-parts',
        'src/run/in/hear.ts: adapters-come-together-in-main',
        'src/run/tick.ts: nothing-imports-the-command-line',
        'src/run/sdk.ts: slack-only-in-its-adapter',
        'src/run/sdk.ts: matrix-only-in-its-adapter',
        'src/run/tool.ts: no-dev-deps-in-the-product',
        'src/command/live.ts: nothing-imports-tests',
        'adapters/slack/chat.ts: adapters-see-ports-only',
        'adapters/matrix/chat.ts: core-for-adapters-is-types',
      ]),
    );
  });
});

describe('the pure folders', { timeout: 120_000 }, () => {
  const IMPURE = {
    'src/core/clock.ts': 'export const now = (): number => Date.now();',
    'src/core/zone.ts': 'export const zone = new Intl.DateTimeFormat();',
    'src/core/chance.ts': 'export const chance = (): number => Math.random();',
    'src/reading/wait.ts':
      'export const wait = async (given: Promise<number>): Promise<number> => await given;',
    'src/saying/cast.ts': 'export const cast = (given: unknown): string => given as string;',
    'src/ports/place.ts': "export const place = process.env['HOME'];",
    'src/core/page.ts': "export const page = fetch('https://example.org');",
    'src/core/timer.ts': 'export const timer = setTimeout(() => undefined, 1);',
    'src/core/file.ts': "import { readFileSync } from 'node:fs';\nexport const file = readFileSync;",
    'src/core/pure.ts': 'export const pure = [1, 2] as const;',
  };
  let root: string;
  beforeAll(() => {
    root = planted(IMPURE);
  });

  test('have no process, network, timers and modules of Node', () => {
    const told = run(root, tool('typescript/bin/tsc'), '--noEmit', '-p', '.config/tsconfig.pure.json');
    const refused = told.split('\n').filter((line) => /^\S/.test(line));
    expect(refused.sort()).toEqual([
      expect.stringMatching(/^src\/core\/file\.ts.*node:fs/),
      expect.stringMatching(/^src\/core\/page\.ts.*fetch/),
      expect.stringMatching(/^src\/core\/timer\.ts.*setTimeout/),
      expect.stringMatching(/^src\/ports\/place\.ts.*process/),
    ]);
  });

  test('read no clock and no random source, do not wait and do not cast', () => {
    const messages = z.array(z.object({ ruleId: z.string().nullable(), message: z.string() }));
    const files = z.array(z.object({ filePath: z.string(), messages }));
    const args = ['-c', '.config/eslint.config.mjs', '--format', 'json', 'src'];
    const linted = files.parse(JSON.parse(run(root, tool('eslint/bin/eslint.js'), ...args)));
    const refused = linted.flatMap(({ filePath, messages: found }) =>
      found.map(({ message }) => `${filePath.slice(root.length + 1)}: ${message}`),
    );
    expect(refused).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^src\/core\/clock\.ts: .*'Date'.*Time comes in as data\.$/),
        expect.stringMatching(/^src\/core\/zone\.ts: .*'Intl'.*Zones come in as a ZoneClock\.$/),
        expect.stringMatching(/^src\/core\/chance\.ts: .*Chance comes in as a seed\.$/),
        'src/reading/wait.ts: Pure folders do not wait.',
        'src/saying/cast.ts: Pure folders do not cast.',
      ]),
    );
    expect(refused.filter((found) => found.startsWith('src/core/pure.ts'))).toEqual([]);
  });
});

const parsedFiles = (root: string, pattern: string): ts.SourceFile[] =>
  globSync(pattern, { cwd: root })
    .sort()
    .map((path) =>
      ts.createSourceFile(path, readFileSync(join(root, path), 'utf8'), ts.ScriptTarget.Latest, true),
    );

const isExported = (node: ts.Statement): boolean =>
  ts.canHaveModifiers(node) &&
  (ts.getModifiers(node) ?? []).some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword);

describe('the name of an exported type', () => {
  const declaredTwice = (root: string): string[] => {
    const declared = ['src', 'adapters'].flatMap((folder) =>
      parsedFiles(root, `${folder}/**/*.ts`).flatMap((file) =>
        file.statements
          .filter((node) => ts.isInterfaceDeclaration(node) || ts.isTypeAliasDeclaration(node))
          .filter(isExported)
          .map((node) => ({ name: node.name.text, path: file.fileName })),
      ),
    );
    return [...Map.groupBy(declared, ({ name }) => name)]
      .filter(([, places]) => places.length > 1)
      .map(([name, places]) => `${name}: ${places.map(({ path }) => path).join(', ')}`);
  };

  test('means one thing: it is declared in one file', () => {
    expect(parsedFiles(ROOT, 'src/**/*.ts').length).toBeGreaterThan(100);
    expect(declaredTwice(ROOT)).toEqual([]);
  });

  test('is found when a second file declares it', () => {
    const root = planted({
      'src/core/line/a.ts': 'export interface Reading { serial: number }',
      'src/core/weather/b.ts': 'export type Reading = number;\ninterface Own {}',
      'adapters/slack/c.ts': "export type { Reading } from '../../src/core/line/a.ts';\ninterface Own {}",
    });
    expect(declaredTwice(root)).toEqual(['Reading: src/core/line/a.ts, src/core/weather/b.ts']);
  });
});

describe('an assumption', () => {
  const GRADE = /Grade: (source|measured|common practice|chosen|from memory)\b/;
  const commentOf = (node: ts.Node): string =>
    (ts.getLeadingCommentRanges(node.getSourceFile().text, node.getFullStart()) ?? [])
      .map(({ pos, end }) => node.getSourceFile().text.slice(pos, end))
      .join(' ')
      .replace(/\n\s*\*\s*/g, ' ');

  /** Figures without a grade; a figure that has a name of its own has its grade there. */
  const ungraded = (node: ts.Node, value: ts.Expression | undefined, name: string): string[] => {
    if (value === undefined || ts.isIdentifier(value) || GRADE.test(commentOf(node))) return [];
    if (!ts.isObjectLiteralExpression(value)) return [name];
    return value.properties.flatMap((property) =>
      ungraded(
        property,
        ts.isPropertyAssignment(property) ? property.initializer : undefined,
        `${name}.${property.name?.getText() ?? ''}`,
      ),
    );
  };
  const ungradedIn = (root: string): string[] =>
    parsedFiles(root, 'src/**/assumptions.ts').flatMap((file) =>
      file.statements
        .filter(ts.isVariableStatement)
        .flatMap((node) =>
          node.declarationList.declarations.flatMap(({ name, initializer }) =>
            ungraded(node, initializer, name.getText()),
          ),
        ),
    );

  test('says how far to trust it', () => {
    expect(parsedFiles(ROOT, 'src/**/assumptions.ts').length).toBeGreaterThan(3);
    expect(ungradedIn(ROOT)).toEqual([]);
  });

  test('without a grade is found', () => {
    const root = planted({
      'src/core/assumptions.ts': `
        /** Grade: chosen. */ export const GRADED = 5;
        /** Chosen. */ export const FREE_WORD = 5;
        export const BARE = 5;
        export const THREE = {
          same: GRADED,
          /** Grade: from memory. */
          one: 5,
          /** Assumed. */
          other: 5,
        };`,
    });
    expect(ungradedIn(root)).toEqual(['FREE_WORD', 'BARE', 'THREE.other']);
  });
});
