import { describe, expect, it } from 'vitest';
import { benchStart } from '../../../src/views/bench/bench-state.ts';
import { benchScreen } from '../../../src/views/bench/index.ts';
import { largeFigures } from '../../../src/views/drawing/index.ts';
import { hour } from '../../../src/tracker/time/index.ts';
import type { ShownPing } from '../../../src/views/port.ts';
import {
  at,
  barred,
  bleach,
  Facts,
  ping,
  recoat,
  rowsOf,
  snapshotOf,
  step,
  viewOf,
} from '../support/bench-of.ts';

const rowsAt = (facts: Facts, when: string, pings: readonly ShownPing[] = []): readonly string[] =>
  rowsOf(
    benchScreen.draw(
      { ...benchStart(at(when)), selected: 'p1' },
      viewOf(snapshotOf(facts.bench(), { pings }), at(when)),
    ),
  );

/** The rows at the right of which large figures stand. */
const counts = (rows: readonly string[], figures: string): boolean =>
  largeFigures(figures, 3, 'blocks').every((row, index) =>
    (rows[index + 1] ?? '').endsWith(row.trimEnd()),
  );

const coat = () => [
  step('coat', 'coat 1', { stepClass: 'coat, brushed', windows: [recoat(2 * hour, 12 * hour)] }),
  step('next', 'coat 2', { stepClass: 'coat, brushed', needs: ['recoat'] }),
];
const bleaching = () => [
  step('bleach', 'bleach', {
    windows: [bleach],
    stepClass: 'bleach',
    stamps: [
      { event: 'first-stroke', agent: 'A', says: 'A on' },
      { event: 'first-stroke', agent: 'B', says: 'B on' },
    ],
  }),
];

describe('the large figures', () => {
  /** A coat that is to be scuffed from 20:00 on. */
  const coated = () =>
    new Facts()
      .piece('24 07:00', 1, 'Oak settle', coat())
      .stamp('24 08:00', 1, 'coat', 'first-stroke')
      .done('24 08:30', 1, 'coat');

  it('count down to a closing that costs work, in its last ten minutes', () => {
    expect(counts(rowsAt(coated(), '24 19:58'), '2:00')).toBe(true);
    expect(counts(rowsAt(coated(), '24 19:45'), '15 min')).toBe(false);
  });

  it('count down to the moment at which a dwell is to be followed, not to its end', () => {
    // B goes on from 19:57 to 19:59.
    const wet = new Facts()
      .piece('24 07:00', 1, 'Wall shelf', bleaching())
      .stamp('24 19:47', 1, 'bleach', 'first-stroke', { agent: 'A' });
    expect(counts(rowsAt(wet, '24 19:52'), '5:00')).toBe(true);
    expect(counts(rowsAt(wet, '24 19:58'), '1:00')).toBe(true);
  });

  it('count down to what comes first, though something worse comes later', () => {
    const both = coated()
      .piece('24 07:00', 2, 'Wall shelf', bleaching())
      .stamp('24 19:56', 2, 'bleach', 'first-stroke', { agent: 'A' });
    expect(counts(rowsAt(both, '24 19:58'), '2:00')).toBe(true);
  });
});

it('of two loud pings the later one is told first, and the other under it', () => {
  const shelf = ping('a', '24 19:40', '2 Wall shelf: B on, by 19:42. Late: rinse.', { loud: true });
  const rack = ping('b', '24 19:41', '3 Book rack: wipe off, by 19:45. Late: it grabs.', {
    loud: true,
  });
  const facts = new Facts().piece('24 07:00', 1, 'Oak settle', coat());
  expect(rowsAt(facts, '24 19:41', [shelf, rack]).slice(1, 3)).toEqual([
    '!! 3 Book rack: wipe off, by 19:45',
    '!! 2 Wall shelf: B on, by 19:42.',
  ]);
});

it('what is to be kept off calls for no hands', () => {
  const sprayed = new Facts()
    .piece('24 08:00', 1, 'Garden bench', [
      step('coat', 'coat 1', { windows: [barred] }),
      step('next', 'coat 2', { needs: ['recoat'] }),
    ])
    .stamp('24 08:40', 1, 'coat', 'first-stroke')
    .done('24 08:55', 1, 'coat');
  // The gap is from 9:40 on.
  expect(rowsAt(sprayed, '24 09:30')[1]).toContain('next     1 Garden bench');
  expect(rowsAt(sprayed, '24 10:00')[1]).not.toContain('Garden bench');
});
