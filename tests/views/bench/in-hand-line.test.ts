import { expect, it } from 'vitest';
import { hoursOfPiece } from '../../../src/tracker/estimate/index.ts';
import { benchStart } from '../../../src/views/bench/bench-state.ts';
import { benchScreen } from '../../../src/views/bench/index.ts';
import { at, Facts, rowsOf, snapshotOf, step, viewOf } from '../support/bench-of.ts';

const sanding = (setupMinutes: number) =>
  step('sand', 'sand 120', { minutes: { typical: 45, low: 25, high: 90 }, setupMinutes });

const inHand = (facts: Facts, columns = 80): string => {
  const drawn = benchScreen.draw(
    { ...benchStart(at('24 09:20')), selected: 'p1' },
    viewOf(snapshotOf(facts.bench()), at('24 09:20'), [columns, 24]),
  );
  return rowsOf(drawn).find((row) => row.startsWith('in hand')) ?? '';
};

it('counts off what was done of the step in earlier sessions', () => {
  const again = (firstUntil: string) =>
    new Facts()
      .piece('24 07:00', 1, 'Oak settle', [sanding(15)])
      .pickUp('24 08:00', 1, 'sand')
      .putDown(firstUntil, 's1-24 08:00')
      .pickUp('24 09:10', 1, 'sand');
  const row = (facts: Facts) =>
    rowsOf(
      benchScreen.draw(
        { ...benchStart(at('24 09:20')), selected: 'p1' },
        viewOf(snapshotOf(facts.bench()), at('24 09:20')),
      ),
    ).join('\n');
  // Of 20 minutes 8 were setup, as the schedule has 15 beside 45 in two sessions: 12 are done. Setting up comes once more.
  expect(inHand(again('24 08:20'))).toMatch(/10 min of about 48 min$/);
  expect(inHand(again('24 08:20'), 120)).toMatch(/; with setup 28 to 93, 4 times in 5$/);
  expect(row(again('24 08:20'))).toContain('1 of 1; 12 min before, expected 25 to 90 min');
  // With what is in hand it comes to what the opened piece and the hours tell.
  const bench = again('24 08:20').bench();
  const piece = bench.pieces.get('p1')!;
  const [whole] = hoursOfPiece(bench, piece, at('24 09:20')).steps;
  expect(whole?.minutes).toBeCloseTo(12 + 8, 9);
  expect(inHand(again('24 09:10'))).toMatch(/, 10 min$/);
});

it('counts setup and cleanup, once, in what the session comes to', () => {
  const shop = (setup: number) =>
    new Facts().piece('24 09:00', 1, 'Oak settle', [sanding(setup)]).pickUp('24 09:10', 1, 'sand');
  expect(inHand(shop(0))).toMatch(/10 min of about 45 min$/);
  expect(inHand(shop(15))).toMatch(/10 min of about 60 min$/);
  expect(inHand(shop(15), 120)).toMatch(/; with setup 40 to 105, 4 times in 5$/);
  expect(inHand(shop(0), 120)).toMatch(/; expected 25 to 90, 4 times in 5$/);
});

it('counts setup once also where several pieces are worked in one go', () => {
  const both = (setup: number): number => {
    const steps = [sanding(setup)];
    const shop = new Facts()
      .piece('24 09:00', 1, 'Settle', steps)
      .piece('24 09:01', 2, 'Stool', steps)
      .tell('24 09:10', 'picked-up', {
        session: 's',
        hand: 1,
        targets: ['p1', 'p2'].map((piece) => ({ piece, part: null, step: 'sand' })),
      });
    const [, hours = '', minutes = ''] = / of about (\d+) h (\d+)/.exec(inHand(shop)) ?? [];
    return Number(hours) * 60 + Number(minutes);
  };
  expect(both(30) - both(15)).toBe(15);
});
