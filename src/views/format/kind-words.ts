import type { Window } from '../../tracker/windows/index.ts';

/** Cells for the state words of a row at 80 columns. */
export const stateCells = 16;

/** How one kind of window is spoken of. Every phrase but `call` and `callTill` is completed by a clock. */
export type KindWords = {
  readonly waiting: string;
  /** Where it is not known how long. */
  readonly waitingSince: string;
  readonly openTill: string;
  readonly openSince: string;
  /** Past the closing, when extra work makes up for it. */
  readonly afterWork: (says: string | undefined) => string;
  /** Past the closing, when it is lost. */
  readonly lateSince: string;
  /** What to do, in a sentence. */
  readonly call: string;
  /** The same with its closing. */
  readonly callTill: (when: string) => string;
};

export function kindWords(window: Window): KindWords {
  const { kind, verb, closedBy } = window.rule;
  switch (kind) {
    case 'chemical':
      return chemical(verb);
    case 'coat':
      return closedBy.by === 'next pass'
        ? nextPass(window.nextPass ?? `pass ${window.subject.pass + 1}`)
        : coat();
    case 'glue':
      return glue(verb);
    case 'cure':
      return { ...common(verb), waiting: 'curing till', waitingSince: 'curing since' };
    case 'pot':
      return pot(verb);
    case 'timer':
      return timer(verb);
  }
}

const common = (verb: string): KindWords => ({
  waiting: firstThatFits(`waits, ${verb}`, 'waits till'),
  waitingSince: 'waits since',
  openTill: firstThatFits(`${verb} till`, `${bare(verb)} till`, 'open till'),
  openSince: firstThatFits(`${verb} since`, `${bare(verb)} since`, 'open since'),
  afterWork: (says = 'closed') => firstThatFits(`${says} since`, ...workSince(says), 'late since'),
  lateSince: 'late since',
  call: verb,
  callTill: (when) => `${verb}, till ${when}`,
});

/** Working, then now, then late. */
const chemical = (verb: string): KindWords => ({
  ...common(verb),
  waiting: firstThatFits(`working, ${verb}`, `working, ${bare(verb)}`, 'working till'),
  waitingSince: 'working since',
  openTill: firstThatFits(`${bare(verb)} now, till`, 'now, till'),
  callTill: (when) => `${verb}, by ${when}`,
});

/** Whether a coat is ready is for the finger to say: the words go no further than "try it". */
const coat = (): KindWords => ({
  ...common('try it'),
  waiting: 'drying, try it',
  waitingSince: 'drying since',
});

/** @param pass `coat 2 of 4` */
const nextPass = (pass: string): KindWords => ({
  ...common(pass),
  waiting: firstThatFits(`drying, ${pass}`, `${pass} from`, 'drying till'),
  waitingSince: 'drying since',
  callTill: (when) => `${pass}: first stroke by ${when}`,
});

/** What must be done before the glue skins over is done by then, not till then: "in clamps till" says how long they stay on. */
const glue = (verb: string): KindWords => {
  const held = verb === 'clamps off' ? 'in clamps' : 'setting';
  return {
    ...common(verb),
    waiting: `${held} till`,
    waitingSince: `${held} since`,
    openTill: firstThatFits(`${verb} by`, `${bare(verb)} by`, 'now, by'),
    callTill: (when) => `${verb}, by ${when}`,
  };
};

const pot = (verb: string): KindWords => ({
  ...common(verb),
  waiting: 'pot stands till',
  waitingSince: 'pot stands since',
  openTill: 'pot lasts till',
  openSince: 'pot mixed since',
  lateSince: 'pot over since',
  callTill: (when) => `${verb} by ${when}`,
});

const timer = (label: string): KindWords => ({
  ...common(label),
  waiting: 'timer till',
  waitingSince: 'timer since',
  openTill: 'timer up, till',
  openSince: 'timer up since',
});

/** The last one is taken where none fits. */
const firstThatFits = (...phrases: readonly string[]): string =>
  phrases.find((phrase) => phrase.length <= stateCells) ?? phrases.at(-1) ?? '';

/** `scuff since`, of work to be done first; what tells of the surface before its rescue, `it sets: soften it`, begins with no such word. */
const workSince = (says: string): readonly string[] =>
  says.includes(':') ? [] : [`${says.split(' ')[0] ?? says} since`];

/** `B on` is B, `wipe off` is wipe: the verb without its particle. */
const bare = (verb: string): string => verb.replace(/ (on|off|out|up|over)$/, '');
