import { describe, expect, test } from 'vitest';
import { decide, foldBench, type Intent } from '../../../src/tracker/bench/index.ts';
import { contextAt, given } from '../support/given-when-then.ts';
import { at } from '../support/instants.ts';
import { past, target } from '../support/past.ts';
import { step, twoCoats } from '../support/schedules.ts';

const { id: _, ...patch } = step('patch', 'patch veneer');
const bench = past()
  .added('press-1', twoCoats, { number: 1, name: 'Oak chest' })
  .added('press-2', twoCoats, { number: 2, name: 'Oak settle' })
  .added('press-3', twoCoats, { number: 3, name: 'Beech stool' })
  .told('piece-left-bench', { piece: 'press-3' });

/** Every intent that is about a piece. */
const about = (piece: string): readonly Intent[] => [
  { do: 'describe piece', piece, changes: { wood: 'hard' } },
  { do: 'name parts', piece, names: ['top'] },
  { do: 'insert step', piece, step: patch, before: null },
  { do: 'repeat step', piece, step: 'coat 1' },
  { do: 'move step', piece, step: 'coat 1', before: null },
  { do: 'skip step', piece, step: 'coat 1', skipped: true },
  { do: 'reword step', piece, step: 'coat 1', name: 'x' },
  { do: 'place hold', piece, reason: 'hinge', askAgain: null },
  { do: 'lift hold', piece },
  { do: 'take off bench', piece },
  { do: 'put back on bench', piece },
  { do: 'remove piece', piece },
  { do: 'write note', piece, step: null, text: 'x' },
  { do: 'pick up', targets: [{ piece, part: null }] },
  { do: 'put down', piece },
  { do: 'next stamp', piece, part: null },
  { do: 'first stroke', piece, part: null },
  { do: 'next section', piece, part: null },
  { do: 'done', piece, part: null },
  { do: 'stamp', piece, part: null, event: 'turned' },
  { do: 'check', piece, part: null, finding: 'ready' },
  { do: 'move stamp', piece, earlier: true },
  { do: 'start timer', label: 'clamps', ms: 60_000, piece },
];

describe('a piece that is none', () => {
  test.each(about('oak chst').map((intent) => [intent.do, intent] as const))(
    '%s offers the nearest names',
    (_name, intent) => {
      // Only what is on the bench or in the past is offered.
      given(bench.pickedUp('s', at('8:30'), [target('press-1')]))
        .when(intent, at('9:00'))
        .thenRefused(/: there is no piece "oak chst"\.$/, ['Oak chest']);
    },
  );

  test('also those that have left the bench', () => {
    given(bench)
      .when({ do: 'put back on bench', piece: 'beech stol' }, at('9:00'))
      .thenRefused(/no piece/, ['Beech stool']);
  });

  test('but none that was removed', () => {
    given(bench.told('piece-removed', { piece: 'press-3' }))
      .when({ do: 'put back on bench', piece: 'beech stol' }, at('9:00'))
      .thenRefused(/no piece/, []);
  });

  test('in a correction too', () => {
    given(bench.pickedUp('s', at('8:30'), [target('press-1')]))
      .when({ do: 'correct session', session: 's', targets: [target('oak settel')] }, at('9:00'))
      .thenRefused('Not corrected: there is no piece "oak settel".', ['Oak settle']);
  });
});

describe('a step that is none', () => {
  const piece = 'press-1';
  test.each<Intent>([
    { do: 'insert step', piece, step: patch, before: 'scuf 2' },
    { do: 'repeat step', piece, step: 'scuf 2' },
    { do: 'move step', piece, step: 'scuf 2', before: null },
    { do: 'move step', piece, step: 'coat 1', before: 'scuf 2' },
    { do: 'skip step', piece, step: 'scuf 2', skipped: true },
    { do: 'reword step', piece, step: 'scuf 2', name: 'x' },
    { do: 'write note', piece, step: 'scuf 2', text: 'x' },
    { do: 'pick up', targets: [{ piece, part: null, step: 'scuf 2' }] },
    { do: 'correct session', session: 's', targets: [target(piece, 'scuf 2')] },
  ])('$do offers the nearest names', (intent) => {
    given(bench.pickedUp('s', at('8:30'), [target('press-2')]))
      .when(intent, at('9:00'))
      .thenRefused(/: 1 Oak chest has no step "scuf 2"\.$/, ['scuff 2']);
  });
});

describe('a time that is still to come', () => {
  const others: readonly Intent[] = [
    { do: 'add piece', name: 'Box', schedule: twoCoats },
    { do: 'close timer', timer: 't' },
    { do: 'correct session', session: 's' },
    { do: 'shut up shop', answers: {}, backAt: null },
  ];

  test.each([...about('press-1'), ...others].map((intent) => [intent.do, intent] as const))(
    'is refused: %s',
    (_name, intent) => {
      given(bench.pickedUp('s', at('8:30'), [target('press-1')]))
        .when(intent, at('9:00'), { at: at('9:00') + 1 })
        .thenRefused(/: that time is still to come\. Give one that has passed\.$/);
    },
  );

  test('now has passed', () => {
    given(bench)
      .when({ do: 'first stroke', piece: 'press-1', part: null }, at('9:00'), { at: at('9:00') })
      .then({ kind: 'picked-up', body: {} }, { kind: 'stamped', body: {} });
  });

  test('no time at all is refused too', () => {
    given(bench)
      .when({ do: 'done', piece: 'press-1', part: null }, at('9:00'), { at: Number.NaN })
      .thenRefused(/^Not done: /);
  });
});

test('a refusal changes nothing: the same question gets the same answer', () => {
  const state = foldBench(bench.facts);
  const copy = foldBench(bench.facts);
  for (const intent of about('oak chst')) {
    const first = decide(state, intent, contextAt(at('9:00')));
    expect(decide(state, intent, contextAt(at('9:00')))).toEqual(first);
  }
  expect(state).toEqual(copy);
});
