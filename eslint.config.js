import js from '@eslint/js'
import comments from '@eslint-community/eslint-plugin-eslint-comments/configs'
import tseslint from 'typescript-eslint'

/** Forbidden everywhere. */
const everywhere = [
  { selector: 'ExportAllDeclaration', message: 'No `export *`: name what is exported, and no barrels.' },
  { selector: 'TSAsExpression > TSAnyKeyword', message: 'No `as any`: narrow, or use `satisfies`.' },
  { selector: 'TSEnumDeclaration', message: 'No enums: a union of texts says the same.' },
  {
    selector:
      ':matches(ImportDeclaration, ExportNamedDeclaration, ImportExpression)[source.value=/^\\.(?!.*\\.(ts|tsx|mjs|json|css)$)/]',
    message: 'Write relative imports with their extension, `./spans.ts`.',
  },
]

/** Forbidden in the core: it gets the day and every fact as an argument. */
const noClock = [
  {
    selector: "NewExpression[callee.name='Date'][arguments.length=0]",
    message: 'The core has no clock: take the day as an argument.',
  },
  {
    selector: "CallExpression[callee.name='Date']",
    message: 'The core has no clock: take the day as an argument.',
  },
]

const outsideWorld = [
  'process',
  'console',
  'fetch',
  'setTimeout',
  'setInterval',
  'setImmediate',
  'queueMicrotask',
  'performance',
  'crypto',
  'Buffer',
  'globalThis',
].map((name) => ({ name, message: 'The core is pure: it takes every fact as an argument.' }))

const impureProperties = [
  { object: 'Date', property: 'now', message: 'The core has no clock: take the day as an argument.' },
  { object: 'Temporal', property: 'Now', message: 'The core has no clock: take the day as an argument.' },
  { object: 'Math', property: 'random', message: 'The core has no chance in it.' },
]

/** The steps of a use case in the order of the road; TypeScript infers each type from those before. */
const ROAD = [
  'name',
  'permission',
  'stepUp',
  'input',
  'prepare',
  'logged',
  'load',
  'about',
  'seen',
  'decide',
  'act',
  'save',
  'journal',
  'actedBy',
  'desk',
  'value',
  'answer',
  'looked',
]

/** Forbidden in declarations of use cases: a step after one that the road takes later. */
const outOfOrder = ROAD.slice(0, -1).map((step, at) => ({
  selector:
    'CallExpression[callee.name=/^(command|deskCommand|query)$/] > ObjectExpression.arguments > ' +
    `Property[key.name=/^(${ROAD.slice(at + 1).join('|')})$/] ~ Property[key.name='${step}']`,
  message: `A declaration follows the road: ${ROAD.join(', ')}.`,
}))

export default tseslint.config(
  {
    ignores: [
      '**/node_modules/',
      '.data/',
      '.next/',
      '.next-*/',
      'next-env.d.ts',
      'lib/store/generated/',
      'coverage/',
    ],
  },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  js.configs.recommended,
  comments.recommended,
  {
    rules: {
      eqeqeq: ['error', 'always'],
      'no-restricted-syntax': ['error', ...everywhere],
      'max-lines': ['error', { max: 320, skipBlankLines: true, skipComments: false }],
      '@eslint-community/eslint-comments/require-description': ['error', { ignore: ['eslint-enable'] }],
    },
  },
  {
    files: ['**/*.ts', '**/*.tsx'],
    extends: [tseslint.configs.strictTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/consistent-type-definitions': ['error', 'type'],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-import-type-side-effects': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: false, requireDefaultForNonUnion: true },
      ],
      '@typescript-eslint/ban-ts-comment': ['error', { minimumDescriptionLength: 10 }],
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-unnecessary-condition': [
        'error',
        { allowConstantLoopConditions: 'only-allowed-literals' },
      ],
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', ignoreRestSiblings: true, reportUsedIgnorePattern: true },
      ],
      '@typescript-eslint/no-confusing-void-expression': 'off',
      '@typescript-eslint/no-unsafe-enum-assignment': 'off', // there are no enums, and it is slow
      '@typescript-eslint/no-unnecessary-type-parameters': 'off',
    },
  },
  {
    // The name tells what runs in a browser, and dependency-cruiser goes by the name.
    files: ['app/**/*.ts', 'app/**/*.tsx'],
    ignores: ['app/**/*.client.tsx', 'app/**/error.tsx', 'app/global-error.tsx'],
    rules: {
      'no-restricted-syntax': [
        'error',
        ...everywhere,
        {
          selector: "ExpressionStatement[directive='use client']",
          message: 'A file for the browser is named *.client.tsx.',
        },
      ],
    },
  },
  {
    files: ['lib/usecases/**/*.ts', 'tests/**/*.ts'],
    rules: { 'no-restricted-syntax': ['error', ...everywhere, ...outOfOrder] },
  },
  {
    files: ['lib/core/**/*.ts'],
    rules: {
      'no-restricted-globals': [
        'error',
        ...outsideWorld,
        { name: 'Date', message: 'Dates are CalendarDate; arithmetic lives in lib/core/calendar.' },
      ],
      'no-restricted-properties': ['error', ...impureProperties],
      'no-restricted-syntax': ['error', ...everywhere, ...noClock],
    },
  },
  {
    files: ['lib/core/calendar/**/*.ts'],
    rules: { 'no-restricted-globals': ['error', ...outsideWorld] },
  },
  {
    files: ['tests/**/*.ts'],
    rules: {
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/require-await': 'off',
    },
  },
  {
    // TypeScript itself checks these for undeclared names (checkJs).
    files: ['**/*.js', '**/*.mjs', '**/*.cjs'],
    rules: { 'no-undef': 'off' },
  },
)
