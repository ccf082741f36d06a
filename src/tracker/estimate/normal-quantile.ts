/** A polynomial by its coefficients, the highest power first. */
const polynomial = (coefficients: readonly number[], x: number): number =>
  coefficients.reduce((sum, coefficient) => sum * x + coefficient, 0);

/** The middle of the curve, by the square of the distance from one half. */
const middle = {
  above: [59.10937472, 159.29113202, 50.434271938, 3.3871327179],
  below: [67.1875636, 78.757757664, 17.895169469, 1],
};
const shoulder = {
  above: [0.17023821103, 1.3067284816, 2.75681539, 1.4234372777],
  below: [0.12021132975, 0.7370016425, 1],
};
const farTail = {
  above: [0.017337203997, 0.42868294337, 3.081226386, 6.657905115],
  below: [0.012258202635, 0.24197894225, 1],
};

/**
 * How many standard deviations from the mean a share `p` of a normal distribution lies below, to about seven figures.
 * Algorithm AS 241 (PPND7): Wichura, The percentage points of the normal distribution, Applied Statistics 37 (1988)
 * 477-484. `p` is kept within 1e-300 of its ends, so that the result is always finite.
 */
export function normalQuantile(p: number): number {
  const share = Math.min(1 - Number.EPSILON, Math.max(1e-300, p));
  const fromHalf = share - 0.5;
  if (Math.abs(fromHalf) <= 0.425) {
    const x = 0.180625 - fromHalf * fromHalf;
    return (fromHalf * polynomial(middle.above, x)) / polynomial(middle.below, x);
  }
  const depth = Math.sqrt(-Math.log(fromHalf < 0 ? share : 1 - share));
  const { above, below } = depth <= 5 ? shoulder : farTail;
  const x = depth <= 5 ? depth - 1.6 : depth - 5;
  return (Math.sign(fromHalf) * polynomial(above, x)) / polynomial(below, x);
}
