// The arrows of the house. Inward: tracker <- persist, tracker <- views;
// tracker, persist, views <- shell; all <- commands and main.

/** A package as it lies under node_modules, also behind a link. */
const packages = (...names) => `node_modules/(${names.join('|')})/`;

/** @param {string} name @param {string} comment @param {object} from @param {object} to */
const forbid = (name, comment, from, to) => ({ name, comment, severity: 'error', from, to });

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    forbid(
      'tracker-stands-alone',
      'the core imports nothing of ours outside itself',
      { path: '^src/tracker/' },
      { path: '^(src|tests|scripts)/', pathNot: '^src/tracker/' },
    ),
    forbid(
      'tracker-is-pure',
      'the core has no disk, terminal, environment or randomness',
      { path: '^src/tracker/' },
      { dependencyTypes: ['core'] },
    ),
    forbid(
      'tracker-takes-pure-libraries',
      'the core may calculate with a library that does nothing else: no clock, disk, or state of its own',
      { path: '^src/tracker/' },
      {
        dependencyTypes: ['npm', 'npm-dev', 'npm-optional', 'npm-peer'],
        pathNot: packages('pure-rand', 'leven'),
      },
    ),
    forbid(
      'persist-knows-tracker-only',
      'what is stored knows the core, not who shows or drives it',
      { path: '^src/persist/' },
      { path: '^src/', pathNot: '^src/(persist|tracker)/' },
    ),
    forbid(
      'views-know-tracker-only',
      'views draw the core and reach the rest through a port that they declare',
      { path: '^src/views/' },
      { path: '^src/', pathNot: '^src/(views|tracker)/' },
    ),
    forbid(
      'shell-is-driven-not-driving',
      'commands and main call the shell, never the other way round',
      { path: '^src/shell/' },
      { path: '^src/', pathNot: '^src/(shell|tracker|persist|views)/' },
    ),
    forbid(
      'starting-stands-alone',
      'what loads the program is there before any of it',
      { path: '^src/(starting/|load-program\\.ts$)' },
      { path: '^src/', pathNot: '^src/starting/' },
    ),
    forbid(
      'main-is-the-top',
      'nothing imports the program itself',
      { path: '^src/', pathNot: '^src/start\\.cjs$' },
      { path: '^src/(main\\.ts|load-program\\.ts|start\\.cjs)$' },
    ),
    forbid(
      'tracker-through-front-doors',
      'outside the core only src/tracker/*/index.ts is imported',
      { path: '^(src|scripts)/', pathNot: '^src/tracker/' },
      { path: '^src/tracker/', pathNot: '^src/tracker/[^/]+/index\\.ts$' },
    ),
    forbid(
      'program-knows-no-tests',
      'what ships never needs what does not',
      { path: '^src/' },
      { path: '^(tests|scripts)/' },
    ),
    forbid(
      'zod-in-persist',
      'shapes are checked where data comes in',
      { path: '^src/', pathNot: '^src/persist/' },
      { path: packages('zod') },
    ),
    forbid(
      'conf-in-persist',
      'one place writes files of facts',
      { path: '^src/', pathNot: '^src/persist/' },
      { path: packages('conf') },
    ),
    forbid(
      'ink-in-views-and-screen',
      'everything else must run without a terminal',
      { path: '^src/', pathNot: '^src/(views/|shell/screen)' },
      { path: packages('ink', 'ink-[^/]+', 'react', '@types/react') },
    ),
    forbid(
      'notifier-in-ping',
      'one place notifies',
      { path: '^src/', pathNot: '^src/shell/ping/' },
      { path: packages('node-notifier', '@types/node-notifier') },
    ),
    forbid(
      'no-cycles',
      'modules that load each other have no order',
      {},
      { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    ),
    {
      ...forbid(
        'no-type-cycles',
        'types that need each other belong together',
        {},
        { circular: true },
      ),
      severity: 'warn',
    },
    forbid('resolvable', 'an import that leads nowhere', {}, { couldNotResolve: true }),
    forbid(
      'declared-packages',
      'a package that package.json does not name may be gone tomorrow',
      {},
      { dependencyTypes: ['npm-no-pkg', 'npm-unknown'] },
    ),
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
    },
  },
};
