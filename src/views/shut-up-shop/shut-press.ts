import { overnightQuestions, type OvernightAnswer } from '../../tracker/bench/index.ts';
import type { Press } from '../keys/press.ts';
import { scrolledBy } from '../page.ts';
import { messageOf } from '../parts/message-lines.ts';
import { editField } from '../parts/text-field.ts';
import { fieldIn, withCursor } from '../parts/writing.ts';
import type { BenchPort } from '../port.ts';
import { refused, said, type Message, type Step, type View } from '../screen.ts';
import type { ShutState } from '../screens.ts';
import { readBackAt } from './back-at.ts';
import { questionWords } from './question-words.ts';
import { backAtOf, questionsOf, shutPage } from './shut-draw.ts';

/** `+` and `-` are on a bare numeric pad. */
const answerKeys: Readonly<Record<string, OvernightAnswer>> = {
  y: 'yes',
  '+': 'yes',
  n: 'no',
  '-': 'does not apply',
};

export function pressShut(
  state: ShutState,
  press: Press,
  view: View,
  port: BenchPort,
): Step<ShutState> {
  if (state.text !== undefined) return pressField(state, state.text, press, view);
  const asked = questionsOf(view);
  const answer = answerKeys[press.name];
  const question = asked[state.at];
  if (answer !== undefined) {
    if (question === undefined) return { state };
    const answers = { ...state.answers, [question]: answer };
    return { state: { ...state, answers, at: state.at + 1 } };
  }
  switch (press.name) {
    case 'escape':
      return { back: true };
    case 'enter':
      return shut(state, view, port);
    case 'backspace':
    case 'left':
      return { state: { ...state, at: Math.max(0, state.at - 1) } };
    case 'right':
      return { state: { ...state, at: Math.min(asked.length, state.at + 1) } };
    case 'b':
      return { state: { ...state, text: '' } };
    default: {
      const from = scrolledBy(press, shutPage(state, view), view);
      return { state: from === null ? state : { ...state, from } };
    }
  }
}

/** Notes the answers. What was not asked does not apply; what was not answered stays unanswered. */
function shut(state: ShutState, view: View, port: BenchPort): Step<ShutState> {
  const asked = questionsOf(view);
  const answers = Object.fromEntries(
    overnightQuestions.flatMap((question) => {
      const answer = asked.includes(question) ? state.answers[question] : 'does not apply';
      return answer === undefined ? [] : [[question, answer]];
    }),
  );
  const reply = port.act({ do: 'shut up shop', answers, backAt: backAtOf(state, view) });
  if (!reply.ok) return { state, message: messageOf(reply) };
  return { back: true, message: afterwards(state, view) };
}

function afterwards({ answers }: ShutState, view: View): Message {
  const asked = questionsOf(view);
  if (asked.includes('rags') && answers.rags !== 'yes' && answers.rags !== 'does not apply')
    return said(`Noted. Rags still to do: ${questionWords('rags', view.snapshot.shop)}.`);
  const open = asked.filter((question) => answers[question] === 'no');
  if (open.length > 0) return said(`Noted. Still to do: ${open.join(', ')}.`);
  return said('Shop shut. Windows go on, and ping while recoat stays open.');
}

function pressField(
  state: ShutState,
  text: string,
  press: Press,
  { now, snapshot }: View,
): Step<ShutState> {
  switch (press.name) {
    case 'escape':
      return { state: closed(state) };
    case 'enter': {
      const read = readBackAt(text, now, snapshot.shop.zone);
      return read.ok
        ? { state: { ...closed(state), backAt: read.at } }
        : { state, message: refused(read.says) };
    }
    default: {
      const edited = editField(fieldIn(text, state), press);
      return {
        state: edited === null ? state : withCursor({ ...state, text: edited.text }, edited),
      };
    }
  }
}

function closed(state: ShutState): ShutState {
  const { text: _text, cursor: _cursor, ...rest } = state;
  return rest;
}
