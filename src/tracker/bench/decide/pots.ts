import { minute, type Milliseconds } from '../../time/index.ts';
import type { Product } from '../../trade/schedule.ts';
import type { NewBenchFact } from '../facts.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench, Pot } from '../bench.ts';
import { isMixed, openPots, potCalled, potRules } from '../pot-window.ts';
import { factAt, instantOf } from './context.ts';

type Asked<Do extends Intent['do']> = Extract<Intent, { do: Do }>;

/** One press moves the mixing by this much: a pot's life is counted in minutes. */
const potShift: Milliseconds = minute;

/** Mixes a pot in the shop, for no step yet. Refused for a product that is used as it is. */
export function mixPot(bench: Bench, intent: Asked<'mix pot'>, context: IntentContext): Outcome {
  const { product } = intent;
  if (!isMixed(product))
    return refuse(`Not mixed: ${product.name} is used as it is; it has no pot life.`);
  const pot = newPot(bench, product, context);
  return accept([pot.fact], `pot ${pot.letter} mixed, ${product.productClass}`);
}

/** A new pot with the lowest free letter. Of the product only what the pot itself needs is kept. */
export function newPot(
  bench: Bench,
  product: Product,
  context: IntentContext,
): { readonly id: string; readonly letter: string; readonly fact: NewBenchFact } {
  const id = `${context.group}-pot`;
  const letter = freeLetter(openPots(bench));
  const { byWood: _, ...rest } = product;
  const kept: Product = { ...rest, windows: potRules(product), cautions: [] };
  return {
    id,
    letter,
    fact: factAt(context, { kind: 'pot-mixed', body: { pot: id, letter, product: kept } }),
  };
}

/** A, B, ... Z, then AA: no shop has so many, but nothing may fail. */
function freeLetter(open: readonly Pot[]): string {
  const taken = new Set(open.map(({ letter }) => letter));
  for (let count = 0; ; count += 1) {
    const letter = String.fromCharCode(65 + (count % 26)).repeat(1 + Math.floor(count / 26));
    if (!taken.has(letter)) return letter;
  }
}

/** Ends a pot; refused where it is washed out, or wasn't mixed by then. */
export function washOutPot(
  bench: Bench,
  intent: Asked<'wash out pot'>,
  context: IntentContext,
): Outcome {
  const pot = bench.pots.find(({ id }) => id === intent.pot);
  if (pot === undefined) return refuse(`Not washed out: there is no pot "${intent.pot}".`);
  if (pot.washedAt !== null)
    return refuse(`Not washed out: ${potCalled(pot)}, is washed out already.`);
  if (instantOf(context) < pot.mixedAt && context.at !== undefined)
    return refuse(`Not washed out: ${potCalled(pot)}, was mixed after that. Give a later time.`);
  return accept(
    [factAt(context, { kind: 'pot-washed', body: { pot: pot.id } })],
    `${potCalled(pot)}, washed out`,
  );
}

/** Moves the mixing of an open pot, never past now. */
export function movePot(bench: Bench, intent: Asked<'move pot'>, context: IntentContext): Outcome {
  const pot = openPots(bench).find(({ id }) => id === intent.pot);
  if (pot === undefined) return refuse(`Not moved: there is no open pot "${intent.pot}".`);
  if (intent.ms !== undefined && !(intent.ms > 0))
    return refuse('Not moved: give a length of time, such as 5 min.');
  const shift = intent.ms ?? potShift;
  const to = Math.min(context.now, pot.mixedAt + (intent.earlier ? -shift : shift));
  if (to === pot.mixedAt || (!intent.earlier && to < pot.mixedAt))
    return refuse('Not moved: later than this would be past now.');
  return accept(
    [{ kind: 'stamp-moved', body: { fact: pot.fact, to } }],
    `${potCalled(pot)}, mixed ${Math.round(Math.abs(to - pot.mixedAt) / minute)} min ${intent.earlier ? 'earlier' : 'later'}`,
  );
}
