import * as fc from 'fast-check';
import {
  coatWeights,
  findings,
  moistureSpots,
  overnightQuestions,
  woods,
  type BenchFact,
  type BenchFactBodies,
  type ConditionsFact,
  type FactHead,
  type PingFact,
  type PingFactBodies,
} from '../../src/tracker/bench/index.ts';
import {
  drivers,
  lateCauses,
  shapes,
  stepClasses,
  type Product,
  type Step,
} from '../../src/tracker/trade/index.ts';
import {
  milestones,
  stampEvents,
  type Edge,
  type Span,
  type StampChoice,
  type WindowRule,
} from '../../src/tracker/windows/index.ts';

/** Any text a person or another program could hand over, control characters and all. */
const text = fc.string({ unit: 'binary', maxLength: 12 });
const id = fc.string({ minLength: 1, maxLength: 8 });
/** JSON has no minus zero. */
const figure = fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value + 0);
const instant = fc.integer({ min: -8.64e15, max: 8.64e15 });
const orNull = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });
const few = <T>(arbitrary: fc.Arbitrary<T>) => fc.array(arbitrary, { maxLength: 3 });
const oneOf = <const T>(values: readonly T[]) => fc.constantFrom(...values);

const climate = fc.record({ tempC: figure, rh: figure });
const air = orNull(fc.record({ tempC: figure, rh: figure, readAt: instant }));
const day = fc
  .date({ min: new Date('0001-01-01'), max: new Date('9999-12-31'), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));
const chemistry = oneOf([
  'waterborne',
  'oxidative',
  'evaporative',
  'two-part',
  'moisture-cure',
  'glue',
  'reaction',
] as const);

const span: fc.Arbitrary<Span> = fc.record(
  {
    ms: figure,
    statedFor: climate,
    chemistry,
    may: oneOf(['grow', 'shrink'] as const),
    learnable: fc.boolean(),
  },
  { requiredKeys: ['ms'] },
);
const stampChoice: fc.Arbitrary<StampChoice> = fc.record(
  {
    events: few(oneOf(stampEvents)),
    agent: text,
    which: oneOf(['first', 'last'] as const),
    assume: fc.boolean(),
    until: few(oneOf(stampEvents)),
  },
  { requiredKeys: ['events', 'which'] },
);
const clockTime = fc
  .tuple(fc.nat(23), fc.nat(59))
  .map((figures) => figures.map((value) => String(value).padStart(2, '0')).join(':'));

const { edge } = fc.letrec<{ edge: Edge }>((tie) => ({
  edge: fc.oneof(
    { maxDepth: 3, withCrossShrink: true },
    fc.record(
      { kind: fc.constant('stamp' as const), stamp: stampChoice, plus: span },
      { requiredKeys: ['kind', 'stamp'] },
    ),
    fc.record(
      {
        kind: fc.constant('check' as const),
        finding: oneOf(['ready', 'not yet'] as const),
        plus: span,
      },
      { requiredKeys: ['kind', 'finding'] },
    ),
    fc.record({ kind: fc.constant('clock' as const), after: stampChoice, time: clockTime }),
    fc.record({ kind: fc.constant('beyond' as const), edge: tie('edge'), plus: span }),
    fc.record({ kind: oneOf(['earliest', 'latest'] as const), of: few(tie('edge')) }),
  ),
}));

const windowRule: fc.Arbitrary<WindowRule> = fc.record(
  {
    id,
    kind: oneOf(['chemical', 'coat', 'glue', 'cure', 'pot', 'timer'] as const),
    verb: text,
    milestone: oneOf(milestones),
    scope: oneOf(['step', 'pass', 'section'] as const),
    begins: stampChoice,
    stretches: few(
      fc.record(
        {
          from: edge,
          meaning: oneOf(['wait', 'go', 'go after work', 'keep off', 'late'] as const),
          loss: oneOf(['spoils', 'costs work', 'costs nothing'] as const),
          says: text,
        },
        { requiredKeys: ['meaning', 'loss'] },
      ),
    ),
    closedBy: fc.oneof(
      fc.record({ by: fc.constant('stamp' as const), stamp: stampChoice }),
      fc.record({ by: oneOf(['next pass', 'needing step', 'ready', 'nothing'] as const) }),
    ),
    notYetAdds: figure,
    gear: text,
  },
  { requiredKeys: ['id', 'kind', 'verb', 'scope', 'begins', 'stretches', 'closedBy'] },
);

const terms = {
  madeBefore: figure,
  madeSince: figure,
  wood: few(oneOf(['soft', 'hard', 'unknown'] as const)),
  answers: fc.dictionary(id, few(text), { maxKeys: 2 }),
};

const step: fc.Arbitrary<Step> = fc.record(
  {
    id,
    name: text,
    stepClass: oneOf(stepClasses),
    minutes: fc.record({ typical: figure, low: figure, high: figure }),
    driver: oneOf(drivers),
    setupMinutes: figure,
    product: text,
    passes: figure,
    stamps: few(
      fc.record(
        { event: oneOf(stampEvents), agent: text, says: text, perSection: fc.boolean() },
        { requiredKeys: ['event', 'says'] },
      ),
    ),
    windows: few(windowRule),
    needs: few(oneOf(milestones)),
    grit: figure,
    dusty: fc.boolean(),
    cleanAir: fc.boolean(),
    fumes: fc.boolean(),
    untilRight: fc.boolean(),
    cautions: few(text),
    onlyIf: fc.record(
      { ...terms, any: few(fc.record(terms, { requiredKeys: [] })) },
      { requiredKeys: [] },
    ),
    asks: fc.record({ question: text, answers: few(fc.record({ id, says: text })) }),
    minutesTimes: fc.dictionary(id, fc.dictionary(id, figure, { maxKeys: 2 }), { maxKeys: 2 }),
    trialFor: few(id),
  },
  {
    requiredKeys: [
      'id',
      'name',
      'stepClass',
      'minutes',
      'driver',
      'setupMinutes',
      'stamps',
      'windows',
      'needs',
      'cautions',
    ],
  },
);

const product: fc.Arbitrary<Product> = fc.record(
  {
    id,
    name: text,
    productClass: text,
    chemistry,
    statedFor: climate,
    windows: few(windowRule),
    cautions: few(text),
    deadly: fc.boolean(),
    byWood: fc.record({ soft: few(windowRule), hard: few(windowRule) }, { requiredKeys: [] }),
    can: fc.record(
      { batch: text, openedOn: day, keepsTill: day, onceOpened: figure },
      { requiredKeys: [] },
    ),
    selfHeatingRags: fc.boolean(),
  },
  { requiredKeys: ['id', 'name', 'productClass', 'chemistry', 'statedFor', 'windows', 'cautions'] },
);

const target = fc.record({ piece: id, part: orNull(id), step: orNull(id) });
const expectation = fc.record({
  minutes: figure,
  low: figure,
  high: figure,
  chance: figure,
  model: text,
});

const benchBodies: {
  readonly [Kind in keyof BenchFactBodies]: fc.Arbitrary<BenchFactBodies[Kind]>;
} = {
  'piece-added': fc.record({
    piece: id,
    number: fc.integer(),
    name: text,
    schedule: fc.record({ id, name: text, hash: text }),
    steps: few(step),
    products: fc.dictionary(id, product, { maxKeys: 2 }),
  }),
  'piece-described': fc.record({
    piece: id,
    changes: fc.record(
      {
        name: text,
        kind: orNull(text),
        wood: orNull(oneOf(woods)),
        areaM2: orNull(figure),
        profile: orNull(fc.record({ shape: oneOf(shapes), share: figure })),
        fittings: orNull(figure),
        joints: orNull(figure),
        drawers: orNull(figure),
        yearMade: orNull(figure),
        promised: orNull(day),
      },
      { requiredKeys: [] },
    ),
  }),
  'parts-named': fc.record({ piece: id, parts: few(fc.record({ id, name: text })) }),
  'step-inserted': fc.record(
    { piece: id, step, before: orNull(id), copyOf: id },
    { requiredKeys: ['piece', 'step', 'before'] },
  ),
  'step-moved': fc.record({ piece: id, step: id, before: orNull(id) }),
  'step-skipped': fc.record({ piece: id, step: id, skipped: fc.boolean() }),
  'step-reworded': fc.record({ piece: id, step: id, name: text }),
  'question-answered': fc.record({ piece: id, step: id, answer: orNull(text) }),
  'trial-waived': fc.record({ piece: id, step: id, reason: text }),
  'product-chosen': fc.record({ piece: id, step: id, key: text, product }),
  'hold-placed': fc.record({ piece: id, reason: text, askAgain: orNull(day) }),
  'hold-lifted': fc.record({ piece: id }),
  'carried-in': fc.record({ piece: id }),
  'piece-left-bench': fc.record({ piece: id }),
  'piece-put-back': fc.record({ piece: id, number: fc.integer() }),
  'piece-removed': fc.record({ piece: id }),
  'match-told': fc.record({ piece: id, partner: id, name: text, matches: fc.boolean() }),
  'kept-from-learning': fc.record({ piece: id, session: orNull(id), kept: fc.boolean() }),
  'hours-imported': fc.record({
    import: id,
    file: text,
    fingerprint: text,
    rows: few(
      fc.record({
        at: instant,
        piece: text,
        stepClass: oneOf(stepClasses),
        minutes: figure,
        estimate: figure,
      }),
    ),
  }),
  'import-taken-out': fc.record({ import: id }),
  'note-written': fc.record({ piece: id, step: orNull(id), text }),
  'picked-up': fc.record({ session: id, targets: few(target), hand: fc.integer() }),
  'put-down': fc.record({ session: id }),
  'targets-changed': fc.record({ session: id, targets: few(target) }),
  stamped: fc.record(
    {
      piece: id,
      part: orNull(id),
      step: id,
      event: oneOf(stampEvents),
      agent: orNull(text),
      pass: fc.integer(),
      section: orNull(fc.integer()),
      pot: id,
      air,
    },
    { requiredKeys: ['piece', 'part', 'step', 'event', 'agent', 'pass', 'section', 'air'] },
  ),
  'step-done': fc.record({
    piece: id,
    part: orNull(id),
    step: id,
    pass: fc.integer(),
    expectation,
    air,
  }),
  checked: fc.record(
    {
      piece: id,
      part: orNull(id),
      step: id,
      window: text,
      finding: oneOf(findings),
      shown: text,
      air,
    },
    { requiredKeys: ['piece', 'part', 'step', 'window', 'finding', 'air'] },
  ),
  'coat-weighed': fc.record({
    piece: id,
    part: orNull(id),
    step: id,
    pass: fc.integer(),
    weight: oneOf(coatWeights),
  }),
  'lateness-explained': fc.record({ piece: id, check: id, cause: oneOf(lateCauses) }),
  'moisture-read': fc.record({
    piece: id,
    part: orNull(id),
    step: orNull(id),
    spot: oneOf(moistureSpots),
    percent: figure,
    air,
  }),
  'timer-started': fc.record({ timer: id, piece: orNull(id), label: text, ms: figure }),
  'timer-closed': fc.record({ timer: id }),
  'pot-mixed': fc.record({ pot: id, letter: text, product }),
  'pot-washed': fc.record({ pot: id }),
  'stamp-moved': fc.record({ fact: id, to: instant }),
  'session-corrected': fc.record({
    session: id,
    start: instant,
    end: orNull(instant),
    targets: few(target),
    dropped: fc.boolean(),
  }),
  'group-withdrawn': fc.record({ withdrawn: id }),
  'group-restored': fc.record({ restored: id }),
  'rags-dealt-with': fc.record({}),
  'shop-shut': fc.record({
    answers: fc
      .uniqueArray(oneOf(overnightQuestions))
      .chain((asked) =>
        fc.record(
          Object.fromEntries(
            asked.map((question) => [question, oneOf(['yes', 'no', 'does not apply'] as const)]),
          ),
        ),
      ),
    backAt: orNull(instant),
  }),
  'clock-stepped': fc.record({ byMs: figure }),
};

const pingBodies: { readonly [Kind in keyof PingFactBodies]: fc.Arbitrary<PingFactBodies[Kind]> } =
  {
    'ping-claimed': fc.record({ pings: few(text), text, loud: fc.boolean(), piece: orNull(id) }),
    'ping-sent': fc.record({ claim: id, ways: few(text), failures: few(text) }),
    'ping-acknowledged': fc.record({ claim: id }),
  };

const head: fc.Arbitrary<FactHead> = fc.record({
  id: fc.uuid(),
  group: id,
  at: instant,
  told: instant,
  by: oneOf(['person', 'script', 'clock'] as const),
  uptimeMs: orNull(figure),
  bootId: orNull(text),
});

const factsWith = <Fact>(
  bodies: Readonly<Record<string, fc.Arbitrary<unknown>>>,
): readonly fc.Arbitrary<Fact>[] =>
  Object.entries(bodies).map(([kind, body]) =>
    fc.tuple(head, body).map(([known, says]) => ({ ...known, kind, body: says }) as Fact),
  );

/** One arbitrary for each kind of fact. */
export const benchFactsByKind = factsWith<BenchFact>(benchBodies);
export const anyBenchFact = fc.oneof(...benchFactsByKind);
export const anyConditionsFact = fc.oneof(
  ...factsWith<ConditionsFact>({
    'reading-taken': fc.record(
      { tempC: figure, rh: figure, surfaceC: figure },
      { requiredKeys: ['tempC', 'rh'] },
    ),
  }),
);
export const anyPingFact = fc.oneof(...factsWith<PingFact>(pingBodies));
