import { expect, it } from 'vitest';
import { createStandingAside } from '../../../src/shell/keeper/stand-aside.ts';
import { hour, minute, second, type Instant } from '../../../src/tracker/time/index.ts';
import { startOfTests } from '../support/stepped-clock.ts';

/** Looks every five seconds from an instant on, for so long; the answers. */
function looks(from: Instant, lasting: number, isDue: boolean, aside = createStandingAside()) {
  const stands: boolean[] = [];
  for (let passed = 0; passed <= lasting; passed += 5 * second)
    stands.push(aside.isToStand(isDue, from + passed));
  return { aside, stands };
}

it('stands for a screen that is there, until something was due for half a minute', () => {
  const { stands } = looks(startOfTests, 35 * second, true);
  expect(stands).toEqual([true, true, true, true, true, true, false, false]);
  expect(looks(startOfTests, hour, false).stands).not.toContain(false);
});

it('begins to count anew where the screen has told what was due', () => {
  const { aside } = looks(startOfTests, 25 * second, true);
  expect(aside.isToStand(false, startOfTests + 30 * second)).toBe(true);
  expect(looks(startOfTests + 35 * second, 20 * second, true, aside).stands).not.toContain(false);
});

it('counts no sleep: the screen slept too', () => {
  const { aside } = looks(startOfTests, 5 * second, true);
  expect(aside.isToStand(true, startOfTests + hour)).toBe(true);
});

it('trusts a screen that let a ping pass again after ten minutes, or once the clock was set back', () => {
  for (const [later, stands] of [
    [9 * minute, false],
    [10 * minute, true],
    [-hour, true],
  ] as const) {
    const { aside } = looks(startOfTests - 30 * second, 30 * second, true);
    expect(aside.isToStand(false, startOfTests + later)).toBe(stands);
  }
});
