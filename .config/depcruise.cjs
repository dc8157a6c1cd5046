// Which folder may import what. `layer(name, from, may)` forbids everything from `from` that is not in `may`.
const layer = (name, from, may) => ({
  name,
  severity: 'error',
  from: { path: from },
  to: { pathNot: may },
});

const npm = (...names) => names.map((name) => `^node_modules/${name}/`);

module.exports = {
  forbidden: [
    layer('core-imports-nothing', '^src/core/', ['^src/core/']),
    layer('ports-are-types-over-core', '^src/ports/', ['^src/(ports|core)/']),
    layer('reading-is-pure', '^src/reading/', [
      '^src/reading/',
      '^src/core/',
      '^src/ports/chat\\.ts$',
      ...npm('fastest-levenshtein'),
    ]),
    layer('saying-is-pure', '^src/saying/', [
      '^src/saying/',
      '^src/core/',
      '^src/ports/chat\\.ts$',
      ...npm('intl-messageformat'),
    ]),
    layer('settings-know-types-of-core', '^src/settings/', [
      '^src/(settings|core)/',
      ...npm('zod', 'yaml'),
      '^(node:)?(fs|path|url)',
    ]),
    layer('store-implements-ports', '^src/store/', [
      '^src/(store|ports|core)/',
      ...npm('drizzle-orm', 'postgres', '@electric-sql/pglite'),
      '^(node:)?(fs|path|os|url|crypto|module)',
    ]),
    layer('run-knows-ports-not-parts', '^src/run/(?!host/(zone-clock|health|metrics)|line/(thread|worker))', [
      '^src/(run|reading|saying|ports|core)/',
    ]),
    layer('line-threads-are-of-node', '^src/run/line/(thread|worker)\\.ts$', [
      '^src/(run|ports|core)/',
      '^(node:)?worker_threads$',
    ]),
    layer('zone-clock-is-luxon', '^src/run/host/zone-clock\\.ts$', [
      '^src/core/',
      ...npm('luxon', '@types/luxon'),
    ]),
    layer('health-is-http', '^src/run/host/(health|metrics)\\.ts$', [
      '^src/(run|core)/',
      ...npm('prom-client'),
      '^(node:)?http',
    ]),
    {
      name: 'adapters-see-ports-only',
      severity: 'error',
      comment:
        'An adapter knows its own folder, the ports and the core types that they speak of, its SDK and Node.',
      from: { path: '^adapters/([^/]+)/' },
      to: { pathNot: ['^adapters/$1/', '^src/(ports|core)/', '^node_modules/', '^(node:)?[a-z_/]+$'] },
    },
    {
      name: 'core-for-adapters-is-types',
      severity: 'error',
      from: { path: '^adapters/' },
      to: {
        path: '^src/core/',
        dependencyTypesNot: ['type-only'],
        pathNot: '^src/core/(units|reason)\\.ts$',
      },
    },
    {
      name: 'adapters-come-together-in-main',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/(main\\.ts$|command/)' },
      to: { path: '^adapters/' },
    },
    {
      name: 'nothing-imports-the-command-line',
      severity: 'error',
      from: { path: '^(src|adapters)/', pathNot: '^src/(main\\.ts$|command/)' },
      to: { path: '^src/(main\\.ts$|command/)' },
    },
    {
      name: 'slack-only-in-its-adapter',
      severity: 'error',
      from: { path: '^(src|adapters)/', pathNot: '^adapters/slack/' },
      to: { path: 'node_modules/@slack/' },
    },
    {
      name: 'matrix-only-in-its-adapter',
      severity: 'error',
      from: { path: '^(src|adapters)/', pathNot: '^adapters/matrix/' },
      to: { path: 'node_modules/matrix-js-sdk/' },
    },
    {
      name: 'no-cycles',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'nothing-imports-tests',
      severity: 'error',
      from: { path: '^(src|adapters)/' },
      to: { path: '^tests/' },
    },
    { name: 'all-resolvable', severity: 'error', from: {}, to: { couldNotResolve: true } },
    {
      name: 'no-dev-deps-in-the-product',
      severity: 'error',
      from: { path: '^(src|adapters)/' },
      to: { dependencyTypes: ['npm-dev'], pathNot: 'node_modules/@types/' },
    },
    {
      name: 'no-orphans',
      severity: 'error',
      from: { orphan: true, path: '^(src|adapters)/', pathNot: ['node-version\\.mjs$'] },
      to: {},
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default', 'types'],
    },
  },
};
