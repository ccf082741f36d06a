import { expect, test } from 'vitest';
import {
  foldBench,
  moistureFindings,
  type MoistureFinding,
  type MoistureSpot,
} from '../../../src/tracker/bench/index.ts';
import { hour } from '../../../src/tracker/time/index.ts';
import { given } from '../support/given-when-then.ts';
import { at } from '../support/instants.ts';
import { past, type Past } from '../support/past.ts';
import { schedule, step } from '../support/schedules.ts';

const bleached = schedule('bleached', [
  step('bleach', 'bleach'),
  step('rinse', 'rinse, neutralise'),
  step('sand', 'sand after bleach'),
]);
const table = past().added('table', bleached, { name: 'Side table' });
const rinsed = table.done('table', 'bleach', at('8:30')).done('table', 'rinse', at('9:00'));
const air = { tempC: 20, rh: 50, readAt: at('8:00') };

const reads = (
  before: Past,
  spot: MoistureSpot,
  percent: number,
  when: string,
  more: { readonly part?: string; readonly air?: typeof air } = {},
): Past =>
  before.told(
    'moisture-read',
    { piece: 'table', part: more.part ?? null, step: null, spot, percent, air: more.air ?? null },
    { at: at(when) },
  );

function findings(told: Past, now: typeof air | null = null): readonly MoistureFinding[] {
  const piece = foldBench(told.facts).pieces.get('table');
  if (piece === undefined) throw new Error('no table');
  return moistureFindings(piece, now);
}

test('one press may tell of both spots; the air as last read is kept with them', () => {
  const intent = { do: 'read moisture', piece: 'table', part: null, wood: 12.5 } as const;
  given(table)
    .when({ ...intent, untouched: 9 }, at('9:00'), { air })
    .then(
      { kind: 'moisture-read', body: { spot: 'untouched', percent: 9, air } },
      { kind: 'moisture-read', body: { spot: 'wood', percent: 12.5, air } },
    );
  given(table)
    .when({ ...intent, untouched: 9 }, at('9:00'))
    .thenSays('wood 12.5 %, untouched 9 % on 1 Side table: 3.5 over what is at rest');
  given(table)
    .when({ ...intent, wood: 10, untouched: 9 }, at('9:00'))
    .thenSays('wood 10 %, untouched 9 % on 1 Side table: dry enough to coat');
  given(table).when(intent, at('9:00')).thenSays('wood 12.5 % on 1 Side table');
});

test.each([
  [{ wood: 3 }, /^Not noted: 3 % is drier than a meter can tell: 4 to 60\.$/],
  [{ wood: 12, untouched: 75 }, /^Not noted: 75 % would be dripping wet: 4 to 60\.$/],
  [{}, /no figure was given/],
  [{ wood: 12, step: 'gone' }, /no step "gone"/],
  [{ wood: 12, part: 'top' }, /no part "top"/],
])('refuses %j', (more, says) => {
  given(table)
    .when({ do: 'read moisture', piece: 'table', part: null, ...more }, at('9:00'))
    .thenRefused(says);
});

test('within one point of an untouched spot is dry enough, whatever the air says', () => {
  const untouched = reads(table, 'untouched', 9, '9:00');
  const wet = findings(reads(untouched, 'wood', 10.1, '9:00'), air)[0];
  expect(wet).toMatchObject({ isDryEnough: false, reference: { by: 'untouched', percent: 9 } });
  expect(wet?.over).toBeCloseTo(1.1, 9);
  expect(findings(reads(untouched, 'wood', 10, '9:00'))[0]?.isDryEnough).toBe(true);
});

test('without an untouched spot the air decides, at 9.27 % for 20 C and 50 %', () => {
  const found = findings(reads(table, 'wood', 10.2, '9:00', { air }))[0];
  expect(found).toMatchObject({ isDryEnough: true, reference: { by: 'air', air } });
  expect(found?.reference?.percent).toBeCloseTo(9.27, 2);
  // Where it was not known when the meter was read, as it is known now.
  expect(findings(reads(table, 'wood', 12, '9:00'), air)[0]).toMatchObject({
    isDryEnough: false,
    reference: { by: 'air' },
  });
});

test('with neither it says nothing', () => {
  expect(findings(reads(table, 'wood', 10, '9:00'))).toMatchObject([
    { reference: null, over: null, isDryEnough: null, trend: null },
  ]);
  expect(findings(reads(table, 'untouched', 9, '9:00'))).toEqual([]);
});

test('salts of a bleach or rinse make it read high, not those of work after the reading', () => {
  const read = reads(rinsed, 'wood', 12, '12:00', { air });
  expect(findings(read)[0]?.saltsFrom?.id).toBe('rinse');
  expect(findings(reads(table, 'wood', 12, '8:00'))[0]?.saltsFrom).toBeNull();
});

test('wetted since, a reading counts no more', () => {
  const read = reads(reads(table, 'untouched', 9, '8:00'), 'wood', 9.5, '8:10');
  expect(findings(read)[0]).toMatchObject({ isDryEnough: true, wettedBy: null });
  expect(findings(read.done('table', 'rinse', at('9:00')))[0]).toMatchObject({
    isDryEnough: null,
    trend: null,
    wettedBy: { id: 'rinse' },
  });
});

test('two readings say when: one time constant between them takes as long again for the same share', () => {
  // 9 + 8 falls to 9 + 4 in 10 hours, so 9 + 1 is two halvings later.
  const first = reads(reads(rinsed, 'untouched', 9, '9:00'), 'wood', 17, '10:00');
  const found = findings(reads(first, 'wood', 13, '20:00'))[0];
  expect(found?.trend).toMatchObject({ is: 'falling', since: { percent: 17 } });
  if (found?.trend?.is !== 'falling') throw new Error('it falls');
  const { at: likely, earliest, latest } = found.trend;
  expect(likely).toBeCloseTo(at('40:00'), -3);
  expect(earliest).toBeGreaterThan(at('20:00'));
  expect(earliest).toBeLessThan(likely - hour);
  expect(latest).toBeGreaterThan(likely + hour);
});

test('readings within the error of the meter have no latest', () => {
  const first = reads(reads(table, 'untouched', 9, '9:00'), 'wood', 13.5, '10:00');
  const found = findings(reads(first, 'wood', 13, '20:00'))[0];
  expect(found?.trend).toMatchObject({ is: 'falling', latest: null });
});

test('what does not fall is said', () => {
  const first = reads(reads(table, 'untouched', 9, '9:00'), 'wood', 13, '10:00');
  for (const percent of [13, 14])
    expect(findings(reads(first, 'wood', percent, '20:00'))[0]?.trend).toMatchObject({
      is: 'not falling',
      since: { percent: 13 },
    });
});

test('a reading from before the rinse is no beginning of its drying', () => {
  const before = reads(reads(table, 'untouched', 9, '7:50'), 'wood', 20, '8:00');
  const wetted = before.done('table', 'bleach', at('8:30')).done('table', 'rinse', at('9:00'));
  expect(findings(reads(wetted, 'wood', 15, '20:00'))[0]?.trend).toBeNull();
});

test('each part has a finding of its own, with an untouched spot anywhere on the piece', () => {
  const parts = table.parts('table', 'top', 'case');
  const read = reads(
    reads(reads(parts, 'untouched', 9, '8:00', { part: 'case' }), 'wood', 14, '9:00', {
      part: 'top',
    }),
    'wood',
    9,
    '9:00',
    { part: 'case' },
  );
  expect(findings(read).map(({ part, isDryEnough }) => [part, isDryEnough])).toEqual([
    ['top', false],
    ['case', true],
  ]);
});

test('is taken back as one deed', () => {
  const both = table
    .told(
      'moisture-read',
      { piece: 'table', part: null, step: null, spot: 'untouched', percent: 9, air: null },
      { group: 'meter' },
    )
    .told(
      'moisture-read',
      { piece: 'table', part: null, step: null, spot: 'wood', percent: 9, air: null },
      { group: 'meter' },
    );
  given(both)
    .when({ do: 'take back' }, at('9:00'))
    .thenSays('taken back: moisture of 1 Side table');
});
