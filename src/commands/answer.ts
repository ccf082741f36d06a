import { askingSteps, questionOpen, type AskingStep, type Piece } from '../tracker/bench/index.ts';
import { failure, isFailure, type CommandFile, type Failure, type Given } from './line/command.ts';
import { record } from './line/record.ts';
import { findOnBench } from './names/find-piece.ts';
import { findStep } from './names/find-step.ts';
import { findNamed } from './names/match.ts';

const not = 'Not answered';

export const answer: CommandFile = {
  takes: '<piece> [answer...]',
  options: [
    ['--step <name>', 'the step that asks, where it is not the one that waits for an answer'],
    ['--none', 'take the answer away'],
  ],
  help: 'An ANSWER is its short name or its words; "answer PIECE" alone tells the question and its answers.',
  run: (room, given) =>
    record(room, ({ bench }) => {
      const piece = findOnBench(given.word('piece'), bench, not);
      if (isFailure(piece)) return piece;
      const step = asking(given, piece);
      if (isFailure(step)) return step;
      const chosen = given.has('none') ? null : chosenOf(given.sentence('answer'), step);
      if (chosen !== null && isFailure(chosen)) return chosen;
      return {
        intents: [
          {
            do: 'answer',
            piece: piece.id,
            step: step.id,
            answer: chosen === null ? null : chosen.id,
          },
        ],
      };
    }),
};

function asking(given: Given, piece: Piece): AskingStep | Failure {
  const typed = given.maybe('step');
  const nothing = failure('refused', `${not}: no step of ${piece.name} asks anything.`);
  if (typed === null) return questionOpen(piece) ?? nothing;
  const step = findStep(typed, piece, not);
  if (isFailure(step)) return step;
  const all = askingSteps(piece);
  const names = all.map(({ name }) => name);
  return (
    all.find(({ id }) => id === step.id) ??
    failure('refused', `${not}: ${step.name} asks nothing.`, names)
  );
}

function chosenOf(
  typed: string,
  { asks }: AskingStep,
): AskingStep['asks']['answers'][number] | Failure {
  if (typed === '')
    return failure(
      'usage',
      `${not}: ${asks.question} Say one.`,
      asks.answers.map(({ id, says }) => `${id} (${says})`),
    );
  return findNamed(
    typed,
    asks.answers.map((each) => ({
      thing: each,
      called: each.id,
      names: [each.id, each.says],
      name: each.id,
    })),
    { not, what: 'answer', whose: `"${asks.question}"` },
  );
}
