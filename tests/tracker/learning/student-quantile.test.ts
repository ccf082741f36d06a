import { expect, it } from 'vitest';
import { studentQuantile } from '../../../src/tracker/learning/student-quantile.ts';

/** R 4.2.2, `qt(p, df)`. */
const inR: Readonly<Record<string, readonly (readonly [p: number, quantile: number])[]>> = {
  4: [
    [0.001, -7.17318221978231],
    [0.05, -2.13184678632665],
    [0.25, -0.740697084112683],
    [0.5, 0],
    [0.9, 1.53320627405894],
    [0.995, 4.60409487134999],
  ],
  5: [
    [0.001, -5.89342953135601],
    [0.1, -1.47588404882448],
    [0.975, 2.57058183563631],
  ],
  7.3: [
    [0.001, -4.68886599353837],
    [0.1, -1.40892231774804],
    [0.25, -0.709573020456991],
    [0.995, 3.45103165562218],
  ],
  12: [
    [0.001, -3.92963326462649],
    [0.9, 1.35621733402321],
  ],
  30: [
    [0.05, -1.69726088659396],
    [0.975, 2.04227245630124],
  ],
};

it.each(Object.entries(inR))(
  'agrees with R to five figures at %s degrees of freedom',
  (df, table) => {
    for (const [p, quantile] of table) {
      const off = Math.abs(studentQuantile(p, Number(df)) - quantile);
      expect(off, `at ${p}`).toBeLessThanOrEqual(1e-5 * Math.abs(quantile));
    }
  },
);
