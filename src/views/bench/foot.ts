import {
  bringBackName,
  inHand,
  labelOf,
  nextAct,
  sessionHolding,
  takeBackName,
  type NextAct,
  type Standing,
} from '../../tracker/bench/index.ts';
import { ragsFrom } from '../../tracker/overnight/index.ts';
import { cut, lineOf, segment, width, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { dayWords, whenInWords } from '../format/index.ts';
import { firstSentence } from '../format/first-sentence.ts';
import { doubtsOnBench, type Doubt } from '../hours/left-running-memo.ts';
import { helpLine, keyMapWith, keyOf, type Act } from '../keys/key-map.ts';
import { calledPiece } from '../parts/called-piece.ts';
import type { View } from '../screen.ts';
import type { BenchRows } from './bench-rows.ts';
import type { BenchState } from './bench-state.ts';

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
    return [refusalLine(obstacle.says), lineOf(`   ${obstacle.todo}`, 'refusal'), help];
  const { message } = view;
  if (message?.refused === true) {
    const told = wrapWords(message.text, view.columns).slice(0, mostOfRefusal);
    const upper = told.length > 1 ? [] : [quietLine(rows, view)];
    return [...noticeLines(state, view), ...upper, ...told.map(refusalLine), help];
  }
  const role = message?.warns === true ? 'loud' : 'strong';
  const upper =
    message === null
      ? [quietLine(rows, view)]
      : wrapWords(message.text, view.columns)
          .slice(0, mostOfMessage)
          .map((line) => lineOf(line, role));
  return [...noticeLines(state, view), ...upper, selectedLine(state, rows.selected, view), help];
}

/** What to do about it stands at the end of a refusal, so it is broken into rows rather than cut. */
const mostOfRefusal = 4;
/** A long name of a step would push the piece's off the row, and a warning its reason. */
const mostOfMessage = 3;

/** What was noticed since the last key, in at most two rows above the others. */
function noticeLines({ noticesSeen }: BenchState, view: View): readonly Line[] {
  const notice = view.snapshot.notices[noticesSeen];
  if (notice === undefined) return [];
  return wrapWords(notice, view.columns)
    .slice(0, 2)
    .map((line) => lineOf(line, 'strong'));
}

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

/** Rags that nobody dealt with; what waits without hands: holds and cures, and how the machine is kept awake. */
function quietLine({ hold, curing }: BenchRows, view: View): Line {
  const told: string[] = [];
  const narrow = view.columns < 80;
  const oily = ragsFrom(view.snapshot.bench);
  if (oily.length > 0) {
    const key = keyOf(keyMapWith(view.snapshot.settings.keys), 'overnight');
    const from = oily.map(({ number, name }) => number ?? name).join(', ');
    told.push(narrow ? `oily rags? ${key}` : `oily rags from ${from}: dealt with? ${key}`);
  }
  const [doubt] = doubtsOnBench(view.snapshot.bench, view.now);
  if (doubt !== undefined) told.push(leftRunningWords(doubt, view));
  if (view.snapshot.awake?.kept === false) told.push(firstSentence(view.snapshot.awake.says));
  if (hold.length > 0) {
    const each = hold.map(({ piece }) => {
      if (piece === null || piece.hold === null) return '';
      const ask =
        piece.hold.askAgain === null || narrow ? '' : `, ask ${dayWords(piece.hold.askAgain)}`;
      return `${piece.number} ${piece.name}${narrow ? '' : `: ${piece.hold.reason}`}${ask}`;
    });
    told.push(`hold ${each.join(', ')}`);
  }
  if (curing.length > 0) {
    const each = curing.map(({ piece, orderAt }) => {
      const till = narrow ? '' : ` till ${whenInWords(orderAt, view.now, view.snapshot.shop)}`;
      return `${piece?.number} ${piece?.name}${till}`;
    });
    told.push(`curing ${each.join(', ')}`);
  }
  return lineOf(cut(told.join('   '), view.columns, view.theme.glyphs), 'quiet');
}

/** `3 Beech stool left running from 12:00? 3 m`: its number and the key of the hours, where it can be trimmed or told right. */
function leftRunningWords({ piece, found }: Doubt, view: View): string {
  const keys = `${piece.number} ${keyOf(keyMapWith(view.snapshot.settings.keys), 'minutes')}`;
  if (view.columns < 80) return `${piece.number} left running? ${keys}`;
  const from =
    found.quiet === null
      ? ''
      : ` from ${whenInWords(found.quiet.from, view.now, view.snapshot.shop)}`;
  return `${calledPiece(piece)} left running${from}? ${keys}`;
}

const isInSections = (next: NextAct): boolean => next.act === 'stamp' && next.next.section !== null;

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
  const session = sessionHolding(bench, piece.id);
  const held = session !== null;
  const others = (session?.targets ?? []).some((target) => target.piece !== piece.id);
  const waiting = view.snapshot.unwritten.has(piece.id) ? '…' : '';
  const name = narrow
    ? `[${piece.number}]`
    : `[${piece.number}] ${piece.name}${part === undefined ? '' : `, ${part.name}`}.`;
  const acts = [
    next.act === 'nothing left'
      ? next.says
      : `${keyOf(keys, 'next stamp')}: ${narrow ? cut(next.says, view.columns - (isInSections(next) ? 22 : 28), view.theme.glyphs) : next.says}`,
    // The next-stamp key goes on from section to section without end.
    ...(isInSections(next) ? [`${keyOf(keys, 'done')}: done`] : []),
    ...(narrow && isInSections(next)
      ? []
      : [
          `${keyOf(keys, 'pick up')}: ${held ? (others ? 'put all down' : 'put down') : 'pick up'}`,
        ]),
  ];
  if (!narrow && !held && inHand(bench).length > 0)
    acts.push(`${keyOf(keys, 'take along')}: take along`);
  const head = `${name}${waiting}  `;
  const room = view.columns - width(head);
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
  return [segment(head, 'strong'), segment(acts.join(narrow ? '  ' : '.  '))];
}
