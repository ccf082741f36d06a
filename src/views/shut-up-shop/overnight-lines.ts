import { inHand, openPots, potCalled, spoilsRunning } from '../../tracker/bench/index.ts';
import { beforeYouGo, duesTill, type Saving } from '../../tracker/overnight/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { closesAt, stateAt } from '../../tracker/windows/index.ts';
import { lineOf, type Line, type Role } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { callWords, clock, rangeInWords, whenInWords } from '../format/index.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { keeperPings, whoPings } from '../parts/who-pings.ts';
import { potStands } from '../pots/pot-stands.ts';
import type { View } from '../screen.ts';
import { dueLines } from './due-lines.ts';

/** What nobody will see to until `backAt`: what falls due, what spoils, what is in hand, and what is worth doing before. */
export function overnightLines(view: View, backAt: Instant): readonly Line[] {
  const { now, snapshot, columns } = view;
  const { bench, sense, shop } = snapshot;
  const dues = duesTill(bench, now, backAt, sense);
  const back = whenInWords(backAt, now, shop);
  return [
    ...(dues.length === 0
      ? wrapped(`Nothing falls due till ${back}.`, columns)
      : [lineOf(`falls due till ${back}`, 'quiet'), ...dueLines(dues, view)]),
    ...spoiling(view),
    ...openPotLines(view),
    ...leftInHand(view),
    ...(dues.length === 0
      ? []
      : wrapped(
          keeperPings(view) ? whoPings(view) : `${whoPings(view)}; they are told when it opens`,
          columns,
          'quiet',
        )),
    ...beforeYouGo(bench, now, backAt, sense).flatMap((saving, index) =>
      adviceLines(saving, index === 0, view),
    ),
  ];
}

const wrapped = (text: string, columns: number, role: Role = 'text'): readonly Line[] =>
  wrapWords(text, columns).map((line) => lineOf(line, role));

/** What can still spoil, and by when it wants hands. */
export function spoiling({ now, snapshot, columns }: View): readonly Line[] {
  const { bench, sense, shop } = snapshot;
  const windows = spoilsRunning(bench, now, sense);
  if (windows.length === 0) return [lineOf('Nothing that spoils is running.')];
  return windows.flatMap((window) => {
    const piece = bench.pieces.get(window.subject.pieceId);
    const pot = bench.pots.find(({ id }) => id === window.subject.stepId);
    const who =
      piece === undefined ? (pot === undefined ? '' : potCalled(pot)) : calledPiece(piece);
    const name = who === '' ? '' : `${who}: `;
    const closing = closesAt(window, now);
    const what =
      closing === null || stateAt(window, now) === 'late'
        ? callWords(window, now, shop)
        : `${window.rule.verb} by ${whenInWords(closing.at, now, shop)}`;
    return wrapped(`spoils  ${name}${what}. See to it before you go.`, columns, 'spoils');
  });
}

/** What stands mixed on the bench: nobody uses it up before morning. */
export const openPotLines = (view: View): readonly Line[] =>
  openPots(view.snapshot.bench).flatMap((pot) =>
    wrapped(
      `open    ${potCalled(pot)}: ${potStands(pot, view)}. Wash it out.`,
      view.columns,
      'strong',
    ),
  );

/** Minutes that would run all night. */
export function leftInHand({ snapshot, columns }: View): readonly Line[] {
  const { bench, shop } = snapshot;
  return inHand(bench).flatMap(({ targets, start }) => {
    const names = [...new Set(targets.map(({ piece }) => bench.pieces.get(piece)))]
      .flatMap((piece) => (piece === undefined ? [] : calledPiece(piece)))
      .join(' and ');
    const text = `In hand since ${clock(start, shop)}: ${names}. Its minutes run on till it is put down.`;
    return wrapped(text, columns, 'strong');
  });
}

const adviceHead = 'before you go  ';

/** `before you go  2 Plant stand: coat 2 takes 15 to 22 min; else, from 18:30, scuff 320 first` */
function adviceLines(
  { piece, window, step, minutes, by, saves }: Saving,
  isFirst: boolean,
  { now, snapshot, columns }: View,
): readonly Line[] {
  const till = whenInWords(by, now, snapshot.shop);
  const what =
    step === null || minutes === null
      ? window.rule.verb
      : `${step.name} takes ${rangeInWords(minutes.low, minutes.high)} min`;
  const loss = saves.says ?? (saves.meaning === 'keep off' ? 'keep off' : 'it costs extra work');
  const text = `${calledPiece(piece)}: ${what}, begin by ${till}; else ${loss}`;
  const indent = columns < 60 ? 2 : adviceHead.length;
  const lines = wrapWords(text, columns - indent).map((line) => ' '.repeat(indent) + line);
  if (columns < 60)
    return [
      ...(isFirst ? [lineOf(adviceHead.trim(), 'strong')] : []),
      ...lines.map((line) => lineOf(line)),
    ];
  return lines.map((line, index) =>
    index === 0 && isFirst
      ? [
          { text: adviceHead, role: 'strong' as const },
          { text: line.slice(indent), role: 'text' as const },
        ]
      : lineOf(line),
  );
}
