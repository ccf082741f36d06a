import {
  bringBackName,
  currentStep,
  inHand,
  labelOf,
  lanesOf,
  minutesTooSoon,
  nextAct,
  sessionHolding,
  takeBackName,
  type NextAct,
  type Piece,
  type Standing,
} from '../../tracker/bench/index.ts';
import { ragsFrom } from '../../tracker/overnight/index.ts';
import { minute } from '../../tracker/time/index.ts';
import { cut, lineOf, segment, width, type Line } from '../drawing/index.ts';
import { wrapFigures, wrapWords } from '../drawing/wrap.ts';
import { capital, dayWords, lightUseWords, minutesSpent, whenInWords } from '../format/index.ts';
import { doubtsOnBench, type Doubt } from '../hours/left-running-memo.ts';
import { helpLine, keyMapWith, keyOf, type Act } from '../keys/key-map.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { silenceLine } from '../parts/silence-line.ts';
import { sleepWords } from '../parts/sleep-words.ts';
import type { View } from '../screen.ts';
import type { BenchRows } from './bench-rows.ts';
import type { BenchState } from './bench-state.ts';
import { loudPings } from './head.ts';
import { noticeLines } from './notice-lines.ts';

/** The foot rows: hold and cure, or what the last key did; what the next keys do, or a refusal; the help line. */
export function footLines(state: BenchState, rows: BenchRows, view: View): readonly Line[] {
  const keys = keyMapWith(view.snapshot.settings.keys);
  const { obstacle } = view.snapshot;
  const help = lineOf(
    view.columns < 80
      ? helpLine(keys, narrowHelp, view.columns, { 'all keys': 'keys' })
      : `1-9 piece  ${helpLine(keys, view.columns >= 120 ? wideHelp : normalHelp, view.columns - 11)}`,
    'quiet',
  );
  if (obstacle !== null)
    return [
      ...wrapWords(obstacle.says, view.columns).map(refusalLine),
      ...wrapWords(obstacle.todo, view.columns - 3).map((todo) => lineOf(`   ${todo}`, 'refusal')),
      help,
    ];
  const { message } = view;
  if (message?.refused === true) {
    const told = wrapFigures(message.text, view.columns).slice(0, mostOfRefusal);
    const upper = told.length > 1 ? [] : [quietLine(rows, view)];
    return [...noticeLines(state, view), ...upper, ...told.map(refusalLine), help];
  }
  const role = message?.warns === true ? 'loud' : 'strong';
  const upper =
    message === null
      ? [quietLine(rows, view)]
      : wrapFigures(message.text, view.columns)
          .slice(0, view.rows < fewRows ? mostOfMessage : mostOfWarning)
          .map((line) => lineOf(line, role));
  // While a ping calls, the next key does nothing but silence it.
  const [loud] = loudPings(view);
  const acts =
    loud === undefined ? selectedLine(state, rows.selected, view) : silenceLine(loud, view);
  return [...noticeLines(state, view), ...upper, acts, help];
}

/** What to do about it stands at the end of a refusal, so it is broken into rows rather than cut. */
const mostOfRefusal = 4;
/** A long name of a step would push the piece's off the row, and a warning what was done in spite of it. */
const mostOfMessage = 3;
const mostOfWarning = 5;
const fewRows = 20;

const normalHelp: readonly Act[] = ['pick up', 'ready', 'not yet', 'trouble', 'all keys'];
const wideHelp: readonly Act[] = [
  'pick up',
  'next stamp',
  'ready',
  'not yet',
  'trouble',
  'earlier',
  'back to',
  'all keys',
];
const narrowHelp: readonly Act[] = ['ready', 'not yet', 'trouble', 'all keys'];

/** A refusal begins with "Not"; that word stands out. */
export function refusalLine(text: string): Line {
  const not = /^Not\b/.exec(text)?.[0];
  return not === undefined
    ? lineOf(text, 'refusal')
    : [segment(not, 'inverse'), segment(text.slice(not.length), 'refusal')];
}

/**
 * Rags that nobody dealt with; what waits without hands: holds and cures, and how the machine is kept awake. In as many
 * words as there is room for: a piece that is named nowhere else is not cut off.
 */
function quietLine(rows: BenchRows, view: View): Line {
  const tellings = [quietWords(rows, view, 'whole'), quietWords(rows, view, 'names')];
  const fitting = tellings.find((told) => width(told) <= view.columns);
  const told = fitting ?? quietWords(rows, view, 'numbers');
  return lineOf(cut(told, view.columns, view.theme.glyphs), 'quiet');
}

function quietWords(
  { hold, curing }: BenchRows,
  view: View,
  how: 'whole' | 'names' | 'numbers',
): string {
  const told: string[] = [];
  const isWhole = how === 'whole' && view.columns >= 80;
  const called = (piece: Standing['piece']): string =>
    how === 'numbers' ? String(piece?.number ?? '') : `${piece?.number} ${piece?.name}`;
  const oily = ragsFrom(view.snapshot.bench);
  if (oily.length > 0) {
    const key = keyOf(keyMapWith(view.snapshot.settings.keys), 'overnight');
    const from = oily.map(({ number, name }) => number ?? name).join(', ');
    told.push(isWhole ? `oily rags from ${from}: dealt with? ${key}` : `oily rags? ${key}`);
  }
  const [doubt] = doubtsOnBench(view.snapshot.bench, view.now);
  if (doubt !== undefined) told.push(leftRunningWords(doubt, isWhole, view));
  const sleeps = sleepWords(view.snapshot.awake, isWhole ? 'a sentence' : 'a few words');
  if (sleeps !== null && how !== 'numbers') told.push(sleeps);
  if (hold.length > 0) {
    const each = hold.map(({ piece }) => {
      if (piece === null || piece.hold === null) return '';
      const { reason, askAgain } = piece.hold;
      const ask = askAgain === null ? '' : `, ask ${dayWords(askAgain)}`;
      return called(piece) + (isWhole ? `: ${reason}${ask}` : '');
    });
    told.push(`hold ${each.join(', ')}`);
  }
  if (curing.length > 0) {
    const { shop } = view.snapshot;
    const each = curing.map((standing) => {
      if (!isWhole) return called(standing.piece);
      const light = lightUseWords(standing, view.now, shop);
      const till = `till ${whenInWords(standing.orderAt, view.now, shop)}`;
      return `${called(standing.piece)} ${light === '' ? till : `${till} (${light})`}`;
    });
    told.push(`curing ${each.join(', ')}`);
  }
  // Where not all has room, this is what is cut.
  if (sleeps !== null && how === 'numbers') told.push(sleeps);
  return told.join('   ');
}

/** `3 Beech stool left running from 12:00? 3 m`: its number and the key of the hours, where it can be trimmed or told right. */
function leftRunningWords({ piece, found }: Doubt, isWhole: boolean, view: View): string {
  const keys = `${piece.number} ${keyOf(keyMapWith(view.snapshot.settings.keys), 'minutes')}`;
  if (!isWhole) return `${piece.number} left running? ${keys}`;
  const from =
    found.quiet === null
      ? ''
      : ` from ${whenInWords(found.quiet.from, view.now, view.snapshot.shop)}`;
  return `${calledPiece(piece)} left running${from}? ${keys}`;
}

const isInSections = (next: NextAct): boolean => next.act === 'stamp' && next.next.section !== null;

/** Parts stand at different steps: what a key does to all of them at once is seldom meant then. */
const areApart = (piece: Piece): boolean =>
  new Set(lanesOf(piece).map((part) => currentStep(piece, part)?.id)).size > 1;

/** On a narrow screen, so that what the next key does has room beside it. */
const mostOfPart = 14;

/** `, 27 min early`: what the next-stamp key would begin still has to wait for something; empty where it may begin. */
function earlyWords(next: NextAct, piece: Piece, part: string | null, view: View): string {
  if (next.act !== 'pick up' && next.act !== 'stamp') return '';
  const { bench, sense } = view.snapshot;
  const minutes = minutesTooSoon(bench, { piece, part, step: next.step }, view.now, sense);
  return minutes > 0 ? `, ${minutesSpent(minutes * minute)} early` : '';
}

/** The selected piece and what the next keys would do to it. */
function selectedLine(state: BenchState, selected: Standing | null, view: View): Line {
  const { bench, settings } = view.snapshot;
  const keys = keyMapWith(settings.keys);
  const narrow = view.columns < 80;
  if (selected === null)
    return lineOf('Nothing is selected.  1-9 or the arrows: select a piece', 'strong');
  const { piece } = selected;
  if (piece === null) {
    const act = selected.pot === null ? 'close it' : 'washed out';
    return lineOf(`[-] ${labelOf(selected)}.  ${keyOf(keys, 'next stamp')}: ${act}`, 'strong');
  }
  const part = piece.parts.find((each) => each.id === state.part);
  const next = nextAct(bench, piece, part?.id ?? null, {
    now: view.now,
    sense: view.snapshot.sense,
  });
  const early = earlyWords(next, piece, part?.id ?? null, view);
  const session = sessionHolding(bench, piece.id);
  const held = session !== null;
  const others = (session?.targets ?? []).some((target) => target.piece !== piece.id);
  const waiting = view.snapshot.unwritten.has(piece.id) ? '…' : '';
  const meant = part?.name ?? (areApart(piece) ? 'all parts' : '');
  const name = narrow
    ? `[${piece.number}] ${cut(meant, mostOfPart, view.theme.glyphs)}`.trimEnd()
    : `[${piece.number}] ${piece.name}${meant === '' ? '' : `, ${meant}`}.`;
  const acts = [
    next.act === 'nothing left'
      ? capital(next.says)
      : `${keyOf(keys, 'next stamp')}: ${next.says}${early}`,
    // The next-stamp key goes on from section to section without end.
    ...(isInSections(next) ? [`${keyOf(keys, 'done')}: done`] : []),
    ...(narrow && isInSections(next)
      ? []
      : [
          `${keyOf(keys, 'pick up')}: ${held ? (others ? 'put all down' : 'put down') : 'pick up'}`,
        ]),
  ];
  const head = `${name}${waiting}  `;
  const room = view.columns - width(head);
  // An act is named whole or not at all, but for the first, which nobody could guess.
  const between = narrow ? '  ' : '.  ';
  // The next-stamp key alone never ends a step in sections.
  const least = isInSections(next) ? 2 : 1;
  while (acts.length > least && width(acts.join(between)) > room) acts.pop();
  const taken = acts.slice(1).reduce((cells, act) => cells + width(between + act), 0);
  // Of a long name the end goes, not the words that say what becomes of it.
  const kept = next.act === 'done' ? ' done' : early;
  const first = (acts[0] ?? '').slice(0, kept === '' ? undefined : -kept.length);
  acts[0] = cut(first, room - taken - width(kept), view.theme.glyphs) + kept;
  const along = `${keyOf(keys, 'take along')}: take along`;
  if (!narrow && !held && inHand(bench).length > 0 && width([...acts, along].join(between)) <= room)
    acts.push(along);
  const named = (act: 'take back' | 'bring back', what: string | null): void => {
    if (narrow || what === null) return;
    const joined = acts.join('.  ').length;
    const full = `${keyOf(keys, act)}: ${act}: ${what}`;
    const short = `${keyOf(keys, act)}: ${act}`;
    if (joined + 3 + width(full) <= room) acts.push(full);
    else if (joined + 3 + short.length <= room) acts.push(short);
  };
  named('take back', takeBackName(bench));
  if (view.columns >= 120) named('bring back', bringBackName(bench));
  return [segment(head, 'strong'), segment(acts.join(between))];
}
