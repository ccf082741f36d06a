import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { plain } from '../../../src/views/drawing/index.ts';
import { hoursPages } from '../../../src/views/hours/hours-pages.ts';
import { hoursScreen } from '../../../src/views/hours/index.ts';
import type { HoursState } from '../../../src/views/screens.ts';
import { anyDeeds, benchAfter, type Deed } from '../../tracker/estimate/any-history.ts';
import { sizes, snapshotOf, viewOf } from '../support/bench-of.ts';

const over = { piece: 0, other: 0 };
const correctedOverMidnight: Deed[] = [
  { ...over, wait: 29, what: 'pick up' },
  { ...over, wait: 1000, what: 'put down' },
  { ...over, wait: 5, what: 'move to other' },
];

describe('the hours screens on whatever happened', () => {
  it('never show what is no figure, and stay within the terminal', () => {
    fc.assert(
      fc.property(anyDeeds, fc.nat({ max: 9 }), (deeds, at) => {
        const { bench, now } = benchAfter(deeds);
        const session = bench.sessions.at(-1)?.id ?? null;
        const states: readonly HoursState[] = [
          ...hoursPages.map(
            (page) => ({ is: 'hours', piece: null, at, past: null, page }) as const,
          ),
          ...[...bench.pieces.keys()].flatMap((piece): readonly HoursState[] => {
            const own = { is: 'hours', piece, at, past: null } as const;
            const correcting = { at: 0, session, piece: null, text: '-5' } as const;
            return [
              own,
              { ...own, by: 'step' },
              { ...own, correcting: { ...correcting, asks: 'session' } },
              {
                ...own,
                correcting: { ...correcting, asks: session === null ? 'session' : 'change' },
              },
              { ...own, correcting: { ...correcting, asks: session === null ? 'session' : 'end' } },
            ];
          }),
        ];
        for (const state of states)
          for (const size of sizes) {
            const view = viewOf(snapshotOf(bench), now, size);
            const { lines } = hoursScreen.draw(state, view);
            expect(lines.length).toBeLessThanOrEqual(size[1]);
            for (const line of lines) {
              expect(plain(line)).not.toMatch(/NaN|undefined|Infinity|null|\s-0(\s|$)/);
              expect([stringWidth(plain(line)) <= size[0], state, plain(line)]).toEqual([
                true,
                state,
                plain(line),
              ]);
            }
          }
      }),
      { numRuns: 25, examples: [[correctedOverMidnight, 0]] },
    );
  }, 60_000);
});
