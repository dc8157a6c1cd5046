// Lint rules. The pure folders (core, reading, saying) may not read a clock or a random source, wait, or cast:
// time and chance come in as data, so that the same facts always give the same day.
import tseslint from 'typescript-eslint';

const enums = {
  selector: 'TSEnumDeclaration',
  message: 'Use a union of strings: enums cannot be type-stripped.',
};

export default tseslint.config(
  {
    ignores: ['node_modules/**', 'coverage/**', '.fieldbell/**', '**/*.mjs', '**/*.cjs', 'tests/fixtures/**'],
  },
  ...tseslint.configs.strictTypeChecked,
  ...tseslint.configs.stylisticTypeChecked,
  {
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    languageOptions: { parserOptions: { projectService: true } },
    rules: {
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { requireDefaultForNonUnion: true }],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/consistent-type-definitions': 'off',
      // Memory-backed ports have an async shape and a sync body.
      '@typescript-eslint/require-await': 'off',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      'max-lines': ['error', { max: 300, skipBlankLines: true, skipComments: true }],
      'max-lines-per-function': ['error', { max: 60, skipBlankLines: true, skipComments: true }],
      'no-console': 'error',
      'no-restricted-syntax': ['error', enums],
    },
  },
  {
    files: ['src/core/**', 'src/reading/**', 'src/saying/**', 'src/ports/**'],
    rules: {
      'no-restricted-globals': [
        'error',
        { name: 'Date', message: 'Time comes in as data.' },
        { name: 'Intl', message: 'Zones come in as a ZoneClock.' },
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Chance comes in as a seed.' },
      ],
      'no-restricted-syntax': [
        'error',
        enums,
        { selector: 'AwaitExpression', message: 'Pure folders do not wait.' },
        {
          selector: 'TSAsExpression:not([typeAnnotation.typeName.name="const"])',
          message: 'Pure folders do not cast.',
        },
      ],
    },
  },
  {
    files: [
      'src/main.ts',
      'src/command/**',
      'adapters/local/**',
      'tests/bench/**',
      'tests/backtest/**',
      'tests/reading/training/**',
      'tests/reading/score/main.ts',
    ],
    rules: { 'no-console': 'off' },
  },
  { files: ['tests/**'], rules: { 'max-lines-per-function': 'off' } },
);
