import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  freeNumber,
  inHand,
  pieceMinutes,
  piecesOnBench,
  sessionMinutes,
  standingsAt,
  stepMinutes,
  type Session,
} from '../../../src/tracker/bench/index.ts';
import { hour } from '../../../src/tracker/time/index.ts';
import { labelSense } from '../support/sense.ts';
import { tried } from './law.ts';
import { pressAll, presses } from './presses.ts';

const often = tried(100);
const someHands = fc.constantFrom(1, 2, 3);

test('no minute is negative, and none is counted twice', () => {
  fc.assert(
    fc.property(presses, someHands, (list, hands) => {
      for (const { after: bench, now, outcome } of pressAll(list, hands)) {
        if (!outcome.ok) continue;
        for (const later of [now, now + hour]) {
          const ofPieces = [...bench.pieces.values()].map((piece) =>
            pieceMinutes(bench, piece, later),
          );
          const ofSessions = bench.sessions.map((session) => sessionMinutes(session, later));
          for (const minutes of [...ofPieces, ...ofSessions])
            expect(minutes).toBeGreaterThanOrEqual(0);
          expect(sum(ofPieces)).toBeCloseTo(sum(ofSessions), 6);
        }
      }
    }),
    often,
  );
});

test('the minutes of a piece are those of its steps and of the work that belongs to none', () => {
  fc.assert(
    fc.property(presses, someHands, (list, hands) => {
      for (const { after: bench, now, outcome } of pressAll(list, hands)) {
        if (!outcome.ok) continue;
        for (const piece of bench.pieces.values()) {
          const steps = new Set(
            bench.sessions.flatMap(({ targets }) => targets.map(({ step }) => step)),
          );
          const parts = [...steps].map((step) => stepMinutes(bench, piece, step, now));
          expect(sum(parts)).toBeCloseTo(pieceMinutes(bench, piece, now), 6);
        }
      }
    }),
    tried(50),
  );
});

test('one pair of hands is never in two sessions at once', () => {
  fc.assert(
    fc.property(presses, someHands, (list, hands) => {
      for (const { after: bench, outcome } of pressAll(list, hands)) {
        if (!outcome.ok) continue;
        const counted = bench.sessions.filter((session) => !session.dropped);
        for (const [index, one] of counted.entries()) {
          for (const other of counted.slice(index + 1)) {
            if (one.hand === other.hand) expect(common(one, other)).toBe(0);
          }
        }
      }
    }),
    often,
  );
});

/** How long two sessions ran at the same time. */
function common(one: Session, other: Session): number {
  const endOf = (session: Session): number => session.end ?? Number.MAX_SAFE_INTEGER;
  return Math.max(0, Math.min(endOf(one), endOf(other)) - Math.max(one.start, other.start));
}

test('no more is in hand than there are hands, and a session never ends before it begins', () => {
  fc.assert(
    fc.property(presses, someHands, (list, hands) => {
      for (const { after: bench, outcome } of pressAll(list, hands)) {
        if (!outcome.ok) continue;
        expect(inHand(bench).length).toBeLessThanOrEqual(hands);
        for (const { start, end, targets } of bench.sessions) {
          if (end !== null) expect(end).toBeGreaterThanOrEqual(start);
          expect(targets.length).toBeGreaterThan(0);
        }
      }
    }),
    often,
  );
});

test('every piece on the bench wears a number of its own, and no other piece wears one', () => {
  fc.assert(
    fc.property(presses, (list) => {
      for (const { after: bench, outcome, intent, before } of pressAll(list, 1)) {
        if (!outcome.ok) continue;
        const numbers = piecesOnBench(bench).map(({ number }) => number);
        expect(new Set(numbers).size).toBe(numbers.length);
        for (const number of numbers) expect(Number.isInteger(number) && number! >= 1).toBe(true);
        for (const piece of bench.pieces.values()) {
          if (piece.place !== 'bench') expect(piece.number).toBeNull();
        }
        if (intent.do === 'add piece')
          expect(bench.pieces.get(outcome.piece!)?.number).toBe(freeNumber(before));
        else if (intent.do !== 'take back' && intent.do !== 'bring back') {
          // Nobody's number changes while it is on the bench.
          for (const piece of piecesOnBench(before)) {
            const now = bench.pieces.get(piece.id);
            if (now?.place === 'bench') expect(now.number).toBe(piece.number);
          }
        }
      }
    }),
    often,
  );
});

test('every piece on the bench has one row, in hand rows are in hand, and the rows stand in order', () => {
  fc.assert(
    fc.property(
      presses,
      someHands,
      fc.integer({ min: 0, max: 80 * hour }),
      (list, hands, later) => {
        for (const { after: bench, now, outcome } of pressAll(list, hands)) {
          if (!outcome.ok) continue;
          const rows = standingsAt(bench, now + later, labelSense);
          const shown = rows.flatMap(({ piece }) => (piece === null ? [] : [piece.id]));
          expect([...shown].sort()).toEqual(
            piecesOnBench(bench)
              .map(({ id }) => id)
              .sort(),
          );
          for (const row of rows) {
            if (row.rank === 'in hand') expect(row.session).not.toBeNull();
            if (row.rank === 'finished') expect(row.step).toBeNull();
            if (row.window !== null) expect(row.windows).toContain(row.window);
          }
        }
      },
    ),
    tried(60),
  );
});

const sum = (list: readonly number[]): number => list.reduce((total, each) => total + each, 0);
