import { describe, expect, test } from 'vitest';
import {
  foldBench,
  happeningsOfWindow,
  nextAct,
  sendingsDue,
  windowsOfPiece,
} from '../../../src/tracker/bench/index.ts';
import { stateAt, type WindowRule } from '../../../src/tracker/windows/index.ts';
import { at } from '../support/instants.ts';
import { past } from '../support/past.ts';
import { labelSense } from '../support/sense.ts';
import { aerosol, bleachAndClear, twoCoats } from '../support/schedules.ts';
import { Workday } from '../support/workday.ts';

/** A dresser whose parts are named, with their ids. */
function dresser(
  day = new Workday(),
  plan = twoCoats,
): {
  readonly day: Workday;
  readonly piece: string;
  readonly top: string;
  readonly drawers: string;
} {
  const piece = day.adds('Ash commode', plan, at('8:00'));
  return { day, piece, ...namesParts(day, piece, '8:01') };
}

function namesParts(
  day: Workday,
  piece: string,
  clock: string,
): { readonly top: string; readonly drawers: string } {
  day.does({ do: 'name parts', piece, names: ['top', 'drawers'] }, at(clock));
  const [top, drawers] = day.piece(piece).parts;
  return { top: top!.id, drawers: drawers!.id };
}

const statesOf = (day: Workday, piece: string, rule: string, clock: string) =>
  Object.fromEntries(
    day.windows(piece, rule).map((window) => [window.subject.partId, stateAt(window, at(clock))]),
  );

describe('parts that are worked on their own', () => {
  test('each has its own windows, and the piece stands as its worst', () => {
    const { day, piece, top, drawers } = dresser();
    day.firstStroke(piece, at('9:00'), top).done(piece, at('9:30'), top);
    day.firstStroke(piece, at('10:00'), drawers).done(piece, at('10:30'), drawers);
    day.does({ do: 'put down' }, at('10:31'));
    expect(statesOf(day, piece, 'recoat', '12:00')).toEqual({ [top]: 'open', [drawers]: 'before' });
    expect(day.standing(piece, at('12:00'))).toMatchObject({ part: top, rank: 'costs work' });
  });

  test('the part that is in hand is the one shown', () => {
    const { day, piece, top, drawers } = dresser();
    day.done(piece, at('9:30'), top);
    day.does({ do: 'pick up', targets: [{ piece, part: drawers }] }, at('9:40'));
    expect(day.standing(piece, at('9:41'))).toMatchObject({
      rank: 'in hand',
      part: drawers,
      step: { id: 'coat 1' },
    });
  });

  test('a part that is in hand does not make another begun', () => {
    const { day, piece, top, drawers } = dresser(new Workday(), bleachAndClear);
    day.does({ do: 'pick up', targets: [{ piece, part: top }] }, at('9:00'));
    expect(
      nextAct(day.bench, day.piece(piece), top, { now: at('9:00'), sense: day.sense }).act,
    ).toBe('done');
    expect(
      nextAct(day.bench, day.piece(piece), drawers, { now: at('9:00'), sense: day.sense }).act,
    ).toBe('pick up');
  });

  test('a stroke on another part changes hands to it', () => {
    const { day, piece, top, drawers } = dresser();
    day.firstStroke(piece, at('9:00'), top).firstStroke(piece, at('9:20'), drawers);
    expect(day.bench.sessions.map(({ targets, end }) => [targets[0]?.part, end])).toEqual([
      [top, at('9:20')],
      [drawers, null],
    ]);
  });

  test('an assumed beginning is the pick-up of that part', () => {
    const { day, piece, top, drawers } = dresser();
    day.does({ do: 'pick up', targets: [{ piece, part: drawers }] }, at('9:00'));
    day.does({ do: 'pick up', targets: [{ piece, part: top }] }, at('9:20'));
    day.done(piece, at('9:30'), drawers);
    expect(day.window(piece, 'recoat')).toMatchObject({
      subject: { partId: drawers },
      begunAt: at('9:00'),
    });
  });

  test('a check is about one part', () => {
    const { day, piece, top, drawers } = dresser();
    for (const part of [top, drawers])
      day.firstStroke(piece, at('9:00'), part).done(piece, at('9:30'), part);
    day.does({ do: 'check', piece, part: drawers, finding: 'not yet' }, at('11:40'));
    const states = statesOf(day, piece, 'recoat', '11:45');
    expect(states).toEqual({ [top]: 'open', [drawers]: 'before' });
  });

  test('a scuff of one part opens that part alone', () => {
    const { day, piece, top, drawers } = dresser(new Workday(), bleachAndClear);
    for (const part of [top, drawers]) {
      for (const clock of ['8:10', '8:20', '8:30']) day.done(piece, at(clock), part);
      day.firstStroke(piece, at('9:00'), part).done(piece, at('9:30'), part);
    }
    day.done(piece, at('34:00'), top);
    expect(statesOf(day, piece, 'recoat', '35:00')).toEqual({ [top]: 'open', [drawers]: 'late' });
  });
});

describe('what was done to the whole counts for every part', () => {
  test('until they go separate ways: the part that went on is over, the other still waits', () => {
    const day = new Workday();
    const piece = day.adds('Ash commode', twoCoats, at('8:00'));
    day.firstStroke(piece, at('9:00')).done(piece, at('9:30'));
    const { top, drawers } = namesParts(day, piece, '9:40');
    expect(statesOf(day, piece, 'recoat', '12:00')).toEqual({ null: 'open' });
    day.firstStroke(piece, at('12:00'), top);
    expect(
      day
        .windows(piece, 'recoat')
        .map(({ subject, closedAt }) => [subject.stepId, subject.partId, closedAt]),
    ).toEqual([
      ['coat 1', top, at('12:00')],
      ['coat 1', drawers, null],
      ['coat 2', top, null],
    ]);
  });

  test('what was pinged once is not pinged again for each part', () => {
    const day = new Workday();
    const piece = day.adds('Ash commode', twoCoats, at('8:00'));
    day.firstStroke(piece, at('9:00')).done(piece, at('9:30'));
    const { top } = namesParts(day, piece, '9:40');
    const claimed = new Set(
      sendingsDue(day.bench, new Set(), at('11:30'), day.sense).flatMap(({ settles }) => settles),
    );
    expect(claimed.size).toBe(1);
    day.firstStroke(piece, at('12:00'), top);
    expect(sendingsDue(day.bench, claimed, at('12:01'), day.sense)).toEqual([]);
  });

  test('a coat begun on the whole and finished by parts opens for each part', () => {
    const day = new Workday();
    const piece = day.adds('Ash commode', twoCoats, at('8:00'));
    day.firstStroke(piece, at('9:00'));
    const { top, drawers } = namesParts(day, piece, '9:10');
    day.done(piece, at('9:30'), top);
    expect(statesOf(day, piece, 'recoat', '11:30')).toEqual({ [top]: 'open', [drawers]: 'before' });
    day.done(piece, at('10:00'), drawers);
    expect(statesOf(day, piece, 'recoat', '12:00')).toEqual({ [top]: 'open', [drawers]: 'open' });
  });

  test('a coat begun on one part and finished on the whole dries on every part', () => {
    const { day, piece, top, drawers } = dresser();
    day.firstStroke(piece, at('9:00'), top).done(piece, at('9:30'));
    expect(statesOf(day, piece, 'recoat', '11:30')).toEqual({ [top]: 'open', [drawers]: 'open' });
    expect(day.windows(piece, 'recoat').map(({ assumed }) => assumed)).toEqual([false, true]);
  });

  test('what was tried on one of them after that is about that one', () => {
    const day = new Workday();
    const piece = day.adds('Ash commode', twoCoats, at('8:00'));
    day.firstStroke(piece, at('9:00')).done(piece, at('9:30'));
    day.does({ do: 'name parts', piece, names: ['top', 'drawers', 'feet'] }, at('9:40'));
    const [top, drawers, feet] = day.piece(piece).parts.map(({ id }) => id) as [
      string,
      string,
      string,
    ];
    day.firstStroke(piece, at('12:00'), top);
    day.does({ do: 'check', piece, part: drawers, finding: 'not yet' }, at('12:10'));
    expect(statesOf(day, piece, 'recoat', '12:20')).toMatchObject({
      [drawers]: 'before',
      [feet]: 'open',
    });
  });

  test('a record of a part that nobody named loses no window of the whole', () => {
    const facts = past()
      .added('chest', twoCoats)
      .done('chest', 'coat 1', at('9:30'))
      .stamped('chest', 'coat 2', 'first-stroke', at('12:00'), { part: 'ghost' });
    const bench = foldBench(facts.facts);
    const windows = windowsOfPiece(bench.pieces.get('chest')!, bench.sessions, labelSense);
    expect(windows.filter(({ subject }) => subject.stepId === 'coat 1')).not.toEqual([]);
  });

  test('what was tried on the whole counts after they went separate ways', () => {
    const day = new Workday();
    const piece = day.adds('Ash commode', twoCoats, at('8:00'));
    day.firstStroke(piece, at('9:00')).done(piece, at('9:30'));
    const { top, drawers } = namesParts(day, piece, '9:40');
    day.checks(piece, 'not yet', at('11:50'));
    day.firstStroke(piece, at('12:00'), top);
    const recoat = day.windows(piece, 'recoat').find(({ subject }) => subject.partId === drawers);
    expect(recoat).toMatchObject({ heldBackAt: at('11:50') });
  });
});

test('a step that is done on the whole ends each part in the pass it was in', () => {
  const { day, piece, top, drawers } = dresser(new Workday(), aerosol);
  for (const [part, clock] of [
    [top, '9:00'],
    [drawers, '9:10'],
  ] as const)
    day.firstStroke(piece, at(clock), part);
  day.firstStroke(piece, at('9:30'), top);
  day.done(piece, at('9:40'));
  const { finishes } = day.piece(piece);
  expect(finishes).toMatchObject([{ part: null, pass: 2 }]);
  const stepWide = day.windows(piece, 'recoat').map(({ subject }) => subject.partId);
  expect(new Set(stepWide)).toEqual(new Set([top, drawers]));
  const step = day.piece(piece).steps[0]!;
  const rule = { id: 'pass', scope: 'pass' } as unknown as WindowRule;
  const lastStroke = (partId: string, pass: number) => {
    const subject = { pieceId: piece, stepId: step.id, partId, pass, section: null };
    return happeningsOfWindow(day.piece(piece), [], { rule, subject, key: '' })
      ?.stamps.filter(({ event }) => event === 'last-stroke')
      .map((stamp) => stamp.at);
  };
  expect(lastStroke(top, 2)).toEqual([at('9:40')]);
  expect(lastStroke(drawers, 1)).toEqual([at('9:40')]);
  expect(lastStroke(top, 1)).toEqual([]);
});
