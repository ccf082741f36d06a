/** Coefficients of numerator and denominator, the highest power first. */
const above = [
  0.0352624965998911, 0.700383064443688, 6.37396220353165, 33.912866078383, 112.079291497871,
  221.213596169931, 220.206867912376,
];
const below = [
  0.0883883476483184, 1.75566716318264, 16.064177579207, 86.7807322029461, 296.564248779674,
  637.333633378831, 793.826512519948, 440.413735824752,
];

/** A loop, as this runs a hundred thousand times for one answer. */
function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let i = 0; i < coefficients.length; i++) sum = sum * x + (coefficients[i] ?? 0);
  return sum;
}

/**
 * The share of a standard normal that lies below `x`, to about nine figures, also far out in the lower tail. Hart et
 * al., Computer Approximations (1968), algorithm 5666, and Laplace's continued fraction beyond 7.07.
 */
export function normalShare(x: number): number {
  const far = Math.abs(x);
  const beyond = far > 37 ? 0 : Math.exp((-far * far) / 2) * tailFactor(far);
  return x > 0 ? 1 - beyond : beyond;
}

/** Levels of the continued fraction: beyond 7.07 more change nothing that a number can hold. */
const levels = 30;

function tailFactor(far: number): number {
  if (far < 7.07106781186547) return polynomial(above, far) / polynomial(below, far);
  let fraction = far;
  for (let level = levels; level > 0; level--) fraction = far + level / fraction;
  return 1 / (fraction * Math.sqrt(2 * Math.PI));
}

/** The share of a standard normal that lies between. Where both ends are above the middle, their lower mirror is exact longer. */
export const normalShareBetween = (low: number, high: number): number =>
  Math.max(
    0,
    low > 0 ? normalShare(-low) - normalShare(-high) : normalShare(high) - normalShare(low),
  );
