import * as z from 'zod/mini';
import {
  coatWeights,
  findings,
  moistureSpots,
  overnightQuestions,
  woods,
  type BenchFactBodies,
} from '../../tracker/bench/index.ts';
import { lateCauses, shapes, stepClasses } from '../../tracker/trade/index.ts';
import { matches } from './same.ts';
import { product, step } from './schedule.ts';
import { air, calendarDay, id, instant, milliseconds } from './values.ts';
import { stampEvent } from './windows.ts';

const target = z.strictObject({ piece: id, part: z.nullable(id), step: z.nullable(id) });
const expectation = z.strictObject({
  minutes: z.number(),
  low: z.number(),
  high: z.number(),
  chance: z.number(),
  model: z.string(),
});

/** What each kind of fact of the bench file says. Made where a fact of the kind is checked: all take a write 2 ms. */
export const benchBodies = {
  'piece-added': () =>
    z.strictObject({
      piece: id,
      number: z.int(),
      name: z.string(),
      schedule: z.strictObject({ id, name: z.string(), hash: z.string() }),
      steps: z.array(step),
      products: z.record(z.string(), product),
    }),
  'piece-described': () =>
    z.strictObject({
      piece: id,
      changes: z.strictObject({
        name: z.exactOptional(z.string()),
        kind: z.exactOptional(z.nullable(z.string())),
        wood: z.exactOptional(z.nullable(z.enum(woods))),
        areaM2: z.exactOptional(z.nullable(z.number())),
        profile: z.exactOptional(
          z.nullable(z.strictObject({ shape: z.enum(shapes), share: z.number() })),
        ),
        fittings: z.exactOptional(z.nullable(z.number())),
        joints: z.exactOptional(z.nullable(z.number())),
        drawers: z.exactOptional(z.nullable(z.number())),
        yearMade: z.exactOptional(z.nullable(z.number())),
        promised: z.exactOptional(z.nullable(calendarDay)),
      }),
    }),
  'parts-named': () =>
    z.strictObject({
      piece: id,
      parts: z.array(z.strictObject({ id, name: z.string() })),
    }),
  'step-inserted': () =>
    z.strictObject({
      piece: id,
      step,
      before: z.nullable(id),
      copyOf: z.exactOptional(id),
    }),
  'step-moved': () => z.strictObject({ piece: id, step: id, before: z.nullable(id) }),
  'step-skipped': () => z.strictObject({ piece: id, step: id, skipped: z.boolean() }),
  'step-reworded': () => z.strictObject({ piece: id, step: id, name: z.string() }),
  'question-answered': () =>
    z.strictObject({ piece: id, step: id, answer: z.nullable(z.string()) }),
  'trial-waived': () => z.strictObject({ piece: id, step: id, reason: z.string() }),
  'product-chosen': () => z.strictObject({ piece: id, step: id, key: z.string(), product }),
  'hold-placed': () =>
    z.strictObject({
      piece: id,
      reason: z.string(),
      askAgain: z.nullable(calendarDay),
    }),
  'hold-lifted': () => z.strictObject({ piece: id }),
  'carried-in': () => z.strictObject({ piece: id }),
  'piece-left-bench': () => z.strictObject({ piece: id }),
  'piece-put-back': () => z.strictObject({ piece: id, number: z.int() }),
  'piece-removed': () => z.strictObject({ piece: id }),
  'match-told': () =>
    z.strictObject({ piece: id, partner: id, name: z.string(), matches: z.boolean() }),
  'kept-from-learning': () =>
    z.strictObject({
      piece: id,
      session: z.nullable(id),
      kept: z.boolean(),
    }),
  'note-written': () => z.strictObject({ piece: id, step: z.nullable(id), text: z.string() }),
  'picked-up': () => z.strictObject({ session: id, targets: z.array(target), hand: z.int() }),
  'put-down': () => z.strictObject({ session: id }),
  'targets-changed': () => z.strictObject({ session: id, targets: z.array(target) }),
  stamped: () =>
    z.strictObject({
      piece: id,
      part: z.nullable(id),
      step: id,
      event: stampEvent,
      agent: z.nullable(z.string()),
      pass: z.int(),
      section: z.nullable(z.int()),
      pot: z.exactOptional(id),
      air,
    }),
  'step-done': () =>
    z.strictObject({
      piece: id,
      part: z.nullable(id),
      step: id,
      pass: z.int(),
      expectation,
      air,
    }),
  checked: () =>
    z.strictObject({
      piece: id,
      part: z.nullable(id),
      step: id,
      window: z.string(),
      finding: z.enum(findings),
      shown: z.exactOptional(z.string()),
      air,
    }),
  'coat-weighed': () =>
    z.strictObject({
      piece: id,
      part: z.nullable(id),
      step: id,
      pass: z.int(),
      weight: z.enum(coatWeights),
    }),
  'lateness-explained': () => z.strictObject({ piece: id, check: id, cause: z.enum(lateCauses) }),
  'moisture-read': () =>
    z.strictObject({
      piece: id,
      part: z.nullable(id),
      step: z.nullable(id),
      spot: z.enum(moistureSpots),
      percent: z.number(),
      air,
    }),
  'timer-started': () =>
    z.strictObject({
      timer: id,
      piece: z.nullable(id),
      label: z.string(),
      ms: milliseconds,
    }),
  'timer-closed': () => z.strictObject({ timer: id }),
  'pot-mixed': () => z.strictObject({ pot: id, letter: z.string(), product }),
  'pot-washed': () => z.strictObject({ pot: id }),
  'stamp-moved': () => z.strictObject({ fact: id, to: instant }),
  'session-corrected': () =>
    z.strictObject({
      session: id,
      start: instant,
      end: z.nullable(instant),
      targets: z.array(target),
      dropped: z.boolean(),
    }),
  'group-withdrawn': () => z.strictObject({ withdrawn: id }),
  'group-restored': () => z.strictObject({ restored: id }),
  'shop-shut': () =>
    z.strictObject({
      answers: z.partialRecord(z.enum(overnightQuestions), z.enum(['yes', 'no', 'does not apply'])),
      backAt: z.nullable(instant),
    }),
  'rags-dealt-with': () => z.strictObject({}),
  'hours-imported': () =>
    z.strictObject({
      import: id,
      file: z.string(),
      fingerprint: z.string(),
      rows: z.array(
        z.strictObject({
          at: instant,
          piece: z.string(),
          stepClass: z.enum(stepClasses),
          minutes: z.number(),
          estimate: z.number(),
        }),
      ),
    }),
  'import-taken-out': () => z.strictObject({ import: id }),
  'clock-stepped': () => z.strictObject({ byMs: milliseconds }),
};

type Bodies = {
  [Kind in keyof typeof benchBodies]: z.infer<ReturnType<(typeof benchBodies)[Kind]>>;
};
matches<BenchFactBodies, Bodies>(true);
