import js from '@eslint/js';
import reactHooks from 'eslint-plugin-react-hooks';
import { defineConfig, globalIgnores } from 'eslint/config';
import tseslint from 'typescript-eslint';

const timers = ['setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask'];

/** @param {string} message @param {string[]} names */
const forbiddenGlobals = (message, names) => names.map((name) => ({ name, message }));

const clockIsAValue = 'time comes in as a value';

/** What reads the time of the machine without an argument, or its zone. */
const clockReads = [
  { selector: 'NewExpression[callee.name="Date"][arguments.length=0]', message: clockIsAValue },
  { selector: 'CallExpression[callee.name="Date"]', message: clockIsAValue },
];

const machineSettings = [
  {
    selector:
      'MemberExpression[property.name=/^(get|set)(Date|Day|FullYear|Hours|Milliseconds|Minutes|Month|Seconds|TimezoneOffset)$/]',
    message: "depends on the machine's time zone: use the shop's zone",
  },
  {
    selector: 'MemberExpression[property.name=/^(toLocale\\w*String|localeCompare)$/]',
    message: "depends on the machine's locale",
  },
];

export default defineConfig(
  globalIgnores(['dist/', 'coverage/', 'src/start.cjs']),
  js.configs.recommended,
  tseslint.configs.recommendedTypeChecked,
  reactHooks.configs.flat['recommended-latest'],
  {
    linterOptions: { reportUnusedDisableDirectives: 'error', reportUnusedInlineConfigs: 'error' },
    languageOptions: {
      parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname },
    },
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true, requireDefaultForNonUnion: true },
      ],
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', varsIgnorePattern: '^_', caughtErrorsIgnorePattern: '^_' },
      ],
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      // The compiler finds these.
      'no-undef': 'off',
      eqeqeq: 'error',
      'max-lines': ['warn', { max: 300, skipBlankLines: true }],
    },
  },
  {
    name: 'what is nested deeper is a function of its own',
    files: ['src/**'],
    rules: { 'max-depth': ['error', 3] },
  },
  {
    name: 'the core knows no clock, disk, terminal, environment or randomness',
    files: ['src/tracker/**'],
    rules: {
      'no-restricted-globals': [
        'error',
        ...forbiddenGlobals(clockIsAValue, ['performance', ...timers]),
        ...forbiddenGlobals('the core is pure', [
          'process',
          'console',
          'crypto',
          'fetch',
          'global',
          'globalThis',
          'navigator',
          'require',
          'Buffer',
        ]),
        ...forbiddenGlobals('formatting for people belongs outside the core', ['Intl']),
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Date', property: 'now', message: clockIsAValue },
        { object: 'Temporal', property: 'Now', message: clockIsAValue },
        { object: 'Math', property: 'random', message: 'randomness comes in as a seed' },
      ],
      'no-restricted-syntax': ['error', ...clockReads, ...machineSettings],
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              regex:
                '^(node:.*|fs|os|path|process|timers|child_process|crypto|worker_threads)(/|$)',
              message: 'the core is pure',
            },
          ],
        },
      ],
    },
  },
  {
    name: 'views draw state and send intents',
    files: ['src/views/**'],
    rules: {
      'no-restricted-globals': [
        'error',
        ...forbiddenGlobals('ask the port', ['process', 'console', 'globalThis', 'global']),
        ...forbiddenGlobals('the ticker belongs to the shell', ['performance', ...timers]),
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Date', property: 'now', message: clockIsAValue },
        { object: 'Temporal', property: 'Now', message: clockIsAValue },
      ],
      'no-restricted-syntax': ['error', ...clockReads],
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              regex: '^(node:)?(fs|timers|process|child_process|os|worker_threads)(/|$)',
              message: 'views reach the outside through their port only',
            },
          ],
        },
      ],
    },
  },
  {
    files: ['tests/**', 'scripts/**'],
    rules: {
      'max-lines': ['warn', { max: 500, skipBlankLines: true }],
      // Parsed JSON and mocks are checked by what the test asserts.
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
    },
  },
  {
    // Configuration files lie outside the compiler's project.
    files: ['*.mjs', '*.cjs', '.*.cjs'],
    extends: [tseslint.configs.disableTypeChecked],
    languageOptions: { parserOptions: { projectService: false } },
  },
);
