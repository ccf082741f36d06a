import { nothingKnown, termsOf, unknown, whyNotFor, type KnownOfPiece } from './condition.ts';
import type { Step } from './schedule.ts';

/** One way through a finishing schedule: the steps that are in, for a piece of which that much is known at its end. */
export type Branch = { readonly known: KnownOfPiece; readonly steps: readonly Step[] };

/** With more ways than this open, further questions stay unanswered: a file must not hold up the program. */
const mostBranches = 2000;

/**
 * Every way that a piece can go through a finishing schedule. What is not known of it is tried: each wood, the years that
 * make a difference, and each answer to each question that is reached, also none. A step that is left out asks nothing.
 * Woods, years and answers that come to the same are tried once. The first branch is that of a piece of which nothing
 * more will be told.
 */
export function branchesOf(
  steps: readonly Step[],
  told: KnownOfPiece = nothingKnown,
): readonly Branch[] {
  let open: readonly Branch[] = beginnings(steps, told).map((known) => ({ known, steps: [] }));
  for (const [index, step] of steps.entries()) {
    const answers = answersThatMatter(step, steps.slice(index + 1));
    const asks = open.length * answers.length <= mostBranches;
    open = open.flatMap((branch): readonly Branch[] => {
      if (whyNotFor(step, branch.known) !== null) return [branch];
      const went = [...branch.steps, step];
      if (!asks || branch.known.answers[step.id] !== undefined) return [{ ...branch, steps: went }];
      return answers.map((answer) => ({
        known: answered(branch.known, step, answer),
        steps: went,
      }));
    });
  }
  return open;
}

function beginnings(steps: readonly Step[], told: KnownOfPiece): readonly KnownOfPiece[] {
  const terms = steps.flatMap(({ onlyIf }) => (onlyIf === undefined ? [] : termsOf(onlyIf)));
  // A year that nobody knows counts as before all of them, so the first year on the other side is all there is to try.
  const years = terms.flatMap(({ madeBefore = [], madeSince = [] }) =>
    [madeBefore, madeSince].flat(),
  );
  const anyYear = told.yearMade === null ? [null, ...new Set(years)] : [told.yearMade];
  const byWood = told.wood === null && terms.some(({ wood }) => wood !== undefined);
  const anyWood = byWood ? ([null, 'soft', 'hard'] as const) : [told.wood];
  return anyYear.flatMap((yearMade) => anyWood.map((wood) => ({ ...told, yearMade, wood })));
}

/** No answer, and one of each kind of answer that later steps tell apart. */
function answersThatMatter({ id, asks }: Step, later: readonly Step[]): readonly string[] {
  const answers = [unknown, ...(asks?.answers ?? []).map((answer) => answer.id)];
  const effects = answers.map((answer) => effectOf(id, answer, later));
  return answers.filter((_, index) => effects.indexOf(effects[index] ?? '') === index);
}

/** What an answer does to the steps after it, to be compared with what another does. */
const effectOf = (id: string, answer: string, later: readonly Step[]): string =>
  JSON.stringify(
    later.map(({ onlyIf, minutesTimes }) => [
      onlyIf === undefined
        ? []
        : termsOf(onlyIf).map(({ answers }) => answers?.[id]?.includes(answer) ?? null),
      minutesTimes?.[id]?.[answer] ?? 1,
    ]),
  );

const answered = (known: KnownOfPiece, { id }: Step, answer: string): KnownOfPiece =>
  answer === unknown ? known : { ...known, answers: { ...known.answers, [id]: answer } };
