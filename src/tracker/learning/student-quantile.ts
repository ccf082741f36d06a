import { normalQuantile } from '../estimate/normal-quantile.ts';

/**
 * The value below which a share `p` (0..1) of Student's t with that many degrees of freedom lies; four or more of them,
 * not always whole. Good to about six figures. Hill, Algorithm 396: Student's t-quantiles, Communications of the ACM 13
 * (1970) 619-620: a series beside the normal quantile, and another far out in the tails.
 *
 * A library would do, but each takes longer to load than all else that a command needs for an estimate.
 */
export function studentQuantile(p: number, degrees: number): number {
  const bothTails = 2 * Math.min(p, 1 - p);
  if (bothTails >= 1) return 0;
  const a = 1 / (degrees - 0.5);
  const b = 48 / (a * a);
  const c = (((20700 * a) / b - 98) * a - 16) * a + 96.36;
  const d = ((94.5 / (b + c) - 3) / b + 1) * Math.sqrt((a * Math.PI) / 2) * degrees;
  const y = (d * bothTails) ** (2 / degrees);
  const squared = y > 0.05 + a ? nearMiddle(bothTails, degrees, a, b, c, d) : inTail(y, degrees, d);
  return Math.sign(p - 0.5) * Math.sqrt(degrees * squared);
}

function nearMiddle(
  bothTails: number,
  degrees: number,
  a: number,
  b: number,
  c: number,
  d: number,
): number {
  const x = normalQuantile(bothTails / 2);
  const few = degrees < 5 ? 0.3 * (degrees - 4.5) * (x + 0.6) : 0;
  const e = (((0.05 * d * x - 5) * x - 7) * x - 2) * x + b + c + few;
  const square = x * x;
  const series =
    (((((0.4 * square + 6.3) * square + 36) * square + 94.5) / e - square - 3) / b + 1) * x;
  return Math.expm1(a * series * series);
}

function inTail(y: number, degrees: number, d: number): number {
  const inner = ((degrees + 6) / (degrees * y) - 0.089 * d - 0.822) * (degrees + 2) * 3;
  return ((1 / inner + 0.5 / (degrees + 4)) * y - 1) * ((degrees + 1) / (degrees + 2)) + 1 / y;
}
