import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { freshGuard, judge, listClosed, type Guard } from '../../../src/views/keys/guard.ts';

/** Presses as [key, milliseconds after the one before]; answers which were taken. */
function taken(presses: readonly (readonly [string, number])[], from: Guard = freshGuard): string {
  let guard = from;
  let at = 1_000_000;
  const marks: string[] = [];
  for (const [name, gap] of presses) {
    at += gap;
    const verdict = judge(guard, name, at);
    guard = verdict.guard;
    marks.push(verdict.take ? name : verdict.revert ? 'revert' : '-');
  }
  return marks.join(' ');
}

describe('the guards', () => {
  it('take single presses', () => {
    expect(
      taken([
        ['1', 0],
        ['enter', 400],
        ['space', 500],
        ['r', 300],
      ]),
    ).toBe('1 enter space r');
  });

  it.each(['enter', 'space', 'd'])('count %s twice within a second once', (key) => {
    expect(
      taken([
        [key, 0],
        [key, 999],
      ]),
    ).toBe(`${key} -`);
    expect(
      taken([
        [key, 0],
        [key, 1000],
      ]),
    ).toBe(`${key} ${key}`);
  });

  it('count it again where another key came between', () => {
    expect(
      taken([
        ['enter', 0],
        ['2', 300],
        ['enter', 300],
      ]),
    ).toBe('enter 2 enter');
  });

  it('let other keys come twice within a second: earlier, earlier', () => {
    expect(
      taken([
        [',', 0],
        [',', 200],
        [',', 200],
      ]),
    ).toBe(', , ,');
  });

  it.each([30, 33, 50, 100, 119])(
    'drop a key that is held down, repeating every %i ms, until it is silent',
    (every) => {
      const held = Array.from({ length: 40 }, () => ['space', every] as const);
      expect(taken([['space', 0], ['space', 500], ...held, ['r', 299], ['r', 301]])).toBe(
        `space ${'- '.repeat(41)}- r`,
      );
    },
  );

  it('undo the selection where a second digit follows at once: a glove on two keys', () => {
    expect(
      taken([
        ['4', 0],
        ['5', 60],
      ]),
    ).toBe('4 revert');
    expect(
      taken([
        ['4', 0],
        ['5', 200],
      ]),
    ).toBe('4 5');
  });

  it('keep for a second from the bench what closed a list', () => {
    const guard = listClosed(freshGuard, 1_000_000);
    expect(taken([['enter', 400]], guard)).toBe('-');
    expect(taken([['3', 400]], guard)).toBe('-');
    expect(taken([['r', 400]], guard)).toBe('r');
    expect(taken([['enter', 1001]], guard)).toBe('enter');
  });

  it('do not lock up when the clock is set back', () => {
    expect(
      taken([
        ['enter', 0],
        ['r', -3_600_000],
        ['enter', 500],
      ]),
    ).toBe('enter r enter');
  });

  it('never take more presses than one in 120 ms, whatever comes', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.constantFrom('1', '2', 'enter', 'space', 'd', 'r', ','), fc.nat(2000)),
          { maxLength: 60 },
        ),
        (presses) => {
          let at = 0;
          let guard = freshGuard;
          let last = Number.NEGATIVE_INFINITY;
          for (const [name, gap] of presses) {
            at += gap;
            const verdict = judge(guard, name, at);
            guard = verdict.guard;
            if (!verdict.take) continue;
            expect(at - last).toBeGreaterThanOrEqual(120);
            last = at;
          }
        },
      ),
    );
  });
});
