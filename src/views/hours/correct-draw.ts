import { decide, type Intent, type Session } from '../../tracker/bench/index.ts';
import { cut, fitEnd, lineOf, segment, width, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { clock, shopDay } from '../format/index.ts';
import { page } from '../page.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { fieldPage } from '../parts/field-page.ts';
import { heading } from '../parts/heading.ts';
import { keyHints } from '../parts/key-hints.ts';
import { messageLines } from '../parts/message-lines.ts';
import { fieldIn } from '../parts/writing.ts';
import type { FoundPiece } from '../past-pieces/find-piece.ts';
import type { Frame, View } from '../screen.ts';
import type { Correcting } from '../screens.ts';
import { readChanges } from './correct-act.ts';
import { choicesOf, type Choice } from './correct-lists.ts';
import { shownAround } from './hours-layout.ts';
import {
  firstWords,
  sessionDay,
  sessionLength,
  sessionSpan,
  sessionWork,
} from './session-words.ts';
import { takeBackHints } from './take-back.ts';
import { whatIfWords } from './what-if-words.ts';

/** Correcting a session of one piece: which, what, and to what. */
export function drawCorrecting(correcting: Correcting, found: FoundPiece, view: View): Frame {
  const { bench, piece } = found;
  const { shop } = view.snapshot;
  const session = bench.sessions.find(({ id }) => id === correcting.session);
  if (session !== undefined && (correcting.asks === 'start' || correcting.asks === 'end'))
    return drawTime(correcting, session, found, view);
  const choices = choicesOf(correcting, bench, piece, view.now, shop);
  return drawChoices(correcting, session, choices, found, view);
}

function drawTime(
  correcting: Correcting,
  session: Session,
  { piece }: FoundPiece,
  view: View,
): Frame {
  const { shop } = view.snapshot;
  const asks = correcting.asks === 'start' ? 'start' : 'end';
  const read = readChanges(correcting.text, asks, session, view);
  const effect = read.ok ? effectWords({ session: session.id, ...read.changes }, view) : null;
  const current = asks === 'start' ? session.start : session.end;
  return fieldPage(
    {
      title: `${asks} of ${sessionWork(session, piece)}`,
      above: [
        lineOf(`${sessionDay(session, shop)}, ${sessionSpan(session, shop)}`),
        ...firstLine(session, view),
        lineOf(''),
      ],
      label: asks,
      field: fieldIn(correcting.text, correcting),
      hints: [
        `${current === null ? 'It is in hand still.' : `It is ${clock(current, shop)} now.`} Write 12:00, or -15 or +10 for minutes earlier or later.`,
        ...(effect === null ? [] : [`With that ${effect}.`]),
        'What was first recorded stays on the job card.',
      ],
      keys: ['Enter: so it was', 'Esc: back'],
    },
    view,
  );
}

/** What a correction would do to expected minutes; null where it would be refused. */
function effectWords(changes: Omit<Correction, 'do'>, view: View): string | null {
  const { bench, sense, shop } = view.snapshot;
  const intent: Correction = { do: 'correct session', ...changes };
  const today = shopDay(view.now, shop.zone);
  const context = { now: view.now, group: '', hands: 1, air: null, sense, today };
  return decide(bench, intent, context).ok ? whatIfWords(bench, intent) : null;
}

type Correction = Extract<Intent, { do: 'correct session' }>;

function drawChoices(
  correcting: Correcting,
  session: Session | undefined,
  choices: readonly Choice[],
  { piece }: FoundPiece,
  view: View,
): Frame {
  const { columns, theme } = view;
  const [first = '', ...rest] = wrapWords(titleOf(correcting, session, piece, view), columns);
  const [title = lineOf(''), loud = lineOf('')] = heading(lineOf(first, 'strong'), view);
  const head = [
    title,
    ...rest.map((text) => lineOf(text, 'strong')),
    ...(session === undefined ? [] : firstLine(session, view)),
    loud,
  ];
  const foot = [
    ...messageLines(view),
    ...keyHints(
      [
        '1-9 or Enter: that one',
        ...takeBackHints(view.snapshot.bench, columns, theme.glyphs, ': '),
        'Esc: back',
      ],
      columns,
    ),
  ];
  const hints =
    correcting.asks === 'session'
      ? wrapWords('What was first recorded stays on the job card.', columns)
      : [];
  const lengths = choices.map(({ label }) => width(label));
  const labelCells = Math.min(Math.max(0, ...lengths), columns - 8);
  const besideLabel = columns - labelCells - 6;
  const twoLines = choices.some(
    ({ more }) => more !== undefined && (columns < 80 || width(more) > besideLabel),
  );
  const height = twoLines ? 2 : 1;
  const left = view.rows - head.length - foot.length - hints.length - 1;
  const room = Math.max(1, Math.floor(left / height));
  const from = shownAround(correcting.at, choices.length, room);
  const list = choices.slice(from, from + room).flatMap((choice, index): readonly Line[] => {
    const place = from + index;
    const isMarked = place === correcting.at;
    const number = place < 9 ? String(place + 1) : ' ';
    const head = `${isMarked ? '>' : ' '} ${number} `;
    const role = isMarked ? 'strong' : 'text';
    const more = choice.more ?? '';
    if (twoLines)
      return [
        lineOf(head + cut(choice.label, columns - 4, theme.glyphs), role),
        lineOf(`    ${cut(more, columns - 4, theme.glyphs)}`, 'quiet'),
      ];
    return [
      [
        segment(head + fitEnd(choice.label, labelCells, theme.glyphs), role),
        segment(more === '' ? '' : `  ${more}`, 'quiet'),
      ],
    ];
  });
  const none =
    choices.length === 0
      ? wrapWords('No session was recorded on this piece.', columns).map((text) => lineOf(text))
      : [];
  const below = [lineOf(''), ...hints.map((text) => lineOf(text, 'quiet'))];
  return { lines: page([...head, ...list, ...none, ...below], foot, view) };
}

function titleOf(
  { asks, piece: other }: Correcting,
  session: Session | undefined,
  piece: FoundPiece['piece'],
  view: View,
): string {
  if (asks === 'session' || session === undefined)
    return `correct a session: ${calledPiece(piece)}`;
  const { bench } = view.snapshot;
  const what = which(session, piece, view);
  if (asks === 'piece') return `${what}: which piece was it?`;
  const moved = bench.pieces.get(other ?? '');
  if (asks === 'step' && moved !== undefined)
    return `${what}: which step of ${calledPiece(moved)}?`;
  return `${what}: what was it?`;
}

const which = (session: Session, piece: FoundPiece['piece'], { snapshot, now }: View): string =>
  [
    sessionDay(session, snapshot.shop),
    sessionWork(session, piece),
    sessionSpan(session, snapshot.shop),
    sessionLength(session, now),
  ].join(', ');

const firstLine = (session: Session, { snapshot, columns }: View): readonly Line[] => {
  const words = firstWords(session, snapshot.shop);
  return words === '' ? [] : wrapWords(words, columns).map((text) => lineOf(text, 'quiet'));
};
