import { describe, expect, test } from 'vitest';
import {
  bringBackName,
  decide,
  foldBench,
  takeBackName,
  type Bench,
  type Intent,
} from '../../../src/tracker/bench/index.ts';
import { contextAt, given } from '../support/given-when-then.ts';
import { at } from '../support/instants.ts';
import { past, target } from '../support/past.ts';
import { aerosol, bleachAndClear, stainInSections, twoCoats } from '../support/schedules.ts';
import { Workday } from '../support/workday.ts';

/** What counts of a bench: all but the lists of what can be taken back. */
const derived = ({ trail: _, groups: __, ...rest }: Bench) => rest;

describe('taking back and bringing back', () => {
  test('last in, first out, again and again', () => {
    const day = new Workday();
    const states = [derived(day.bench)];
    const keep = () => states.push(derived(day.bench));
    const piece = day.adds('Oak chest', twoCoats, at('8:00'));
    keep();
    day.firstStroke(piece, at('9:00'));
    keep();
    day.done(piece, at('9:30'));
    keep();
    for (const index of [2, 1, 0]) {
      day.takesBack(at('10:00'));
      expect(derived(day.bench)).toEqual(states[index]);
    }
    for (const index of [1, 2, 3]) {
      day.does({ do: 'bring back' }, at('10:01'));
      expect(derived(day.bench)).toEqual(states[index]);
    }
  });

  test('one press is taken back whole', () => {
    const day = new Workday();
    const table = day.adds('Side table', twoCoats, at('8:00'));
    const chest = day.adds('Oak chest', twoCoats, at('8:00'));
    day.does({ do: 'pick up', targets: [{ piece: table, part: null }] }, at('8:30'));
    day.firstStroke(chest, at('9:00')).takesBack(at('9:01'));
    expect(day.bench.sessions).toMatchObject([{ targets: [{ piece: table }], end: null }]);
    expect(day.piece(chest).stamps).toEqual([]);
  });

  test('nothing is left to take back, nothing to bring back', () => {
    given(past())
      .when({ do: 'take back' }, at('9:00'))
      .thenRefused('Not taken back: nothing is left to take back.');
    given(past().added('chest', twoCoats))
      .when({ do: 'bring back' }, at('9:00'))
      .thenRefused('Not brought back: nothing was taken back last.');
  });

  test('a new deed ends what could be brought back', () => {
    const day = new Workday();
    const piece = day.adds('Oak chest', twoCoats, at('8:00'));
    day.firstStroke(piece, at('9:00')).takesBack(at('9:01'));
    day.does({ do: 'write note', piece, step: null, text: 'again' }, at('9:02'));
    expect(day.tries({ do: 'bring back' }, at('9:03'))).toMatch(/nothing was taken back last/);
    expect(bringBackName(day.bench)).toBeNull();
  });

  test('what the clock or a script told is never taken back', () => {
    const facts = past()
      .added('chest', twoCoats, { name: 'Oak chest' })
      .told('clock-stepped', { byMs: -3000 }, { by: 'clock' })
      .told('note-written', { piece: 'chest', step: null, text: 'from a sheet' }, { by: 'script' });
    given(facts)
      .when({ do: 'take back' }, at('9:00'))
      .then({ kind: 'group-withdrawn', body: { withdrawn: 'press-1' } });
  });

  test('a withdrawal out of turn changes nothing', () => {
    const facts = past()
      .added('chest', twoCoats)
      .stamped('chest', 'coat 1', 'first-stroke', at('9:00'))
      .told('group-withdrawn', { withdrawn: 'press-1' })
      .told('group-restored', { restored: 'press-9' });
    const bench = foldBench(facts.facts);
    expect(bench.pieces.get('chest')?.stamps).toHaveLength(1);
    expect(bench.trail).toEqual({ done: ['press-1', 'press-2'], takenBack: [] });
  });
});

describe('a piece that came back from the history', () => {
  /** The stool was worked, had a stroke taken back and left; long after that the chest was worked. */
  const stool = past()
    .added('stool', twoCoats, { at: at('8:00'), group: 'stool' })
    .stamped('stool', 'coat 1', 'first-stroke', at('8:10'), { group: 'stroke' })
    .told('group-withdrawn', { withdrawn: 'stroke' }, { at: at('8:11'), group: 'w1' })
    .done('stool', 'coat 1', at('8:20'), { group: 'stool done' })
    .told('piece-left-bench', { piece: 'stool' }, { at: at('8:30'), group: 'left' }).facts;
  const chest = past()
    .added('chest', twoCoats, { at: at('7:00'), group: 'chest' })
    .stamped('chest', 'coat 1', 'first-stroke', at('9:00'), { group: 'chest stroke' }).facts;
  const back = past().told(
    'piece-put-back',
    { piece: 'stool', number: 2 },
    { at: at('10:00'), group: 'back' },
  ).facts;
  const ids = [...chest, ...stool, ...back].map((fact, index) => ({ ...fact, id: `f${index}` }));

  test('gives its deeds their places by when they were told', () => {
    const bench = foldBench(ids);
    expect(bench.trail).toEqual({
      done: ['chest', 'stool', 'stool done', 'left', 'chest stroke', 'back'],
      takenBack: [],
    });
    expect(bench.pieces.get('stool')).toMatchObject({ place: 'bench', stamps: [] });
    expect(bench.pieces.get('stool')?.finishes).toHaveLength(1);
  });

  test('so take back reaches the last deed on another piece first, and it stays taken back', () => {
    const day = new Workday();
    day.facts = ids;
    day.bench = foldBench(ids);
    day.takesBack(at('10:01')).takesBack(at('10:02'));
    expect(day.piece('chest').stamps).toEqual([]);
    expect(day.piece('stool').place).toBe('past');
    day.does({ do: 'bring back' }, at('10:03'));
    expect(day.piece('chest').stamps).toHaveLength(1);
    day.takesBack(at('10:04')).takesBack(at('10:05')).takesBack(at('10:06'));
    expect(day.piece('stool')).toMatchObject({ place: 'bench', finishes: [] });
  });

  test('a piece that only left the file in between, and one told by a clock set back, keep theirs', () => {
    const told = past()
      .added('chest', twoCoats, { at: at('9:00'), group: 'chest' })
      .added('stool', twoCoats, { at: at('8:00'), group: 'stool' })
      .stamped('chest', 'coat 1', 'first-stroke', at('8:05'), { group: 'stroke' })
      .told('piece-left-bench', { piece: 'stool' }, { at: at('8:30'), group: 'left' })
      .told('piece-put-back', { piece: 'stool', number: 2 }, { at: at('8:40'), group: 'back' });
    expect(foldBench(told.facts).trail.done).toEqual(['chest', 'stool', 'stroke', 'left', 'back']);
  });
});

describe('each names what it does', () => {
  function names(
    intent: Intent | ((day: Workday, piece: string) => Intent),
    plan = twoCoats,
  ): string {
    const day = new Workday();
    const piece = day.adds('Oak chest', plan, at('8:00'));
    day.does(typeof intent === 'function' ? intent(day, piece) : intent, at('9:00'));
    const name = takeBackName(day.bench);
    day.takesBack(at('9:01'));
    expect(day.said).toBe(`taken back: ${name}`);
    // The name is the same from the other side.
    expect(bringBackName(day.bench)).toBe(name);
    day.does({ do: 'bring back' }, at('9:02'));
    expect(day.said).toBe(`brought back: ${name}`);
    return name!;
  }
  const piece = 'press-1';

  test.each<[string, Intent]>([
    [
      'add 2 Side table',
      { do: 'add piece', name: 'Side table', schedule: twoCoats, describe: { wood: 'hard' } },
    ],
    [
      'what was noted about 1 Oak chest',
      { do: 'describe piece', piece, changes: { wood: 'hard' } },
    ],
    ['parts of 1 Oak chest', { do: 'name parts', piece, names: ['top'] }],
    ['coat 1, again put into 1 Oak chest', { do: 'repeat step', piece, step: 'coat 1' }],
    [
      'order of coat 2 on 1 Oak chest',
      { do: 'move step', piece, step: 'coat 2', before: 'coat 1' },
    ],
    ['skip coat 2 on 1 Oak chest', { do: 'skip step', piece, step: 'coat 2', skipped: true }],
    ['hold on 1 Oak chest', { do: 'place hold', piece, reason: 'hinge', askAgain: null }],
    ['note on 1 Oak chest', { do: 'write note', piece, step: null, text: 'x' }],
    ['pick up 1 Oak chest, coat 1', { do: 'pick up', targets: [{ piece, part: null }] }],
    ['first stroke on, coat 1 on 1 Oak chest', { do: 'first stroke', piece, part: null }],
    ['coat 1 done on 1 Oak chest', { do: 'done', piece, part: null }],
    ['timer clamps', { do: 'start timer', label: 'clamps', ms: 60_000, piece: null }],
    ['shut up shop', { do: 'shut up shop', answers: {}, backAt: null }],
  ])('%s', (name, intent) => {
    expect(names(intent)).toBe(name);
  });

  test('a piece that left is called by its name alone', () => {
    const day = new Workday();
    day.adds('Oak chest', twoCoats, at('8:00'));
    day.does({ do: 'take off bench', piece }, at('9:00'));
    expect(takeBackName(day.bench)).toBe('Oak chest off the bench');
  });

  test('rewording is called by its new name', () => {
    const day = new Workday();
    day.adds('Oak chest', twoCoats, at('8:00'));
    day.does({ do: 'reword step', piece, step: 'coat 1', name: 'wash coat' }, at('9:00'));
    expect(takeBackName(day.bench)).toBe('reword to wash coat on 1 Oak chest');
  });

  test('of a press that did several things, what it was pressed for', () => {
    const day = new Workday();
    const table = day.adds('Side table', twoCoats, at('8:00'));
    const chest = day.adds('Oak chest', bleachAndClear, at('8:00'));
    day.does({ do: 'pick up', targets: [{ piece: table, part: null }] }, at('8:10'));
    day.does({ do: 'pick up', targets: [{ piece: chest, part: null }] }, at('8:20'));
    expect(takeBackName(day.bench)).toBe('pick up 2 Oak chest, sand');
    day
      .done(chest, at('8:40'))
      .does({ do: 'pick up', targets: [{ piece: table, part: null }] }, at('8:50'));
    day.next(chest, at('9:00'));
    expect(takeBackName(day.bench)).toBe('A, first stroke on, bleach on 2 Oak chest');
    day.does({ do: 'move stamp', piece: chest, earlier: true }, at('9:01'));
    expect(takeBackName(day.bench)).toBe('moved stamp: A, first stroke on, bleach on 2 Oak chest');
    day.does({ do: 'remove piece', piece: chest }, at('9:02'));
    expect(takeBackName(day.bench)).toBe('remove Oak chest');
  });

  test.each([
    ['pick up', twoCoats, { do: 'pick up', targets: [{ piece, part: null }] }],
    ['other work', twoCoats, { do: 'pick up', targets: [{ piece, part: null, step: null }] }],
    ['next stamp', bleachAndClear, { do: 'next stamp', piece, part: null }],
    ['first stroke', aerosol, { do: 'first stroke', piece, part: null }],
    ['next section', stainInSections, { do: 'next section', piece, part: null }],
    ['stamp', twoCoats, { do: 'stamp', piece, part: null, event: 'turned' }],
    ['done', twoCoats, { do: 'done', piece, part: null }],
  ] as const)('as the key said it: %s', (_, plan, intent) => {
    const day = new Workday();
    day.adds('Oak chest', plan, at('8:00'));
    day.does(intent, at('9:00'));
    expect(takeBackName(day.bench)).toBe(day.said?.replace(/^picked up/, 'pick up'));
  });

  test('a piece put back by the number that it got', () => {
    const day = new Workday();
    day.adds('Oak chest', twoCoats, at('8:00'));
    day.does({ do: 'take off bench', piece }, at('9:00'));
    day.does({ do: 'put back on bench', piece }, at('9:01'));
    expect(day.said).toBe('1 Oak chest back on the bench');
    day.takesBack(at('9:02'));
    expect(bringBackName(day.bench)).toBe('1 Oak chest back on the bench');
  });

  test('sections by their number', () => {
    const day = new Workday();
    const desk = day.adds('Writing desk', stainInSections, at('8:00'));
    day.next(desk, at('9:00'));
    expect(takeBackName(day.bench)).toBe('section 1 on, stain on 1 Writing desk');
    day.does({ do: 'next section', piece: desk, part: null }, at('9:06'));
    expect(takeBackName(day.bench)).toBe('section 2 on, stain on 1 Writing desk');
  });

  test('and which piece it was for', () => {
    const day = new Workday();
    const table = day.adds('Side table', twoCoats, at('8:00'));
    const chest = day.adds('Oak chest', twoCoats, at('8:00'));
    const takenBackOn = (): string | null => {
      const outcome = decide(day.bench, { do: 'take back' }, contextAt(at('9:30')));
      return outcome.ok ? outcome.piece : null;
    };
    day.does({ do: 'pick up', targets: [{ piece: table, part: null }] }, at('8:30'));
    expect(takenBackOn()).toBe(table);
    day.firstStroke(chest, at('9:00'));
    expect(takenBackOn()).toBe(chest);
    day.does({ do: 'put down' }, at('9:10'));
    expect(takenBackOn()).toBe(chest);
  });

  test('put down by what was held', () => {
    const facts = past()
      .added('chest', twoCoats, { name: 'Oak chest' })
      .pickedUp('s', at('9:00'), [target('chest', 'coat 1')])
      .putDown('s', at('9:30'));
    given(facts)
      .when({ do: 'take back' }, at('10:00'))
      .thenSays('taken back: put down 1 Oak chest');
  });

  test('a check by its finding', () => {
    const day = new Workday();
    const chest = day.adds('Oak chest', twoCoats, at('8:00'));
    day
      .firstStroke(chest, at('9:00'))
      .done(chest, at('9:30'))
      .checks(chest, 'not yet', at('11:40'));
    expect(takeBackName(day.bench)).toBe('not yet, next coat on 1 Oak chest');
  });
});
