import { failure, isFailure, type CommandFile, type Failure, type Given } from './line/command.ts';
import type { Look } from './line/look.ts';
import { record, type Wish } from './line/record.ts';
import { findOnBench } from './names/find-piece.ts';
import { findStep } from './names/find-step.ts';
import { leavingGiven, putDownOption } from './names/leaving.ts';
import { targetGiven, targetOptions } from './names/target.ts';
import { whenGiven, whenOptions } from './read/when.ts';

export const pickUp: CommandFile = {
  takes: '<piece> [more...]',
  options: [
    ['--step <name>', 'its name or place in the list, where it is not the one that is next'],
    ['--other', 'work that belongs to no step'],
    ['--with <piece...>', 'the same as more pieces after the first'],
    putDownOption,
    [
      '--anyway <reason>',
      'although its trial was not found ready; the reason stands on the job card',
    ],
    ...targetOptions,
  ],
  help: 'With more pieces it is one go: setup once, the minutes shared by size, each piece stamped as it is done.',
  run: (room, given) => record(room, (look) => wishedPickUp(given, look, 'Not picked up')),
};

function wishedPickUp(given: Given, look: Look, not: string): Wish | Failure {
  const target = targetGiven(given, look, not);
  if (isFailure(target)) return target;
  const step = stepGiven(given, target.piece, not);
  if (isFailure(step)) return step;
  const others: { piece: string; part: null }[] = [];
  for (const typed of [...given.list('more'), ...given.list('with')]) {
    const other = findOnBench(typed, look.bench, not);
    if (isFailure(other)) return other;
    others.push({ piece: other.id, part: null });
  }
  const leaving = leavingGiven(given, look, not);
  if (isFailure(leaving)) return leaving;
  const first = { piece: target.piece.id, part: target.part, ...step };
  const reason = given.maybe('anyway');
  const anyway = reason === null ? {} : { anyway: reason };
  return {
    at: target.at,
    intents: [{ do: 'pick up', targets: [first, ...others], ...leaving, ...anyway }],
  };
}

/** The step that is worked; nothing where it is the piece's next. */
function stepGiven(
  given: Given,
  piece: Parameters<typeof findStep>[1],
  not: string,
): { readonly step?: string | null } | Failure {
  const typed = given.maybe('step');
  if (typed !== null && given.has('other'))
    return failure('usage', `${not}: give --step or --other, not both.`);
  if (given.has('other')) return { step: null };
  if (typed === null) return {};
  const step = findStep(typed, piece, not);
  return isFailure(step) ? step : { step: step.id };
}

export const takeAlong: CommandFile = {
  takes: '<piece>',
  options: targetOptions,
  help: 'The step is the like one of that piece: the next of the same kind. Once more takes it out again.',
  run: (room, given) =>
    record(room, (look) => {
      const target = targetGiven(given, look, 'Not taken along');
      if (isFailure(target)) return target;
      const { piece, part, at } = target;
      return { at, intents: [{ do: 'take along', piece: piece.id, part }] };
    }),
};

export const putDown: CommandFile = {
  takes: '[piece]',
  options: whenOptions,
  run: (room, given) => record(room, (look) => wishedPutDown(given, look, 'Not put down')),
};

function wishedPutDown(given: Given, look: Look, not: string): Wish | Failure {
  const typed = given.maybe('piece');
  const piece = typed === null ? null : findOnBench(typed, look.bench, not);
  if (isFailure(piece)) return piece;
  const when = whenGiven(given, not, look);
  if (isFailure(when)) return when;
  return {
    ...when,
    intents: [piece === null ? { do: 'put down' } : { do: 'put down', piece: piece.id }],
  };
}
