import type { Intent, IntentContext } from '../intents.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import { factAt } from './context.ts';

type Asked<Do extends Intent['do']> = Extract<Intent, { do: Do }>;

/** No work takes longer in a day than the day. */
export const mostMinutesOfRow = 1440;

/** Takes in hours that were kept elsewhere, all of a file together; the same ones only once. */
export function importHours(
  bench: Bench,
  { file, fingerprint, rows }: Asked<'import hours'>,
  context: IntentContext,
): Outcome {
  const before = bench.imports?.find((each) => each.fingerprint === fingerprint);
  if (before !== undefined)
    return refuse(
      `Not taken: the same hours are in already, from ${before.file}. To take those out: recoat import-hours --take-out`,
    );
  if (rows.length === 0) return refuse(`Not taken: ${file} has no line with hours.`);
  const isMinutes = (value: number): boolean => value > 0 && value <= mostMinutesOfRow;
  const wrong = rows.find(
    ({ at, minutes, estimate }) =>
      !(at <= context.now) || !isMinutes(minutes) || !isMinutes(estimate),
  );
  if (wrong !== undefined)
    return refuse(
      `Not taken: ${wrong.piece}, ${wrong.stepClass} has no minutes that can be. Between 0 and ${mostMinutesOfRow}, of a day that has been.`,
    );
  const body = { import: `${context.group}-i`, file, fingerprint, rows };
  return accept(
    [factAt(context, { kind: 'hours-imported', body })],
    `${rows.length} ${rows.length === 1 ? 'line' : 'lines'} of hours taken from ${file}`,
  );
}

/** Takes one import out again, as a whole. Its facts stay on record. */
export function takeOutImport(
  bench: Bench,
  { import: id }: Asked<'take out import'>,
  context: IntentContext,
): Outcome {
  const found = bench.imports?.find((each) => each.id === id);
  if (found === undefined) return refuse(`Not taken out: there is no import "${id}".`);
  return accept(
    [factAt(context, { kind: 'import-taken-out', body: { import: id } })],
    `hours from ${found.file} taken out`,
  );
}
