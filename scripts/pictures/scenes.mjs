/**
 * What the pictures show: the demo's invented shop, and how to get to each screen from its bench.
 *
 * @typedef {ReturnType<typeof import('./terminal.mjs').openTerminal>} Terminal
 * @typedef {import('./stage.mjs').Stage} Stage
 * @typedef {object} Scene
 * @property {string} name the file's, without ending
 * @property {string} title what the picture shows, for who can't see it
 * @property {readonly string[]} args
 * @property {number} columns
 * @property {number} rows
 * @property {string} begins words that are on the screen once it is there
 * @property {(terminal: Terminal, stage: Stage) => Promise<void>} act what is done before the picture is taken
 */

/** For screens with a line or two on them. */
const low = 14;

const enter = '\r';
const tab = '\t';
const right = '\u001b[C';
const up = '\u001b[A';
const down = '\u001b[B';
const escape = '\u001b';

/** @param {string} name @param {string} title @param {Partial<Scene>} [more] @returns {Scene} */
const scene = (name, title, more = {}) => ({
  name,
  title,
  args: ['demo'],
  columns: 80,
  rows: 24,
  begins: 'k all keys',
  act: async () => {},
  ...more,
});

/**
 * @param {string} name
 * @param {string} title
 * @param {readonly string[]} presses
 * @param {Partial<Scene>} [more]
 * @returns {Scene}
 */
const after = (name, title, presses, more = {}) =>
  scene(name, title, {
    ...more,
    act: async (terminal) => {
      for (const press of presses) await terminal.press(press);
    },
  });

/** Long enough for B to fall due on the bleach, in steps that leave the far view away. @param {Terminal} terminal @param {Stage} stage */
async function untilLoud(terminal, stage) {
  await terminal.press('1');
  await stage.pass(50);
  await terminal.press('1');
  await stage.pass(40);
  await terminal.shows('!! 1');
}

/** @type {readonly Scene[]} */
export const scenes = [
  scene('first-run', 'An empty bench, and what to do first.', {
    args: [],
    rows: low,
    begins: 'The bench is empty.',
  }),
  scene('bench', 'The bench: eight pieces, and their windows on one time axis.'),
  scene('loud-ping', 'A loud ping: B is due on a bleach.', { act: untilLoud }),
  scene('bench-wide', 'The bench at 120 columns.', { columns: 120, rows: 36 }),
  scene('bench-narrow', 'The bench at 40 columns.', { columns: 40, begins: 'k keys' }),
  scene('far-view', 'The far view, for somebody across the shop.', {
    act: async (terminal, stage) => {
      await stage.pass(61);
      await terminal.shows('keys act on');
    },
  }),
  after('piece', 'One piece opened: its steps and windows.', ['2', right]),
  after('pad-list', 'The list behind / for a bare numeric pad.', ['3', '/'], { rows: 16 }),
  after('keys', 'All keys on one sheet.', ['k']),
  after(
    'add-piece',
    'Adding a piece: its name, then a finishing schedule.',
    [...['a', ...'Oak settle', enter]],
    { rows: low },
  ),
  after('trouble', 'What a check showed, and steps against it.', ['2', 't']),
  after('hold', 'Putting a piece on hold.', ['3', 'h', ...'new castors'], { rows: low }),
  after('note', 'Writing a note.', ['3', 'w', ...'left rear foot has an old dowel'], { rows: low }),
  after('odd-timer', 'An odd timer that belongs to no schedule.', ['3', 'o', ...'clamps 35 min'], {
    rows: low,
  }),
  after('conditions', 'Entering the conditions of the shop.', ['c', ...'16C 61%'], { rows: low }),
  after('hours', 'Hours of one piece: actual against estimated.', ['2', 'm']),
  after('hours-all', 'Hours over all finished pieces, by step class.', ['2', 'm', tab]),
  after('hours-over-time', 'Hours over all finished pieces, month by month.', [
    ...['2', 'm', tab, tab, tab],
  ]),
  after('hours-past-ranges', 'What was said of each finished piece, and where it came out.', [
    ...['2', 'm', tab, tab, tab, tab],
  ]),
  scene('hours-back-test', 'Every past step foretold anew, and how often the range held.', {
    act: async (terminal) => {
      for (const press of ['2', 'm', tab, tab, tab, tab, tab]) await terminal.press(press);
      await terminal.shows('half of the steps missed by');
    },
  }),
  after('hours-where', 'Where the hours went.', ['2', 'm', tab, tab, tab, tab, tab, tab]),
  after('job-card', 'The job card of a piece.', ['2', 'j']),
  after('past-pieces', 'Pieces that have left the bench.', ['z']),
  scene('pings', 'The log of pings.', {
    act: async (terminal, stage) => {
      await untilLoud(terminal, stage);
      await terminal.press(' ');
      await terminal.press('i');
    },
  }),
  after('settings', 'The settings.', ['u']),
  after('overnight', 'Shutting up shop.', ['v']),
  after('use-product', 'Another product for a step.', ['2', right, down, 'p'], { rows: 18 }),
  after(
    'without-trial',
    'Going on without a trial, which wants a reason.',
    ['3', right, down, down, down, down, down, enter, enter],
    { rows: low },
  ),
  scene('why-late', 'Why a surface is far later than expected.', {
    rows: low,
    act: async (terminal, stage) => {
      await terminal.press('2');
      await stage.pass(9 * 3600);
      // The first keys silence what has become loud meanwhile.
      for (const key of [escape, '3', '3', '2', 'n']) await terminal.press(key);
    },
  }),
  after(
    'question',
    'What a step asks, and what was answered.',
    ['3', right, ...Array.from({ length: 8 }, () => up), 'a'],
    { rows: 16 },
  ),
  after(
    'which-to-put-down',
    'A third piece is picked up, and no hand is free.',
    ['u', right, escape, '4', '3', enter, '6', enter],
    { rows: 12 },
  ),
  after('pots', 'Pots: what can be mixed, and what is to be washed out.', ['l'], { rows: 16 }),
  after('other-stamp', 'Stamps that no step expects.', ['4', ';'], { rows: 10 }),
  after('off-the-bench', 'Taking a piece off the bench asks first.', ['7', 'y'], { rows: low }),
  after('leave', 'Leaving while windows run: what will not ping.', ['q'], { rows: 16 }),
];
