import { bench } from '../bench.ts';
import { pings } from '../pings.ts';
import { windows } from '../windows.ts';
import type { CommandFile } from './command.ts';
import type * as Others from './other-commands.ts';

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

/** Loaded when one of them is named, all together: few files are opened faster than many. */
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
  seen: other('look', 'take note of pings', 'seen'),
  keys: other('look', 'the keys of the screen', 'keys'),

  'pick-up': other('work', 'take a piece in hand: its minutes run', 'pickUp'),
  'take-along': other('work', 'one more piece into what is in hand', 'takeAlong'),
  'put-down': other('work', 'put it down', 'putDown'),
  'next-stamp': other('work', 'the stamp that the step expects next', 'nextStamp'),
  'first-stroke': other('work', 'the first stroke is on', 'firstStroke'),
  'next-section': other('work', 'the last section off, the next one on', 'nextSection'),
  stamp: other('work', 'any other stamp: topped-up, clamps-off, washed-out', 'stamp'),
  done: other('work', 'the step is done; its windows run', 'done'),
  ready: other('work', 'you tried the surface, and it was', 'ready'),
  'not-yet': other('work', 'you tried it, and it was not', 'notYet'),
  trouble: other('work', 'you tried it, and it showed trouble', 'trouble'),
  'why-late': other('work', 'why a "not yet" came so late', 'whyLate'),
  moisture: other('work', 'what a moisture meter shows: 12.5 --untouched 9', 'moisture'),
  earlier: other('work', 'the last stamp of a piece was earlier', 'earlier'),
  later: other('work', 'the last stamp of a piece was later', 'later'),
  timer: other('work', 'an odd timer: clamps 35min', 'timer'),
  'close-timer': other('work', 'an odd timer is over', 'closeTimer'),
  pot: other('work', 'pots that are mixed and not washed out', 'pot'),
  'pot mix': other('work', 'mix a pot that several pieces may share', 'potMix'),
  'pot wash-out': other('work', 'a pot is washed out', 'potWashOut'),
  answer: other('work', 'what a step with a question showed: answer 3 shellac', 'answer'),
  note: other('work', 'write a note on a piece or step', 'note'),
  'take-back': other('work', 'take back what was recorded last', 'takeBack'),
  'bring-back': other('work', 'bring back what was taken back last', 'bringBack'),
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
  'repeat-step': other('steps', 'the same step once more', 'repeatStep'),
  'move-step': other('steps', 'put a step elsewhere in the order', 'moveStep'),
  'skip-step': other('steps', 'leave a step out, or put it back', 'skipStep'),
  'reword-step': other('steps', 'call a step something else', 'rewordStep'),

  add: other('pieces', 'a new piece on the bench', 'add'),
  describe: other('pieces', 'name, kind, wood, size, year made, date promised', 'describe'),
  parts: other('pieces', 'the parts that are worked separately', 'parts'),
  matches: other('pieces', 'two pieces that should come out alike', 'matches'),
  hold: other('pieces', 'a piece waits for something that has no clock', 'hold'),
  lift: other('pieces', 'lift a hold', 'lift'),
  'carried-in': other('pieces', 'it came in from the cold', 'carriedIn'),
  'off-bench': other('pieces', 'take a piece off the bench', 'offBench'),
  'put-back': other('pieces', 'put a past piece back on the bench', 'putBack'),
  remove: other('pieces', 'hide a piece; the record stays', 'remove'),

  conditions: other('shop', 'temperature and humidity: 66F 55%', 'conditions'),
  rags: other('shop', 'oily rags that nobody has dealt with yet', 'rags'),
  'rags dealt-with': other(
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
