import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  decide,
  foldBench,
  windowsOf,
  windowsOfPiece,
  type Bench,
  type BenchFact,
} from '../../../src/tracker/bench/index.ts';
import { benchBodies } from '../../../src/persist/schemas/bench-facts.ts';
import { cautionsOfStep } from '../../../src/tracker/cautions/index.ts';
import { ragsFrom } from '../../../src/tracker/overnight/index.ts';
import { rules } from '../cautions/invented-rules.ts';
import { contextAt } from '../support/given-when-then.ts';
import { headed } from '../support/workday.ts';
import { tried } from './law.ts';
import { derived, pressAll, presses, pressThrough } from './presses.ts';

const often = tried(100);

test('replaying the facts gives the same bench, also after they were written and read', () => {
  fc.assert(
    fc.property(presses, fc.constantFrom(1, 2), (list, hands) => {
      const { facts, after } = pressThrough(list, hands);
      expect(foldBench(facts)).toEqual(after);
      expect(foldBench(JSON.parse(JSON.stringify(facts)) as BenchFact[])).toEqual(after);
    }),
    often,
  );
});

test('folding on from an earlier bench gives the same bench and the same windows as folding anew', () => {
  const sense = contextAt(0).sense;
  fc.assert(
    fc.property(presses, (list) => {
      let onward: Bench = foldBench([]);
      for (const { facts, after } of pressAll(list, 1)) {
        for (const piece of onward.pieces.values()) windowsOf(onward, piece, sense);
        onward = foldBench(facts, onward);
        expect(onward).toEqual(after);
        for (const piece of onward.pieces.values()) {
          const anew = windowsOfPiece(piece, after.sessions, sense);
          expect(windowsOf(onward, piece, sense)).toEqual(anew);
        }
      }
    }),
    tried(60),
  );
});

test('folding on gives the same cautions and rags as folding anew', () => {
  const { sense } = contextAt(0);
  fc.assert(
    fc.property(presses, (list) => {
      let onward: Bench = foldBench([]);
      for (const { facts, now } of pressAll(list, 1)) {
        onward = foldBench(facts, onward);
        const anew = foldBench(facts);
        expect(ragsFrom(onward).map(({ id }) => id)).toEqual(ragsFrom(anew).map(({ id }) => id));
        const cautions = (bench: Bench) =>
          [...bench.pieces.values()].flatMap((piece) =>
            piece.steps.map((step) => cautionsOfStep(piece, step, { bench, rules, now, sense })),
          );
        expect(cautions(onward)).toEqual(cautions(anew));
      }
    }),
    tried(15),
  );
});

test('taking back undoes the last deed and nothing else; bringing back does it again', () => {
  fc.assert(
    fc.property(presses, fc.constantFrom(1, 2), (list, hands) => {
      for (const { outcome, intent, before, after, facts, now } of pressAll(list, hands)) {
        const byHand = !['take back', 'bring back', 'note clock step'].includes(intent.do);
        if (!outcome.ok || !byHand) continue;
        const taken = decide(after, { do: 'take back' }, contextAt(now, { group: 'taken' }));
        if (!taken.ok) throw new Error(`${intent.do} can't be taken back: ${taken.refusal.says}`);
        const less = [...facts, ...headed(taken.facts, 'taken', now)];
        expect(derived(foldBench(less))).toEqual(derived(before));
        const brought = decide(
          foldBench(less),
          { do: 'bring back' },
          contextAt(now, { group: 'brought' }),
        );
        if (!brought.ok)
          throw new Error(`${intent.do} can't be brought back: ${brought.refusal.says}`);
        const again = foldBench([...less, ...headed(brought.facts, 'brought', now)]);
        expect(derived(again)).toEqual(derived(after));
        expect(again.trail).toEqual(after.trail);
        expect(taken.says).toMatch(/^taken back: \S/);
        expect(brought.says).toMatch(/^brought back: \S/);
      }
    }),
    tried(60),
  );
});

test('taking everything back leaves an empty bench, and bringing it back the full one', () => {
  fc.assert(
    fc.property(presses, (list) => {
      const { facts, after, now } = pressThrough(list, 2);
      let all = facts;
      const go = (way: 'take back' | 'bring back'): number => {
        for (let count = 0; ; count += 1) {
          const group = `${way} ${count}`;
          const outcome = decide(foldBench(all), { do: way }, contextAt(now, { group }));
          if (!outcome.ok) return count;
          all = [...all, ...headed(outcome.facts, group, now)];
        }
      };
      expect(go('take back')).toBe(after.trail.done.length);
      const empty = foldBench(all);
      expect([empty.pieces.size, empty.sessions.length, empty.timers.length]).toEqual([0, 0, 0]);
      go('bring back');
      const full = foldBench(all);
      // What had been taken back before lies on the same pile, and comes back too.
      expect(full.trail.done.slice(0, after.trail.done.length)).toEqual(after.trail.done);
      if (after.trail.takenBack.length === 0) expect(derived(full)).toEqual(derived(after));
    }),
    tried(30),
  );
});

/** What was answered overnight is read from the trail; a clock that was set is found from the facts around it. */
const changeNoPiece = ['rags-dealt-with', 'clock-stepped'];

test('every kind of fact changes some bench, but those that change no piece', () => {
  const telling = new Set<string>();
  const { numRuns, seed } = tried(1500);
  for (const list of fc.sample(presses, { numRuns, seed })) {
    let before = 0;
    for (const { facts, after } of pressAll(list, 2)) {
      for (const fact of facts.slice(before)) {
        if (telling.has(fact.kind)) continue;
        const without = foldBench(facts.filter((each) => each !== fact));
        if (!isDeepStrictEqual(derived(without), derived(after))) telling.add(fact.kind);
      }
      before = facts.length;
    }
  }
  expect(Object.keys(benchBodies).filter((kind) => !telling.has(kind))).toEqual(changeNoPiece);
});

test('no intent throws; a refusal begins "Not ...:", ends a sentence and changes nothing', () => {
  fc.assert(
    fc.property(presses, fc.constantFrom(1, 2, 3), (list, hands) => {
      for (const { outcome, before, after } of pressAll(list, hands)) {
        if (outcome.ok) {
          expect(outcome.facts.length).toBeGreaterThan(0);
          expect(outcome.says.trim()).not.toBe('');
        } else {
          expect(outcome.refusal.says).toMatch(/^Not [a-z ]+: \S.*\.$|^Not started: .*"\.$/s);
          expect(after).toBe(before);
        }
      }
    }),
    often,
  );
});

test('facts carry nothing that JSON can not', () => {
  fc.assert(
    fc.property(presses, (list) => {
      const { facts } = pressThrough(list);
      expect(JSON.parse(JSON.stringify(facts))).toEqual(facts);
    }),
    often,
  );
});
