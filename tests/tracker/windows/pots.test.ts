import { describe, expect, test } from 'vitest';
import {
  factsOfPiece,
  foldBench,
  nameGroup,
  nextAct,
  openPots,
  pingsOfBench,
  standingOf,
  windowsOfPiece,
  windowsOfPot,
} from '../../../src/tracker/bench/index.ts';
import { beforeYouGo, questionsFor } from '../../../src/tracker/overnight/index.ts';
import { minute } from '../../../src/tracker/time/index.ts';
import { stateAt, type WindowRule } from '../../../src/tracker/windows/index.ts';
import { at } from '../support/instants.ts';
import { past } from '../support/past.ts';
import { after, first, go, grows, potLife, wait } from '../support/rules.ts';
import { product, twoCoats, twoPart } from '../support/schedules.ts';
import { labelSense } from '../support/sense.ts';
import { expectStates } from '../support/walk.ts';
import { Workday } from '../support/workday.ts';

/** Two table tops of one two-part finish, both at their first coat. */
function shop(): { readonly day: Workday; readonly top: string; readonly leaf: string } {
  const day = new Workday();
  const [top, leaf] = ['Table top', 'Leaf'].map((name) => day.adds(name, twoPart, at('8:00')));
  return { day, top: top!, leaf: leaf! };
}
const epoxy = twoPart.products['epoxy']!;
const potWindow = (day: Workday, index = 0, rule = 0) =>
  windowsOfPot(day.bench.pots[index]!, day.sense)[rule]!;
const says = (day: Workday, piece: string, now: number) =>
  nextAct(day.bench, day.piece(piece), null, { now, sense: day.sense }).says;

describe('a shared pot', () => {
  test('can be used from the start, and gels', () => {
    const { day } = shop();
    day.does({ do: 'mix pot', product: epoxy }, at('9:00'));
    expect(day.said).toBe('pot A mixed, epoxy');
    expectStates(potWindow(day), {
      '9:00': 'open',
      '12:49': 'open',
      '12:50': 'closing',
      '13:00': 'late',
    });
  });

  test('has a row of its own, and pings that name it', () => {
    const { day } = shop();
    day.does({ do: 'mix pot', product: epoxy }, at('9:00'));
    const row = day.standings(at('9:05')).find(({ pot }) => pot !== null);
    expect(row).toMatchObject({ piece: null, timer: null, pot: { letter: 'A' }, rank: 'spoils' });
    const pings = pingsOfBench(day.bench, at('9:05'), day.sense).filter(
      (ping) => ping.about === 'window' && ping.pot !== null,
    );
    expect(pings.map(({ at: due, loud }) => [due, loud])).toEqual([
      [at('12:30'), true],
      [at('13:00'), true],
    ]);
  });

  test('is what every piece of its product takes from, and which one is kept with the stroke', () => {
    const { day, top, leaf } = shop();
    expect(says(day, top, at('8:59'))).toBe('mixed');
    day.does({ do: 'mix pot', product: epoxy }, at('9:00'));
    const [pot] = day.bench.pots;
    expect(says(day, top, at('9:05'))).toBe('first stroke on');
    day.next(top, at('9:10')).done(top, at('9:30')).next(leaf, at('9:35')).done(leaf, at('9:50'));
    for (const piece of [top, leaf])
      expect(day.piece(piece).stamps).toMatchObject([{ event: 'first-stroke', pot: pot!.id }]);
  });

  test('is mixed by the step that plans it too, and the next piece takes from it', () => {
    const { day, top, leaf } = shop();
    day.next(top, at('9:00')).next(top, at('9:10'));
    expect(day.bench.pots).toMatchObject([{ letter: 'A', mixedAt: at('9:00') }]);
    expect(day.windows(top, 'pot')).toEqual([]);
    expect(says(day, leaf, at('9:30'))).toBe('first stroke on');
    day.does({ do: 'move stamp', piece: top, earlier: true }, at('9:11'));
    expect(day.piece(top).stamps.at(-1)?.at).toBe(at('9:05'));
  });

  test('mixed earlier than pressed moves with the stamp of the step', () => {
    const { day, top } = shop();
    day.next(top, at('9:00'));
    day.does({ do: 'move stamp', piece: top, earlier: true, ms: 5 * minute }, at('9:01'));
    expect(day.bench.pots[0]?.mixedAt).toBe(at('8:55'));
    expect(day.piece(top).stamps[0]?.at).toBe(at('8:55'));
  });

  test('past its life is said when it is used, and Space mixes a new one', () => {
    const { day, top, leaf } = shop();
    day.does({ do: 'mix pot', product: epoxy }, at('9:00'));
    const press = { do: 'first stroke', piece: top, part: null } as const;
    day.does(press, at('13:10'));
    expect(day.said).toContain('first stroke on');
    expect(day.warned).toBe(
      'pot A, epoxy, is past its life by 10 min: gelled: new pot, cut the gun out',
    );
    day.does({ do: 'take back' }, at('13:10')).does(press, at('13:00') + minute / 6);
    expect(day.warned).toContain('is past its life by 1 min');
    expect(says(day, leaf, at('13:11'))).toBe('mixed');
    day.next(leaf, at('13:12')).next(leaf, at('13:15'));
    expect(day.warned).toBeNull();
    expect(day.piece(leaf).stamps.at(-1)?.pot).toBe(day.bench.pots[1]?.id);
  });

  test('has to stand before use where its product says so', () => {
    const day = new Workday();
    const stands: WindowRule = {
      ...potLife,
      stretches: [wait, go(after(first('mixed'), grows(15 * minute))), potLife.stretches[1]!],
    };
    const plan = { ...twoPart, products: { epoxy: { ...epoxy, windows: [stands] } } };
    const top = day.adds('Table top', plan, at('8:00'));
    day.next(top, at('9:00'));
    expectStates(potWindow(day), { '9:14': 'before', '9:15': 'open', '13:00': 'late' });
    day.next(top, at('9:05'));
    expect(day.warned).toBe('pot A, epoxy, has still to stand 10 min before use');
  });

  test('is over when it is washed out, from its own row or from a piece', () => {
    const { day, top } = shop();
    day.next(top, at('9:00')).next(top, at('9:10')).done(top, at('9:40'));
    expect(openPots(day.bench)).toHaveLength(1);
    day.does({ do: 'stamp', piece: top, part: null, event: 'washed-out' }, at('9:50'));
    expectStates(potWindow(day), { '9:49': 'open', '9:50': 'done', '13:00': 'done' });
    day.does({ do: 'mix pot', product: epoxy }, at('10:00'));
    expect(day.bench.pots[1]?.letter).toBe('A');
    day.does({ do: 'wash out pot', pot: day.bench.pots[1]!.id }, at('10:30'));
    expect(day.said).toBe('pot A, epoxy, washed out');
    expect(openPots(day.bench)).toEqual([]);
    expect(day.tries({ do: 'wash out pot', pot: day.bench.pots[1]!.id }, at('10:31'))).toBe(
      'Not washed out: pot A, epoxy, is washed out already.',
    );
    day.takesBack(at('10:32'));
    expect(openPots(day.bench)).toHaveLength(1);
  });

  test('that was used is the one that is washed out from a piece, though another was mixed since', () => {
    const { day, top } = shop();
    day.next(top, at('9:00')).next(top, at('9:10')).done(top, at('9:40'));
    day.does({ do: 'mix pot', product: epoxy }, at('9:45'));
    day.does({ do: 'stamp', piece: top, part: null, event: 'washed-out' }, at('9:50'));
    expect(day.bench.pots.map(({ washedAt }) => washedAt)).toEqual([at('9:50'), null]);
  });

  test('is not what a stroke took from that went on before it was mixed', () => {
    const { day, top } = shop();
    day.does({ do: 'mix pot', product: epoxy }, at('9:30'));
    const stroke = { do: 'first stroke', piece: top, part: null } as const;
    day.does(stroke, at('9:40'), { at: at('9:10') });
    expect(day.piece(top).stamps.map(({ pot }) => pot)).toEqual([undefined]);
    day.takesBack(at('9:41')).does(stroke, at('9:42'));
    expect(day.piece(top).stamps.map(({ pot }) => pot)).toEqual([day.bench.pots[0]?.id]);
  });

  test('takes the lowest free letter, and is named when it is taken back', () => {
    const { day } = shop();
    for (const clock of ['9:00', '9:01', '9:02'])
      day.does({ do: 'mix pot', product: epoxy }, at(clock));
    day.does({ do: 'wash out pot', pot: day.bench.pots[1]!.id }, at('9:05'));
    day.does({ do: 'mix pot', product: epoxy }, at('9:06'));
    expect(day.bench.pots.map(({ letter }) => letter)).toEqual(['A', 'B', 'C', 'B']);
    const last = day.bench.groups.get(day.bench.trail.done.at(-1)!)!;
    expect(nameGroup(day.bench, last)).toBe('pot B mixed, epoxy');
  });

  test('was mixed earlier or later than told, but never later than now', () => {
    const { day } = shop();
    day.does({ do: 'mix pot', product: epoxy }, at('9:00'));
    const pot = day.bench.pots[0]!.id;
    day.does({ do: 'move pot', pot, earlier: true, ms: 5 * minute }, at('9:01'));
    expect(day.said).toBe('pot A, epoxy, mixed 5 min earlier');
    expectStates(potWindow(day), { '12:54': 'closing', '12:55': 'late' });
    day.does({ do: 'move pot', pot, earlier: false, ms: 60 * minute }, at('9:01'));
    expect(day.bench.pots[0]?.mixedAt).toBe(at('9:01'));
    expect(day.tries({ do: 'move pot', pot, earlier: false }, at('9:01'))).toMatch(/past now/);
  });

  test('is refused for what is used as it comes', () => {
    const { day } = shop();
    const clear = product('clear', 'waterborne', []);
    expect(day.tries({ do: 'mix pot', product: clear }, at('9:00'))).toBe(
      'Not mixed: clear is used as it is; it has no pot life.',
    );
  });

  test('is asked about when the shop is shut, as long as it is open', () => {
    const { day } = shop();
    day.does({ do: 'mix pot', product: epoxy }, at('9:00'));
    expect(questionsFor(day.bench, at('17:00'), day.sense)).toContain('pots');
    expect(beforeYouGo(day.bench, at('9:30'), at('20:00'), day.sense)).toEqual([]);
    day.does({ do: 'wash out pot', pot: day.bench.pots[0]!.id }, at('17:01'));
    expect(questionsFor(day.bench, at('17:02'), day.sense)).not.toContain('pots');
  });

  test('goes into the history with the pieces that took from it, once it is washed out', () => {
    const { day, top, leaf } = shop();
    day.next(top, at('9:00')).next(top, at('9:10')).done(top, at('9:30'));
    const own = (piece: string) =>
      factsOfPiece(day.facts, piece).facts.filter(({ kind }) => kind.startsWith('pot-'));
    expect(own(top)).toEqual([]);
    day.does({ do: 'wash out pot', pot: day.bench.pots[0]!.id }, at('9:40'));
    expect(own(top).map(({ kind }) => kind)).toEqual(['pot-mixed', 'pot-washed']);
    expect(own(leaf)).toEqual([]);
  });
});

describe('a pot of one piece, as it was recorded before pots were shared', () => {
  const before = past()
    .added('top', twoPart)
    .stamped('top', 'epoxy 1', 'mixed', at('9:00'))
    .stamped('top', 'epoxy 1', 'first-stroke', at('9:10'))
    .done('top', 'epoxy 1', at('9:40'));
  const windowsOf = (facts: typeof before) => {
    const bench = foldBench(facts.facts);
    const all = windowsOfPiece(bench.pieces.get('top')!, bench.sessions, labelSense);
    return all.filter(({ rule }) => rule.kind === 'pot');
  };

  test('still runs on its piece, and has to be washed out when the coat is done', () => {
    const [window] = windowsOf(before);
    expectStates(window!, { '9:41': 'open', '12:50': 'closing', '13:00': 'late' });
    const bench = foldBench(before.facts);
    const { rank } = standingOf(bench, bench.pieces.get('top')!, at('10:00'), labelSense);
    expect(rank).toBe('spoils');
  });

  test('ends with its own stamp', () => {
    const [window] = windowsOf(before.stamped('top', 'epoxy 1', 'washed-out', at('9:50')));
    expect(stateAt(window!, at('9:49'))).toBe('open');
    expect(stateAt(window!, at('9:50'))).toBe('done');
  });
});

test('a product without a pot has none, whatever is pressed', () => {
  const day = new Workday();
  const chest = day.adds('Chest', twoCoats, at('8:00'));
  day.next(chest, at('9:00'));
  expect(day.bench.pots).toEqual([]);
  expect(day.piece(chest).stamps[0]).not.toHaveProperty('pot');
});
