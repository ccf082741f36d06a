import { expect, it } from 'vitest';
import { normalShare, normalShareBetween } from '../../../src/tracker/learning/normal-share.ts';

/** R 4.2.2, `pnorm(x)`, and in the far tail `pnorm(x, log.p = TRUE)`. */
const inR = [
  [-8, 6.22096057427178e-16],
  [-6, 9.86587645037698e-10],
  [-3, 0.00134989803163009],
  [-1, 0.158655253931457],
  [0, 0.5],
  [0.5, 0.691462461274013],
  [2, 0.977249868051821],
  [5, 0.999999713348428],
] as const;
const logInR = [
  [-30, -454.321243956343],
  [-20, -203.917155371097],
  [-10, -53.2312851505125],
] as const;

it('agrees with R to nine figures, and far out to eight', () => {
  for (const [x, share] of inR)
    expect(Math.abs(normalShare(x) / share - 1), `at ${x}`).toBeLessThan(1e-9);
  for (const [x, log] of logInR) expect(Math.log(normalShare(x)), `at ${x}`).toBeCloseTo(log, 8);
});

it('keeps small shares above the middle, where a difference of shares would be nought', () => {
  expect(normalShareBetween(9, 10)).toBeCloseTo(normalShareBetween(-10, -9), 30);
  expect(normalShareBetween(9, 10)).toBeGreaterThan(0);
});
