import type { OvernightQuestion } from '../../tracker/bench/index.ts';
import { questionsFor } from '../../tracker/overnight/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { fitEnd, lineOf, segment, type Line } from '../drawing/index.ts';
import { wrapWords } from '../drawing/wrap.ts';
import { clock, day, whenInWords } from '../format/index.ts';
import { drawField } from '../parts/draw-field.ts';
import { heading } from '../parts/heading.ts';
import { keyHints } from '../parts/key-hints.ts';
import { messageLines } from '../parts/message-lines.ts';
import { fieldIn } from '../parts/writing.ts';
import type { ScrolledPage } from '../page.ts';
import type { View } from '../screen.ts';
import type { ShutState } from '../screens.ts';
import { usualBackAt } from './back-at.ts';
import { overnightLines } from './overnight-lines.ts';
import { answerSigns, questionWords, ragCaution } from './question-words.ts';

export const backAtOf = (state: ShutState, { now, snapshot }: View): Instant =>
  state.backAt ?? usualBackAt(now, snapshot.shop.zone);

export const questionsOf = ({ now, snapshot }: View): readonly OvernightQuestion[] =>
  questionsFor(snapshot.bench, now, snapshot.sense);

/** Below either of these each answered question is told in one word. */
const wide = 60;
const high = 22;
/** Below this the title keeps to one row. */
const low = 14;

/** What falls due overnight, scrolling where there is much; under it the questions and the caution, which stay. */
export function shutPage(state: ShutState, view: View): ScrolledPage {
  const { columns, rows, now, snapshot } = view;
  const { shop } = snapshot;
  const backAt = backAtOf(state, view);
  const isSmall = columns < wide || rows < high;
  const gap = isSmall ? [] : [lineOf('')];
  const title = `shut up shop   ${day(now, shop)} ${clock(now, shop)}, back ${whenInWords(backAt, now, shop)}`;
  const [first = '', ...rest] = rows < low ? [title] : wrapWords(title, columns);
  const [head = lineOf(''), loud = lineOf('')] = heading(lineOf(first, 'strong'), view);
  const asked = questionsOf(view);
  return {
    head: [
      head,
      ...rest.map((line) => lineOf(line, 'strong')),
      ...(loud[0]?.role === 'loud' ? [loud] : gap),
    ],
    body: overnightLines(view, backAt),
    foot: [
      ...gap,
      ...(isSmall
        ? shortQuestions(asked, state, view)
        : asked.map((each, index) => question(each, index, state, view))),
      ...gap,
      ...wrapWords(ragCaution, columns).map((line) => lineOf(line, 'strong')),
      ...fieldLines(state, view),
      ...messageLines(view),
      ...keyHints(hintsFor(state, asked, isSmall), columns, isSmall ? 2 : 3),
    ],
    from: state.from ?? 0,
  };
}

const answerSign = ({ answers }: ShutState, asked: OvernightQuestion): string => {
  const answer = answers[asked];
  return answer === undefined ? ' ' : answerSigns[answer];
};

/** `> y  rags      laid flat outdoors ...` */
function question(asked: OvernightQuestion, index: number, state: ShutState, view: View): Line {
  const isAsked = index === state.at;
  const isOpen = state.answers[asked] === 'no';
  const role = isAsked || isOpen ? 'strong' : 'text';
  const words = `${fitEnd(asked, 10)}${questionWords(asked, view.snapshot.shop)}`;
  return [segment(`${isAsked ? '>' : ' '} ${answerSign(state, asked)}  ${words}`, role)];
}

/** The question that is asked, in full; the others as `rags y  cans -` in one line. */
function shortQuestions(
  asked: readonly OvernightQuestion[],
  state: ShutState,
  { columns, snapshot }: View,
): readonly Line[] {
  const others = asked
    .filter((_, index) => index !== state.at)
    .map((each) => `${each} ${answerSign(state, each).replace(' ', '.')}`);
  const now = asked[state.at];
  return [
    ...(others.length === 0 ? [] : [lineOf(others.join('  '), 'quiet')]),
    ...(now === undefined
      ? []
      : wrapWords(`> ${now}: ${questionWords(now, snapshot.shop)}?`, columns).map((line) =>
          lineOf(line, 'strong'),
        )),
  ];
}

function fieldLines(state: ShutState, { columns, theme }: View): readonly Line[] {
  if (state.text === undefined) return [];
  return [drawField('back at', fieldIn(state.text, state), columns, theme).line];
}

function hintsFor(
  state: ShutState,
  asked: readonly OvernightQuestion[],
  isSmall: boolean,
): readonly string[] {
  if (state.text !== undefined) return ['Enter: till then', 'Esc: as it was'];
  const isAsking = state.at < asked.length;
  if (isSmall)
    return [...(isAsking ? ['y n or -'] : []), 'Enter: note it', 'b: back at', 'Esc: bench'];
  return [
    ...(isAsking ? ['y n or -', 'Enter: leave it at that'] : ['Enter: shut up shop']),
    'b: back at another time',
    'Esc: bench',
  ];
}
