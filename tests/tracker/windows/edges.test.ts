import { describe, expect, test } from 'vitest';
import { hour, minute } from '../../../src/tracker/time/index.ts';
import {
  placeEdge,
  workOutWindow,
  type Edge,
  type Happenings,
  type Stretch,
  type WindowRule,
} from '../../../src/tracker/windows/index.ts';
import { at } from '../support/instants.ts';
import {
  after,
  earliestOf,
  first,
  foundNotYet,
  foundReady,
  last,
  latestOf,
  of,
} from '../support/rules.ts';
import { labelSense } from '../support/sense.ts';

const happened = (more: Partial<Happenings> = {}): Happenings => ({
  stamps: [],
  checks: [],
  assumedStart: null,
  ...more,
});
const stamp = (event: string, clock: string, agent: string | null = null) => ({
  event,
  agent,
  at: at(clock),
  fact: `${event} at ${clock}`,
});
const place = (edge: Edge, happenings: Happenings) => placeEdge(edge, happenings, labelSense);

const strokes = happened({
  stamps: [
    stamp('first-stroke', '9:00'),
    stamp('last-stroke', '9:30'),
    stamp('last-stroke', '9:50'),
  ],
});

describe('a stamp', () => {
  test('first and last go by the instant, not by the order of telling', () => {
    const told = happened({
      stamps: [stamp('topped-up', '9:40'), stamp('topped-up', '9:10'), stamp('topped-up', '9:20')],
    });
    expect(place({ kind: 'stamp', stamp: first('topped-up') }, told)).toMatchObject({
      at: at('9:10'),
    });
    expect(place({ kind: 'stamp', stamp: last('topped-up') }, told)).toMatchObject({
      at: at('9:40'),
    });
  });

  test('that lasts until another is over by what was told after it, of the same instant or later', () => {
    const film = { ...last('covered'), until: ['uncovered'] } as const;
    const isOver = (...stamps: ReturnType<typeof stamp>[]) =>
      !place({ kind: 'stamp', stamp: film }, happened({ stamps })).known;
    const covered = stamp('covered', '9:10');
    expect(isOver(covered)).toBe(false);
    expect(isOver(covered, stamp('uncovered', '9:20'))).toBe(true);
    expect(isOver(covered, stamp('uncovered', '9:10'))).toBe(true);
    expect(isOver(covered, stamp('uncovered', '9:09'))).toBe(false);
    expect(isOver(stamp('uncovered', '9:10'), covered)).toBe(false);
  });

  test('of several events the first or last of any', () => {
    const either = { kind: 'stamp', stamp: first('in-clamps', 'last-stroke') } as const;
    expect(place(either, strokes)).toMatchObject({ at: at('9:30'), fact: 'last-stroke at 9:30' });
  });

  test('of an agent only that agent', () => {
    const both = happened({
      stamps: [stamp('first-stroke', '9:00', 'A'), stamp('first-stroke', '9:12', 'B')],
    });
    expect(place({ kind: 'stamp', stamp: of('B', first('first-stroke')) }, both)).toMatchObject({
      at: at('9:12'),
    });
    expect(place({ kind: 'stamp', stamp: of('C', first('first-stroke')) }, both)).toEqual({
      known: false,
      by: 'stamp',
    });
  });

  test('that was never made is unknown, unless it may be assumed and the step is finished', () => {
    const choice = first('mixed');
    const finished = happened({ assumedStart: { at: at('8:50'), fact: 'pick-up' } });
    expect(place({ kind: 'stamp', stamp: choice }, finished)).toEqual({
      known: false,
      by: 'stamp',
    });
    expect(place(after({ ...choice, assume: true }, { ms: hour }), finished)).toEqual({
      known: true,
      at: at('9:50'),
      fact: 'pick-up',
      assumed: true,
    });
    expect(place({ kind: 'stamp', stamp: { ...choice, assume: true } }, happened())).toMatchObject({
      known: false,
    });
  });
});

describe('a check', () => {
  const tried = (...list: readonly ['ready' | 'not yet' | 'trouble', string][]) =>
    happened({ checks: list.map(([finding, clock]) => ({ finding, at: at(clock), fact: clock })) });

  test('never made moves nothing', () => {
    expect(place(foundReady, happened())).toEqual({ known: false, by: 'nothing' });
  });

  test('counts as long as no later finding takes its place', () => {
    const edge = foundNotYet(10 * minute);
    expect(place(edge, tried(['not yet', '9:00']))).toMatchObject({ at: at('9:10') });
    expect(place(edge, tried(['not yet', '9:00'], ['trouble', '9:05']))).toMatchObject({
      at: at('9:10'),
    });
    expect(place(edge, tried(['not yet', '9:00'], ['ready', '9:05']))).toEqual({
      known: false,
      by: 'nothing',
    });
  });
});

describe('a clock time', () => {
  const morningAfter: Edge = { kind: 'clock', after: last('last-stroke'), time: '07:30' };

  test('is the next one at or after the stamp', () => {
    expect(place(morningAfter, strokes)).toMatchObject({ at: at('31:30') });
    const early = happened({ stamps: [stamp('last-stroke', '7:30')] });
    expect(place(morningAfter, early)).toMatchObject({ at: at('7:30') });
  });

  test('is unknown before its stamp', () => {
    expect(place(morningAfter, happened())).toEqual({ known: false, by: 'stamp' });
  });
});

describe('edges made of edges', () => {
  const label = after(last('last-stroke'), { ms: 2 * hour });

  test('beyond adds to wherever the other lies', () => {
    expect(place({ kind: 'beyond', edge: label, plus: { ms: hour } }, strokes)).toMatchObject({
      at: at('12:50'),
    });
    expect(place({ kind: 'beyond', edge: label, plus: { ms: hour } }, happened())).toMatchObject({
      known: false,
    });
  });

  test('earliest takes what is known', () => {
    const clamps = after(first('in-clamps'), { ms: minute });
    expect(place(earliestOf(label, clamps), strokes)).toMatchObject({ at: at('11:50') });
    expect(place(earliestOf(clamps), strokes)).toEqual({ known: false, by: 'stamp' });
  });

  test('latest waits for every stamp, and for no check', () => {
    const clamps = after(first('in-clamps'), { ms: minute });
    expect(place(latestOf(label, clamps), strokes)).toEqual({ known: false, by: 'stamp' });
    expect(place(latestOf(label, foundNotYet(minute)), strokes)).toMatchObject({ at: at('11:50') });
  });

  test('latest of the label and a stain-before end by the clock', () => {
    const edge = latestOf(label, { kind: 'clock', after: last('last-stroke'), time: '15:00' });
    expect(place(edge, strokes)).toMatchObject({ at: at('15:00') });
  });
});

describe('stretches are laid one after another', () => {
  const rule = (stretches: readonly Stretch[]): WindowRule => ({
    id: 'any',
    kind: 'coat',
    verb: 'try it',
    scope: 'step',
    begins: first('first-stroke'),
    stretches,
    closedBy: { by: 'nothing' },
  });
  const subject = { pieceId: 'p', stepId: 's', partId: null, pass: 1, section: null };
  const work = (stretches: readonly Stretch[], happenings = strokes) =>
    workOutWindow({ key: 'key', rule: rule(stretches), subject }, happenings, labelSense);
  const from = (clock: string): Edge =>
    after(first('first-stroke'), { ms: at(clock) - at('9:00') });

  test('there is no window before the stamp that begins it', () => {
    expect(work([{ meaning: 'wait', loss: 'costs nothing' }], happened())).toBeNull();
  });

  test('an edge counts as at least the one before it; what is left without time is dropped', () => {
    const window = work([
      { meaning: 'wait', loss: 'costs nothing' },
      { from: from('12:00'), meaning: 'go', loss: 'costs nothing' },
      { from: from('10:00'), meaning: 'go after work', loss: 'costs work' },
      { from: from('13:00'), meaning: 'late', loss: 'spoils' },
    ]);
    expect(window?.stretches.map(({ meaning, begins, ends }) => [meaning, begins, ends])).toEqual([
      ['wait', at('9:00'), at('12:00')],
      ['go after work', at('12:00'), at('13:00')],
      ['late', at('13:00'), null],
    ]);
  });

  test('what hangs on a stamp still to come keeps the stretch before it open-ended', () => {
    const window = work([
      { meaning: 'wait', loss: 'costs nothing' },
      { from: after(first('turned'), { ms: hour }), meaning: 'go', loss: 'costs nothing' },
      { from: from('10:00'), meaning: 'late', loss: 'spoils' },
    ]);
    expect(window?.stretches.map(({ meaning, ends }) => [meaning, ends])).toEqual([['wait', null]]);
  });

  test('a window without a wait is open from its beginning', () => {
    const window = work([
      { meaning: 'go', loss: 'costs nothing' },
      { from: from('9:00'), meaning: 'late', loss: 'spoils' },
    ]);
    expect(window?.stretches.map(({ meaning }) => meaning)).toEqual(['late']);
  });
});
