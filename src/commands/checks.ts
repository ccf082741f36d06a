import { plainStep, type Finding, type Intent } from '../tracker/bench/index.ts';
import { remedySteps, troublesTried } from '../tracker/trade/index.ts';
import { triedOn } from '../views/trouble/tried-window.ts';
import { failure, isFailure, type CommandFile, type Failure } from './line/command.ts';
import type { Look } from './line/look.ts';
import { record } from './line/record.ts';
import { findNamed } from './names/match.ts';
import { targetGiven, targetOptions, type WorkTarget } from './names/target.ts';
import { textView } from './text/text-view.ts';

const checking = (finding: Exclude<Finding, 'trouble'>): CommandFile => ({
  takes: '<piece>',
  options: targetOptions,
  help: 'It is about the window that the bench shows for the piece.',
  run: (room, given) =>
    record(room, (look) => {
      const target = targetGiven(given, look, 'Not noted');
      if (isFailure(target)) return target;
      const { piece, part, at } = target;
      return { at, intents: [{ do: 'check', piece: piece.id, part, finding }] };
    }),
});

export const ready = checking('ready');
export const notYet = checking('not yet');

export const trouble: CommandFile = {
  takes: '<piece> [shown...]',
  options: [
    ['--put-in', 'put in the steps that usually help; what it showed must be one of a list'],
    ...targetOptions,
  ],
  help: 'What it showed, in your words. With --put-in it is one of a list: "trouble PIECE --put-in" alone shows it.',
  run: async (room, given) => {
    const helps: string[] = [];
    const recorded = await record(room, (look) => {
      const target = targetGiven(given, look, 'Not noted');
      if (isFailure(target)) return target;
      const { piece, part, at } = target;
      const shown = given.sentence('shown');
      const noted = {
        do: 'check',
        piece: piece.id,
        part,
        finding: 'trouble',
        ...(shown === '' ? {} : { shown }),
      } as const;
      const intent = withRemedies(noted, shown, target, look);
      if (given.has('put-in')) return isFailure(intent) ? intent : { at, intents: [intent] };
      const remedies = isFailure(intent) ? [] : (intent.remedies ?? []);
      helps.push(...remedies.map(({ name }) => name));
      return { at, intents: [noted] };
    });
    if (helps.length > 0 && !isFailure(recorded))
      room.tell(
        `What usually helps: ${helps.join(', then ')}. With --put-in it comes into the steps.`,
      );
    return recorded;
  },
};

type Check = Extract<Intent, { do: 'check' }>;

/** The check with the steps that usually help against what was shown. */
function withRemedies(
  noted: Check,
  shown: string,
  { piece, part }: WorkTarget,
  look: Look,
): Check | Failure {
  const tried = triedOn({ is: 'trouble', piece: piece.id, part }, textView(look));
  // Nothing to try: the check itself is refused, in the words that the keys get too.
  if (tried === null) return noted;
  const troubles = troublesTried(tried.window.rule, tried.step.stepClass);
  if (shown === '')
    return failure(
      'usage',
      'Not noted: say what it showed.',
      troubles.map(({ name }) => name),
    );
  const found = findNamed(
    shown,
    troubles.map((each) => ({
      thing: each,
      called: each.name,
      names: [each.name, each.id],
      name: each.name,
    })),
    { not: 'Not noted', what: 'trouble' },
  );
  if (isFailure(found)) return found;
  const remedies = remedySteps(found, plainStep(tried.step));
  return {
    ...noted,
    window: tried.window.key,
    shown: found.name,
    ...(remedies.length === 0 ? {} : { remedies }),
  };
}
