import type { Instant } from '../time/index.ts';
import type { Product } from '../trade/schedule.ts';
import type { Happenings } from '../windows/edges.ts';
import { stateAt, stretchAt, workOutWindow } from '../windows/evaluate.ts';
import type { EdgeSense, Window, WindowRule } from '../windows/model.ts';
import type { Bench, OddTimer, Pot } from './bench.ts';

/** What a mixed product starts on the bench, not on a piece: how long it lasts, when it is to be washed out. */
export const potRules = ({ windows }: Pick<Product, 'windows'>): readonly WindowRule[] =>
  windows.filter((rule) => rule.kind === 'pot' && rule.begins.events.includes('mixed'));

/** A product that is mixed before use and doesn't last. */
export const isMixed = (product: Pick<Product, 'windows'> | undefined): boolean =>
  product !== undefined && potRules(product).length > 0;

/** Pots that were not washed out yet, first mixed first. */
export const openPots = ({ pots }: Pick<Bench, 'pots'>): readonly Pot[] =>
  pots.filter(({ washedAt }) => washedAt === null);

/** The open pot that a stroke of a product takes from: the one mixed last. */
export const openPotOf = (bench: Pick<Bench, 'pots'>, product: string | undefined): Pot | null =>
  openPots(bench).findLast((pot) => pot.product.id === product) ?? null;

/** `pot B, conversion varnish` */
export const potCalled = ({ letter, product }: Pot): string =>
  `pot ${letter}, ${product.productClass}`;

/** What a row without a piece is called. */
export const labelOf = (row: {
  readonly timer: OddTimer | null;
  readonly pot: Pot | null;
}): string => (row.pot === null ? (row.timer?.label ?? '') : potCalled(row.pot));

/** The windows of a pot, worked out like any others. */
export function windowsOfPot(pot: Pot, sense: EdgeSense): readonly Window[] {
  const { id, mixedAt, washedAt, fact } = pot;
  const happenings: Happenings = {
    stamps: [{ event: 'mixed', agent: null, at: mixedAt, fact }],
    checks: [],
    assumedStart: null,
  };
  const subject = { pieceId: '', stepId: id, partId: null, pass: 1, section: null };
  return potRules(pot.product).flatMap((rule) => {
    const key = `pot/${id}/${rule.id}`;
    return workOutWindow({ key, rule, subject }, happenings, sense, washedAt) ?? [];
  });
}

/** Whether what is in it will not do any more. */
export const isPastItsLife = (pot: Pot, now: Instant, sense: EdgeSense): boolean =>
  windowsOfPot(pot, sense).some((window) => stateAt(window, now) === 'late');

/**
 * What is wrong with taking from a pot at an instant, beginning with the pot; null where nothing is.
 * A pot that has still to stand, and one past its life, are told, never refused: the stroke is on.
 */
export function potTrouble(pot: Pot, at: Instant, sense: EdgeSense): string | null {
  for (const window of windowsOfPot(pot, sense)) {
    const state = stateAt(window, at);
    const { says, begins, ends } = stretchAt(window, at);
    const minutes = (ms: number): string => `${Math.max(1, Math.round(ms / 60_000))} min`;
    if (state === 'late')
      return `${potCalled(pot)}, is past its life by ${minutes(at - begins)}${says === undefined ? '' : `: ${says}`}`;
    if (state === 'before' && ends !== null)
      return `${potCalled(pot)}, has still to stand ${minutes(ends - at)} before use`;
  }
  return null;
}
