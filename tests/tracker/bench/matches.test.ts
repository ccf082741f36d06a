import { expect, test } from 'vitest';
import {
  dwellTarget,
  foldBench,
  matchFindings,
  takeBackName,
  windowsOf,
  type MatchDifference,
} from '../../../src/tracker/bench/index.ts';
import { minute } from '../../../src/tracker/time/index.ts';
import type { FinishingSchedule } from '../../../src/tracker/trade/index.ts';
import { given } from '../support/given-when-then.ts';
import { at } from '../support/instants.ts';
import { past, type Past } from '../support/past.ts';
import { bleachB, clearCoat } from '../support/rules.ts';
import { product, schedule, step } from '../support/schedules.ts';
import { labelSense } from '../support/sense.ts';

const coat = { product: 'clear' } as const;
const plan = (id: string, clear = 'clear'): FinishingSchedule =>
  schedule(
    id,
    [
      step('bleach', 'bleach', {
        product: 'two-part',
        stamps: [
          { event: 'first-stroke', agent: 'A', says: 'A on' },
          { event: 'first-stroke', agent: 'B', says: 'B on' },
        ],
      }),
      step('stain', 'stain'),
      step('glue', 'reglue'),
      step('coat 1', 'coat, brushed', coat),
      step('coat 2', 'coat, brushed', coat),
      step('coat 3', 'coat, brushed', coat),
    ],
    [
      product('two-part', 'reaction', [bleachB]),
      { ...product('clear', 'waterborne', clearCoat), name: clear },
    ],
  );

const pair = past()
  .added('four', plan('chairs'), { number: 4, name: 'Oak chair' })
  .added('five', plan('chairs'), { number: 5, name: 'Oak chair, the other' });
const told = (before: Past): Past =>
  before
    .told(
      'match-told',
      { piece: 'five', partner: 'four', name: 'Oak chair', matches: true },
      { group: 'pair' },
    )
    .told(
      'match-told',
      { piece: 'four', partner: 'five', name: 'Oak chair, the other', matches: true },
      { group: 'pair' },
    );

/** A and then B on a chair, that many minutes apart. */
const bleached = (before: Past, piece: string, minutes: number): Past =>
  before
    .stamped(piece, 'bleach', 'first-stroke', at('9:00'), { agent: 'A' })
    .stamped(piece, 'bleach', 'first-stroke', at('9:00') + minutes * minute, { agent: 'B' })
    .done(piece, 'bleach', at('9:30'));

function differences(before: Past, piece = 'five'): readonly MatchDifference[] {
  const bench = foldBench(told(before).facts);
  const found = bench.pieces.get(piece);
  if (found === undefined) throw new Error('no such piece');
  return matchFindings(bench, found, labelSense).flatMap((each) => each.differences);
}

const match = { do: 'match pieces', piece: 'five', partner: 'four' } as const;

test('is told of both, and undone by telling it again', () => {
  given(pair)
    .when(match, at('9:00'))
    .then(
      {
        kind: 'match-told',
        body: { piece: 'five', partner: 'four', name: 'Oak chair', matches: true },
      },
      { kind: 'match-told', body: { piece: 'four', partner: 'five', matches: true } },
    );
  given(pair).when(match, at('9:00')).thenSays('5 Oak chair, the other matches 4 Oak chair');
  given(told(pair))
    .when({ do: 'match pieces', piece: 'four', partner: 'five' }, at('9:00'))
    .thenSays('4 Oak chair no longer matches 5 Oak chair, the other');
  expect(takeBackName(foldBench(told(pair).facts))).toBe(
    '5 Oak chair, the other matches 4 Oak chair',
  );
});

test('a piece matches another one that is on the bench', () => {
  given(pair)
    .when({ ...match, partner: 'five' }, at('9:00'))
    .thenRefused('Not matched: 5 Oak chair, the other can only match another piece.');
  given(pair)
    .when({ ...match, partner: 'six' }, at('9:00'))
    .thenRefused(/^Not matched: there is no piece "six"/);
});

test('nothing differs while one is only behind the other', () => {
  const ahead = bleached(pair, 'four', 6)
    .done('four', 'stain', at('11:00'))
    .done('four', 'coat 1', at('12:00'));
  expect(differences(ahead)).toEqual([]);
  expect(differences(ahead, 'four')).toEqual([]);
});

test('A stood longer here; a minute more or less is alike', () => {
  const both = bleached(bleached(pair, 'four', 6), 'five', 11);
  expect(differences(both)).toEqual([
    { what: 'dwell', step: 'bleach', stood: 'A', there: 6 * minute, here: 11 * minute },
  ]);
  expect(differences(bleached(bleached(pair, 'four', 6), 'five', 7))).toEqual([]);
});

test('a coat that is neither on nor planned is missing; one that is planned is not', () => {
  const coated = ['coat 1', 'coat 2', 'coat 3'].reduce(
    (before, id, index) => before.done('four', id, at(`${10 + index}:00`)),
    pair,
  );
  expect(differences(coated)).toEqual([]);
  const skipped = coated.told('step-skipped', { piece: 'five', step: 'coat 3', skipped: true });
  expect(differences(skipped)).toEqual([
    { what: 'coats', product: 'clear', there: 3, here: 2, toCome: false },
  ]);
  expect(differences(skipped, 'four')).toEqual([
    { what: 'coats', product: 'clear', there: 2, here: 3, toCome: true },
  ]);
});

test('another product for the same coat is said once, not as coats too', () => {
  const other = past()
    .added('four', plan('chairs'), { number: 4 })
    .added('five', plan('chairs', 'shellac'), { number: 5 })
    .done('four', 'coat 1', at('10:00'));
  expect(differences(other)).toEqual([
    { what: 'product', step: 'coat 1', there: 'clear', here: 'shellac' },
  ]);
});

test('a step that was skipped, or put in, on one of them', () => {
  const extra = pair
    .told('step-inserted', {
      piece: 'four',
      step: step('second', 'bleach', { name: 'second bleach' }),
      before: 'stain',
    })
    .done('four', 'second', at('9:50'))
    .done('four', 'stain', at('10:00'))
    .done('four', 'glue', at('10:10'))
    .told('step-skipped', { piece: 'five', step: 'stain', skipped: true });
  expect(differences(extra)).toEqual([
    { what: 'step', step: 'stain', lacks: 'here', skipped: true },
    { what: 'step', step: 'second bleach', lacks: 'here', skipped: false },
  ]);
  expect(differences(extra, 'four')).toContainEqual({
    what: 'step',
    step: 'second bleach',
    lacks: 'there',
    skipped: false,
  });
  // The same put in on both is the same, whatever its id.
  const both = extra.told('step-inserted', {
    piece: 'five',
    step: step('2nd', 'bleach', { name: 'Second bleach ' }),
    before: null,
  });
  expect(differences(both).filter((each) => each.what === 'step')).toHaveLength(1);
});

test('rounds differ once both are through', () => {
  const rounds = pair
    .stamped('four', 'stain', 'first-stroke', at('9:00'))
    .stamped('four', 'stain', 'first-stroke', at('9:20'), { pass: 2 })
    .done('four', 'stain', at('9:30'), { pass: 2 });
  expect(differences(rounds)).toEqual([]);
  expect(differences(rounds.done('five', 'stain', at('10:00')))).toEqual([
    { what: 'rounds', step: 'stain', there: 2, here: 1 },
  ]);
});

test("while A stands here its target is the partner's, as long as the label allows that", () => {
  const running = (minutes: number): ReturnType<typeof dwellTarget> => {
    const facts = told(bleached(pair, 'four', minutes)).stamped(
      'five',
      'bleach',
      'first-stroke',
      at('14:00'),
      { agent: 'A' },
    ).facts;
    const bench = foldBench(facts);
    const five = bench.pieces.get('five');
    if (five === undefined) throw new Error('no five');
    const [window] = windowsOf(bench, five, labelSense);
    return window === undefined ? null : dwellTarget(bench, five, window, at('14:02'), labelSense);
  };
  expect(running(6)).toMatchObject({
    ms: 6 * minute,
    at: at('14:06'),
    pastLabel: false,
    partner: { id: 'four' },
  });
  expect(running(40)?.pastLabel).toBe(true);
});

test('a partner that is gone is named and compared no more', () => {
  const gone = told(pair).told('piece-removed', { piece: 'four' });
  const bench = foldBench(gone.facts);
  const five = bench.pieces.get('five');
  if (five === undefined) throw new Error('no five');
  expect(matchFindings(bench, five, labelSense)).toEqual([
    { name: 'Oak chair', partner: null, differences: [] },
  ]);
});
