import fc from 'fast-check';
import {
  coatWeights,
  currentStep,
  decide,
  foldBench,
  type Bench,
  type BenchFact,
  type Intent,
  type Outcome,
  type Piece,
} from '../../../src/tracker/bench/index.ts';
import { hour, minute, second, type Instant } from '../../../src/tracker/time/index.ts';
import { lateCauses } from '../../../src/tracker/trade/index.ts';
import { stampEvents } from '../../../src/tracker/windows/index.ts';
import { contextAt } from '../support/given-when-then.ts';
import { morning } from '../support/instants.ts';
import { allSchedules } from '../support/schedules.ts';
import { headed } from '../support/workday.ts';

const acts = [
  'add piece',
  'describe piece',
  'name parts',
  'insert step',
  'repeat step',
  'move step',
  'skip step',
  'reword step',
  'answer',
  'use product',
  'place hold',
  'lift hold',
  'carry in',
  'take off bench',
  'put back on bench',
  'remove piece',
  'write note',
  'pick up',
  'take along',
  'put down',
  'next stamp',
  'first stroke',
  'next section',
  'done',
  'stamp',
  'check',
  'match pieces',
  'tell coat weight',
  'explain lateness',
  'read moisture',
  'move stamp',
  'start timer',
  'close timer',
  'mix pot',
  'wash out pot',
  'move pot',
  'correct session',
  'leave out of learning',
  'import hours',
  'take out import',
  'take back',
  'bring back',
  'shut up shop',
  'deal with rags',
  'note clock step',
] as const satisfies readonly Intent['do'][];

/** Everyday work comes more often than the rest. */
const likely = [
  'next stamp',
  'next stamp',
  'done',
  'pick up',
  'put down',
  'check',
  'move stamp',
  'first stroke',
] as const;

/** One press of a key, told in numbers; what it asks for depends on the bench at that moment. */
export type Press = {
  readonly act: Intent['do'];
  /** Chooses piece, step, part, session. */
  readonly picks: readonly number[];
  readonly flag: boolean;
  readonly ms: number;
  /** Time gone since the last press; less than none where the clock was set back. */
  readonly wait: number;
  /** Said to have happened that long ago; null is now. */
  readonly ago: number | null;
};

export const press: fc.Arbitrary<Press> = fc.record({
  act: fc.oneof(
    { weight: 1, arbitrary: fc.constantFrom(...acts) },
    { weight: 2, arbitrary: fc.constantFrom(...likely) },
  ),
  picks: fc.array(fc.nat({ max: 11 }), { minLength: 4, maxLength: 4 }),
  flag: fc.boolean(),
  ms: fc.oneof(
    fc.integer({ min: 0, max: 30 * minute }),
    fc.constantFrom(-minute, 0, Number.NaN, hour),
  ),
  wait: fc.oneof(
    { weight: 8, arbitrary: fc.integer({ min: 0, max: 20 * minute }) },
    { weight: 3, arbitrary: fc.integer({ min: 0, max: 40 * hour }) },
    { weight: 1, arbitrary: fc.integer({ min: -90 * minute, max: 0 }) },
  ),
  ago: fc.oneof(
    { weight: 5, arbitrary: fc.constant(null) },
    { weight: 1, arbitrary: fc.integer({ min: -second, max: 30 * minute }) },
  ),
});

export const presses = fc.array(press, { minLength: 1, maxLength: 45, size: 'max' });

/** Two pieces to begin with, so that most presses find something to do. */
const beginning = (list: readonly Press[]): readonly Press[] =>
  [0, 1].map((which) => ({
    act: 'add piece',
    picks: [0, list[0]?.picks[which] ?? 0, 0, 0],
    flag: false,
    ms: 0,
    wait: 0,
    ago: null,
  }));

export const most = 5;

function intentOf(bench: Bench, { act, picks, flag, ms }: Press, now: Instant): Intent | null {
  const [p = 0, q = 0, r = 0, s = 0] = picks;
  const ids = [...bench.pieces.keys()];
  const piece = p === 11 ? 'nobody' : (ids[p % ids.length] ?? 'nobody');
  const found = bench.pieces.get(piece);
  const anyStep = (pick: number): string =>
    (pick === 10 ? undefined : found?.steps[pick % found.steps.length]?.id) ?? 'no step';
  const step = flag && found !== undefined ? (currentStep(found, null)?.id ?? 'none') : anyStep(q);
  const before = s % 3 === 0 ? null : anyStep(r);
  const part = partOf(found, r);
  const session = q < 6 ? bench.sessions.at(-1) : bench.sessions[q % bench.sessions.length];
  switch (act) {
    case 'add piece':
      if (ids.length >= most) return null;
      return {
        do: act,
        name: `piece ${ids.length + 1}`,
        schedule: allSchedules[q % allSchedules.length]!,
        ...(flag ? { describe: { areaM2: 1 + r } } : {}),
      };
    case 'describe piece':
      return {
        do: act,
        piece,
        changes: flag
          ? { wood: q % 2 === 0 ? 'soft' : 'hard', yearMade: r % 2 === 0 ? 1950 : null }
          : q % 5 === 0
            ? { fittings: r - 1, drawers: r % 3, joints: r % 2 === 0 ? null : r * 200 }
            : { areaM2: q - 1, profile: r % 3 === 0 ? null : { shape: 'turned', share: r / 4 } },
      };
    case 'name parts':
      return { do: act, piece, names: ['top', 'case', 'drawers', ''].slice(0, q % 5) };
    case 'insert step': {
      const { id: _, ...copy } =
        found?.steps[q % (found.steps.length || 1)] ?? allSchedules[0].steps[0]!;
      return { do: act, piece, step: { ...copy, name: 'put in' }, before };
    }
    case 'repeat step':
      return { do: act, piece, step };
    case 'move step':
      return { do: act, piece, step, before };
    case 'skip step':
      return { do: act, piece, step, skipped: s % 2 === 0 };
    case 'reword step':
      return { do: act, piece, step, name: `step ${r}` };
    case 'answer':
      return {
        do: act,
        piece,
        ...(flag ? {} : { step }),
        answer: ['shellac', 'varnish', null, 'nothing like it'][q % 4] ?? null,
      };
    case 'use product': {
      const products = allSchedules.flatMap((each) => Object.values(each.products));
      return { do: act, piece, step, product: products[q % products.length]! };
    }
    case 'place hold':
      return {
        do: act,
        piece,
        reason: 'hinge',
        askAgain: ['2026-05-06', null, 'soon'][q % 3] ?? null,
      };
    case 'carry in':
    case 'lift hold':
    case 'take off bench':
    case 'put back on bench':
    case 'remove piece':
      return { do: act, piece };
    case 'write note':
      return { do: act, piece, step: flag ? step : null, text: 'note' };
    case 'pick up': {
      const other = ids[s % (ids.length + 1)];
      const targets = [{ piece, part, ...(flag ? {} : { step: q % 4 === 0 ? null : step }) }];
      if (other !== undefined && q % 3 === 0) targets.push({ piece: other, part: null });
      return {
        do: act,
        targets,
        ...(r % 4 === 0 ? { anyway: s % 2 === 0 ? 'tried before' : ' ' } : {}),
        ...(q % 5 === 0 && session !== undefined ? { putDown: session.id } : {}),
      };
    }
    case 'take along':
      return { do: act, piece, part };
    case 'put down':
      if (flag) return { do: act };
      return q % 2 === 0 ? { do: act, piece } : { do: act, session: session?.id ?? 'none' };
    case 'next stamp':
    case 'first stroke':
    case 'next section':
    case 'done':
      return { do: act, piece, part };
    case 'stamp':
      return {
        do: act,
        piece,
        part,
        event: stampEvents[q % stampEvents.length]!,
        ...(flag ? { agent: 'A' } : {}),
      };
    case 'check':
      return { do: act, piece, part, finding: (['ready', 'not yet', 'trouble'] as const)[q % 3]! };
    case 'match pieces':
      return { do: act, piece, partner: ids[q % ids.length] ?? 'nobody' };
    case 'tell coat weight':
      return { do: act, piece, part, ...(flag ? { step } : {}), weight: coatWeights[q % 3]! };
    case 'explain lateness':
      return { do: act, piece, cause: lateCauses[q % 5]! };
    case 'read moisture':
      return {
        do: act,
        piece,
        part,
        step: flag ? step : null,
        ...(q % 3 === 0 ? {} : { wood: 2 + q * r }),
        ...(q % 3 === 1 ? {} : { untouched: 8 + s }),
      };
    case 'move stamp':
      return { do: act, piece, earlier: flag, ...(q % 2 === 0 ? { ms } : {}) };
    case 'start timer':
      return { do: act, label: 'clamps', ms, piece: flag ? piece : null };
    case 'close timer':
      return { do: act, timer: bench.timers[q % (bench.timers.length + 1)]?.id ?? 'none' };
    case 'mix pot': {
      const products = allSchedules.flatMap((each) => Object.values(each.products));
      return { do: act, product: products[q % products.length]! };
    }
    case 'wash out pot':
      return { do: act, pot: bench.pots[q % (bench.pots.length + 1)]?.id ?? 'none' };
    case 'move pot':
      return {
        do: act,
        pot: bench.pots.at(-1)?.id ?? 'none',
        earlier: flag,
        ...(q % 2 === 0 ? { ms } : {}),
      };
    case 'correct session': {
      const start = session === undefined ? now : session.start + (r - 5) * minute;
      return {
        do: act,
        session: session?.id ?? 'none',
        ...(q % 2 === 0 ? { start } : {}),
        ...(r % 2 === 0 ? { end: start + s * 3 * minute } : {}),
        ...(s % 3 === 0 ? { targets: [{ piece, part, step: flag ? step : null }] } : {}),
        ...(p % 4 === 0 ? { dropped: flag } : {}),
      };
    }
    case 'leave out of learning':
      return {
        do: act,
        piece,
        session: r % 2 === 0 ? null : (bench.sessions[s % bench.sessions.length]?.id ?? 'none'),
        leave: flag,
      };
    case 'import hours': {
      const row = { at: now - ms, piece: 'before', stepClass: 'strip', minutes: 1 + q } as const;
      const rows = [{ ...row, estimate: 1 + r }];
      return { do: act, file: 'hours.csv', fingerprint: String(s), rows };
    }
    case 'take out import':
      return { do: act, import: bench.imports?.at(-1)?.id ?? 'none' };
    case 'take back':
    case 'bring back':
      return { do: act };
    case 'shut up shop':
      return { do: act, answers: { rags: 'yes' }, backAt: flag ? now + hour : null };
    case 'deal with rags':
      return { do: act };
    case 'note clock step':
      return { do: act, byMs: ms };
  }
}

const partOf = (piece: Piece | undefined, pick: number): string | null => {
  if (piece === undefined || pick % 3 === 0) return null;
  return piece.parts[pick % (piece.parts.length + 1)]?.id ?? (pick === 11 ? 'no part' : null);
};

/** What one press did to the bench. */
export type Step = {
  readonly now: Instant;
  readonly intent: Intent;
  readonly outcome: Outcome;
  readonly before: Bench;
  readonly after: Bench;
  readonly facts: readonly BenchFact[];
};

/** Presses one key after another, and gives what each did. */
export function* pressAll(list: readonly Press[], hands: number): Generator<Step> {
  let facts: readonly BenchFact[] = [];
  let bench = foldBench(facts);
  let now = morning;
  for (const [index, each] of [...beginning(list), ...list].entries()) {
    now += each.wait;
    const intent = intentOf(bench, each, now);
    if (intent === null) continue;
    const group = `press-${index + 1}`;
    const context = contextAt(now, {
      group,
      hands,
      ...(each.ago === null ? {} : { at: now - each.ago }),
    });
    const outcome = decide(bench, intent, context);
    const before = bench;
    if (outcome.ok) {
      const by = intent.do === 'note clock step' ? 'clock' : 'person';
      facts = [...facts, ...headed(outcome.facts, group, now, by)];
      bench = foldBench(facts);
    }
    yield { now, intent, outcome, before, after: bench, facts };
  }
}

/** The bench after all presses, with its facts and the last instant. */
export function pressThrough(list: readonly Press[], hands = 1): Step {
  let last: Step | undefined;
  for (const step of pressAll(list, hands)) last = step;
  if (last === undefined) throw new Error('the beginning adds two pieces');
  return last;
}

/** What counts of a bench: all but the lists of what can be taken back. */
export const derived = ({ trail: _, groups: __, ...rest }: Bench): object => rest;
