import { bench } from '../bench.ts';
import { pings } from '../pings.ts';
import { windows } from '../windows.ts';
import type { CommandFile } from './command.ts';
import type * as Others from './other-commands.ts';
import type * as Recording from './recording-commands.ts';

/** A command as the list of all shows it. */
export type CommandEntry = {
  readonly heading: Heading;
  readonly summary: string;
  readonly load: () => CommandFile | Promise<CommandFile>;
};

export const headings = ['look', 'work', 'steps', 'pieces', 'shop', 'schedules'] as const;
type Heading = (typeof headings)[number];

const entry = (heading: Heading, summary: string, load: CommandEntry['load']): CommandEntry => ({
  heading,
  summary,
  load,
});

/** What records work at the bench: loaded without what looks into the past, and all together, as few files open faster. */
const recording = (heading: Heading, summary: string, name: keyof typeof Recording): CommandEntry =>
  entry(heading, summary, async () => (await import('./recording-commands.ts'))[name]);

/** Loaded when one of them is named, all together. */
const other = (heading: Heading, summary: string, name: keyof typeof Others): CommandEntry =>
  entry(heading, summary, async () => (await import('./other-commands.ts'))[name]);

const table = {
  bench: entry('look', 'the bench as text', () => bench),
  windows: entry('look', 'the windows that run, with all their stretches', () => windows),
  steps: other('look', 'a piece with its steps', 'steps'),
  cautions: other('look', 'what to be careful about in a step of a piece, now', 'cautions'),
  hours: other(
    'look',
    'actual against estimated minutes of a piece, or of finished pieces',
    'hours',
  ),
  drying: other('look', 'how long your coats take, against their labels', 'drying'),
  'job-card': other('look', 'all that was done to a piece and put on it', 'jobCard'),
  past: other('look', 'pieces that have left the bench', 'past'),
  pings: entry('look', 'pings that went out, and those to come', () => pings),
  seen: recording('look', 'take note of pings', 'seen'),
  keys: other('look', 'the keys of the screen', 'keys'),

  'pick-up': recording('work', 'take a piece in hand: its minutes run', 'pickUp'),
  'take-along': recording('work', 'one more piece into what is in hand', 'takeAlong'),
  'put-down': recording('work', 'put it down', 'putDown'),
  'next-stamp': recording('work', 'the stamp that the step expects next', 'nextStamp'),
  'first-stroke': recording('work', 'the first stroke is on', 'firstStroke'),
  'next-section': recording('work', 'the last section off, the next one on', 'nextSection'),
  stamp: recording('work', 'any other stamp: topped-up, clamps-off, washed-out', 'stamp'),
  done: recording('work', 'the step is done; its windows run', 'done'),
  ready: recording('work', 'you tried the surface, and it was', 'ready'),
  'not-yet': recording('work', 'you tried it, and it was not', 'notYet'),
  trouble: recording('work', 'you tried it, and it showed trouble', 'trouble'),
  'why-late': recording('work', 'why a "not yet" came so late', 'whyLate'),
  moisture: recording('work', 'what a moisture meter shows: 12.5 --untouched 9', 'moisture'),
  earlier: recording('work', 'the last stamp of a piece was earlier', 'earlier'),
  later: recording('work', 'the last stamp of a piece was later', 'later'),
  timer: recording('work', 'an odd timer: clamps 35min', 'timer'),
  'close-timer': recording('work', 'an odd timer is over', 'closeTimer'),
  pot: recording('work', 'pots that are mixed and not washed out', 'pot'),
  'pot mix': recording('work', 'mix a pot that several pieces may share', 'potMix'),
  'pot wash-out': recording('work', 'a pot is washed out', 'potWashOut'),
  answer: recording('work', 'what a step with a question showed: answer 3 shellac', 'answer'),
  note: recording('work', 'write a note on a piece or step', 'note'),
  'take-back': recording('work', 'take back what was recorded last', 'takeBack'),
  'bring-back': recording('work', 'bring back what was taken back last', 'bringBack'),
  sessions: other('work', 'when a piece was in hand', 'sessions'),
  'correct-session': other(
    'work',
    'other times, another piece or step for a session',
    'correctSession',
  ),
  'import-hours': other(
    'work',
    'hours that were kept elsewhere, from a CSV file',
    'importHoursFile',
  ),
  'leave-out': other('work', 'leave a piece, or one session, out of learning', 'leaveOut'),

  use: other('steps', 'what a step that is not begun will use', 'useProduct'),
  'insert-step': other('steps', 'put a step into a piece', 'insertStep'),
  'repeat-step': recording('steps', 'the same step once more', 'repeatStep'),
  'move-step': recording('steps', 'put a step elsewhere in the order', 'moveStep'),
  'skip-step': recording('steps', 'leave a step out, or put it back', 'skipStep'),
  'reword-step': recording('steps', 'call a step something else', 'rewordStep'),

  add: other('pieces', 'a new piece on the bench', 'add'),
  describe: recording(
    'pieces',
    'name, kind, wood, size, profile, fittings, year made, date promised',
    'describe',
  ),
  parts: recording('pieces', 'the parts that are worked separately', 'parts'),
  matches: recording('pieces', 'two pieces that should come out alike', 'matches'),
  hold: recording('pieces', 'a piece waits for something that has no clock', 'hold'),
  lift: recording('pieces', 'lift a hold', 'lift'),
  'carried-in': recording('pieces', 'it came in from the cold', 'carriedIn'),
  'off-bench': recording('pieces', 'take a piece off the bench', 'offBench'),
  'put-back': recording('pieces', 'put a past piece back on the bench', 'putBack'),
  remove: recording('pieces', 'hide a piece; the record stays', 'remove'),

  conditions: recording('shop', 'temperature and humidity: 66F 55%', 'conditions'),
  rags: recording('shop', 'oily rags that nobody has dealt with yet', 'rags'),
  'rags dealt-with': recording(
    'shop',
    'oily rags, pads, wool and dust are dealt with',
    'ragsDealtWith',
  ),
  overnight: other('shop', 'shut up shop: what falls due, and the questions', 'overnight'),
  calendar: other('shop', 'windows and promised dates as an iCalendar file', 'calendar'),
  keep: other('shop', 'ping while no screen is open, till nothing is to come', 'keep'),
  settings: other('shop', 'what can be chosen, and choosing it', 'settings'),
  checkup: other('shop', 'whether everything is in order, and what to do where not', 'checkup'),
  export: other('shop', 'the whole store as one file', 'exportStore'),
  import: other('shop', 'an exported store into an empty one', 'importStore'),

  product: other('schedules', 'the products there are, your own cans among them', 'product'),
  'product copy': other('schedules', 'a file of your own can, from a class', 'productCopy'),
  'product check': other(
    'schedules',
    'what is wrong with a products file of yours',
    'schedulesCheck',
  ),
  schedules: other('schedules', 'the finishing schedules there are', 'schedules'),
  'schedules check': other('schedules', 'what is wrong with a file of yours', 'schedulesCheck'),
  over: other('schedules', 'what may go over what: over oil-stain shellac', 'overWhat'),
  'schedules copy': other(
    'schedules',
    'copy one into your own folder, to change it there',
    'schedulesCopy',
  ),
} satisfies Readonly<Record<string, CommandEntry>>;

export const commands: Readonly<Record<string, CommandEntry>> = table;

/** The bench, which is also what no command at all means. */
export const benchEntry = table.bench;
