import { expect, test } from 'vitest';
import {
  bringBackName,
  canBeTried,
  currentStep,
  plainStep,
  standingOf,
} from '../../../src/tracker/bench/index.ts';
import { hour, minute } from '../../../src/tracker/time/index.ts';
import { opensAt, type WindowKind } from '../../../src/tracker/windows/index.ts';
import {
  remedySteps,
  stepClasses,
  troublesTried,
  usualStep,
  type Step,
  type StepClass,
  trialWindow,
} from '../../../src/tracker/trade/index.ts';
import { benchBodies } from '../../../src/persist/schemas/bench-facts.ts';
import { at, Facts, product, recoat, step } from '../../views/support/bench-of.ts';
import { FakePort } from '../../views/support/fake-port.ts';

const afterCoat = '24 14:00';

/** A stool with its second coat drying, all of it or its first pass, and a scuff and a third coat to come. */
function drying(isDone = true): FakePort {
  const coat = { stepClass: 'coat, brushed', product: 'clear' } as const;
  const facts = new Facts()
    .piece(
      '24 08:00',
      3,
      'Beech stool',
      [
        step('coat2', 'clear coat 2', { ...coat, passes: 1 }),
        step('scuff', 'scuff 400', { stepClass: 'scuff', needs: ['recoat'] }),
        step('coat3', 'clear coat 3', { ...coat, needs: ['recoat'] }),
      ],
      [product('clear', [recoat(2 * hour, 12 * hour)])],
    )
    .stamp('24 10:00', 3, 'coat2', 'first-stroke');
  if (isDone) facts.done('24 10:20', 3, 'coat2');
  else facts.stamp('24 10:20', 3, 'coat2', 'last-stroke');
  return new FakePort({ now: at(afterCoat), facts: facts.list });
}

/** What is offered where a window of a kind was tried, on a step of a class. */
const troublesOf = (kind: WindowKind, stepClass: StepClass = 'coat, brushed') =>
  troublesTried({ id: 'tried', kind }, stepClass);

const runs = troublesOf('coat').find(({ id }) => id === 'runs');

function troubled(port: FakePort, remedies: readonly Omit<Step, 'id'>[]) {
  return port.act({
    do: 'check',
    piece: 'p3',
    part: null,
    finding: 'trouble',
    shown: 'runs, sags',
    remedies,
  });
}

const remediesFor = (port: FakePort): readonly Omit<Step, 'id'>[] => {
  const coat = port.piece('p3').steps.find(({ id }) => id === 'coat2');
  if (coat === undefined || runs === undefined) throw new Error('no coat, or no such trouble');
  return remedySteps(runs, plainStep(coat));
};

test('trouble and its remedies are one deed: noted, put in behind the coat, and taken back together', () => {
  const port = drying();
  const reply = troubled(port, remediesFor(port));
  expect(reply).toMatchObject({
    ok: true,
    says: 'trouble, clear coat 2 on 3 Beech stool; 2 steps put in',
  });
  expect(port.steps('p3')).toEqual([
    'clear coat 2',
    'level runs with 320 on a block',
    'clear coat 2, again, thinner',
    'scuff 400',
    'clear coat 3',
  ]);
  expect(port.piece('p3').checks.map(({ finding, shown }) => [finding, shown])).toEqual([
    ['trouble', 'runs, sags'],
  ]);
  expect(currentStep(port.piece('p3'), null)?.name).toBe('level runs with 320 on a block');
  expect(port.act({ do: 'take back' })).toMatchObject({
    ok: true,
    says: 'taken back: trouble, clear coat 2 on 3 Beech stool',
  });
  expect(port.steps('p3')).toEqual(['clear coat 2', 'scuff 400', 'clear coat 3']);
  expect(port.piece('p3').checks).toEqual([]);
  expect(bringBackName(port.bench)).toBe('trouble, clear coat 2 on 3 Beech stool');
  port.act({ do: 'bring back' });
  expect(port.steps('p3')).toHaveLength(5);
});

test('trouble that shows before a step is done puts its remedies behind that step as well', () => {
  const port = drying(false);
  troubled(port, remediesFor(port));
  expect(port.steps('p3').slice(0, 2)).toEqual(['clear coat 2', 'level runs with 320 on a block']);
});

test('a coat put on once more is a coat like the first: same product, own windows, own id', () => {
  const port = drying();
  troubled(port, remediesFor(port));
  const [first, levelled, second] = port.piece('p3').steps;
  expect(second).toMatchObject({ product: 'clear', stepClass: 'coat, brushed', skipped: false });
  expect(new Set(port.piece('p3').steps.map(({ id }) => id)).size).toBe(5);
  expect(levelled).toMatchObject({ stepClass: 'scuff', grit: 320, dusty: true });
  port.wait(hour);
  port.act({ do: 'done', piece: 'p3', part: null });
  port.wait(minute);
  port.act({ do: 'pick up', targets: [{ piece: 'p3', part: null }] });
  port.act({ do: 'done', piece: 'p3', part: null });
  const standing = standingOf(port.bench, port.piece('p3'), port.now, port.snapshot().sense);
  expect(standing.windows.filter(canBeTried).map(({ subject }) => subject.stepId)).toContain(
    second?.id,
  );
  expect(first?.id).toBe('coat2');
});

/** Every list that is offered anywhere. */
const lists = [
  troublesOf('coat'),
  troublesOf('coat', 'stain'),
  troublesOf('coat', 'bleach'),
  troublesOf('glue'),
  troublesOf('chemical'),
  troublesTried({ ...recoat(hour, null), id: trialWindow }, 'bleach'),
];

test('the usual names of trouble are all there', () => {
  const names = lists.flat().map(({ name }) => name);
  for (const word of [
    'runs',
    'nibs',
    'blush',
    'bleed',
    'fisheye',
    'wrinkle',
    'blotch',
    'still tacky',
  ])
    expect(names.join('; ')).toContain(word);
});

test('a remedy that is a wait keeps the next one waiting, and can itself be tried', () => {
  const port = drying();
  const blush = troublesOf('coat').find(({ id }) => id === 'blush');
  const [coat] = port.piece('p3').steps;
  if (coat === undefined || blush === undefined) throw new Error('no coat, or no such trouble');
  troubled(port, remedySteps(blush, plainStep(coat)));
  port.wait(minute);
  port.act({ do: 'done', piece: 'p3', part: null });
  const opening = () => {
    const { piece, snapshot, now } = {
      ...port,
      piece: port.piece('p3'),
      snapshot: port.snapshot(),
    };
    const { window } = standingOf(port.bench, piece, now, snapshot.sense);
    return window === null ? null : [window.rule.verb, opensAt(window)];
  };
  const left = port.now;
  expect(opening()).toEqual(['look again', left + 24 * hour]);
  port.wait(24 * hour);
  port.act({ do: 'check', piece: 'p3', part: null, finding: 'not yet' });
  expect(opening()).toEqual(['look again', left + 36 * hour]);
  expect(currentStep(port.piece('p3'), null)?.name).toMatch(/^look again/);
});

test('every remedy can be put in, and written to the disk', () => {
  for (const list of lists) {
    for (const trouble of list) {
      const port = drying();
      const coat = port.piece('p3').steps[0];
      if (coat === undefined) throw new Error('no coat');
      const steps = remedySteps(trouble, plainStep(coat));
      expect(troubled(port, steps).ok, trouble.name).toBe(true);
      expect(port.steps('p3')).toHaveLength(3 + steps.length);
      for (const each of steps) {
        const body = { piece: 'p3', step: { ...each, id: 'new' }, before: null };
        expect(benchBodies['step-inserted']().safeParse(body).error, each.name).toBeUndefined();
      }
    }
  }
});

test('a second trouble with the same coat does not pile up words on its name', () => {
  const port = drying();
  const [coat] = port.piece('p3').steps;
  if (coat === undefined || runs === undefined) throw new Error('no coat, or no such trouble');
  const once = remedySteps(runs, plainStep(coat))[1];
  if (once === undefined) throw new Error('the remedy has two steps');
  expect(remedySteps(runs, once)[1]?.name).toBe('clear coat 2, again, thinner');
});

test.each([
  ['without a name', { name: '  ' }, 'Not noted: a step needs a name.'],
  [
    'with a product that the piece does not carry',
    { product: 'claer' },
    'Not noted: 3 Beech stool has no product "claer".',
  ],
])('a remedy %s changes nothing', (_, wrong, says) => {
  const port = drying();
  const good = usualStep('scuff 320', 'scuff');
  expect(troubled(port, [good, { ...good, ...wrong }])).toMatchObject({ ok: false, says });
  expect(port.steps('p3')).toHaveLength(3);
  expect(port.piece('p3').checks).toEqual([]);
});

test('only trouble has remedies', () => {
  const port = drying();
  const reply = port.act({
    do: 'check',
    piece: 'p3',
    part: null,
    finding: 'ready',
    remedies: [usualStep('scuff 320', 'scuff')],
  });
  expect(reply).toMatchObject({ ok: false, says: 'Not noted: only trouble has remedies.' });
});

test('steps of no schedule have minutes in order, and dusty ones say so', () => {
  for (const stepClass of stepClasses) {
    const { minutes, setupMinutes, dusty, cautions } = usualStep('anything', stepClass);
    expect(minutes.low).toBeGreaterThan(0);
    expect(minutes.low).toBeLessThan(minutes.typical);
    expect(minutes.typical).toBeLessThan(minutes.high);
    expect(setupMinutes).toBeGreaterThanOrEqual(0);
    if (dusty === true) expect(cautions.join(' ')).toMatch(/mask/);
  }
  expect(usualStep('sand 150', 'sand bare, next grit').grit).toBe(150);
  expect(usualStep('sand 2 doors', 'sand bare, next grit').grit).toBeUndefined();
});

test('no remedy promises that a coat is good', () => {
  const words = lists
    .flat()
    .flatMap(({ name, remedy, steps }) => [name, remedy, JSON.stringify(steps)])
    .join(' ');
  expect(words).not.toMatch(/\bsafe|\bready\b/i);
});

test.each(['clean', 'strip', 'bleach', 'rinse, neutralise'] as const)(
  'wood that dries after %s is offered no troubles of a coat',
  (stepClass) => {
    const names = troublesOf('coat', stepClass).map(({ name }) => name);
    expect(names.join()).not.toMatch(/runs|nibs|blush|fisheye|wrinkle/);
    expect(names).toContain('white salts, crust');
    expect(names.at(-1)).toBe('none of these');
  },
);
