import { describe, expect, test } from 'vitest';
import { jobCard } from '../../../src/tracker/bench/index.ts';
import { day } from '../../../src/tracker/time/index.ts';
import { canTrouble, type Can } from '../../../src/tracker/trade/index.ts';
import { at, today } from '../support/instants.ts';
import { clearCoat, milestone } from '../support/rules.ts';
import { bleachAndClear, product, twoCoats } from '../support/schedules.ts';
import { Workday } from '../support/workday.ts';

/** Invented cans. */
const can = (id: string, more: Can = {}) =>
  product(id, 'waterborne', clearCoat, { name: 'My clear', can: { batch: '24-117 B', ...more } });

function chest(): { readonly day: Workday; readonly piece: string } {
  const work = new Workday();
  return { day: work, piece: work.adds('Chest', twoCoats, at('8:00')) };
}
const use = (piece: string, step: string, chosen: ReturnType<typeof can>) =>
  ({ do: 'use product', piece, step, product: chosen }) as const;

describe('a can of one’s own', () => {
  test('is put to use for one step; the piece takes its own copy, the others keep theirs', () => {
    const { day: work, piece } = chest();
    work.does(use(piece, 'coat 1', can('my-clear')), at('9:00'));
    expect(work.said).toBe('My clear for coat 1 on 1 Chest');
    const { steps, products } = work.piece(piece);
    expect(steps.map(({ product: key }) => key)).toEqual(['my-clear', 'clear coat', undefined]);
    expect(products['my-clear']?.can?.batch).toBe('24-117 B');
    work.takesBack(at('9:01'));
    expect(work.piece(piece).steps[0]?.product).toBe('clear coat');
  });

  test('without an A and a B asks for none; with them, for both', () => {
    const work = new Workday();
    const piece = work.adds('Tray', bleachAndClear, at('8:00'));
    const plain = product('chlorine', 'reaction', []);
    const twoPart = bleachAndClear.products['two-part bleach'];
    const asked = () => work.piece(piece).steps[1]?.stamps.map(({ says }) => says);
    expect(asked()).toEqual(['A, first stroke on', 'B, first stroke on']);
    work.does(use(piece, 'bleach', plain), at('9:00'));
    expect(asked()).toEqual(['first stroke on']);
    expect(twoPart).toBeDefined();
    if (twoPart !== undefined) work.does(use(piece, 'bleach', twoPart), at('9:01'));
    expect(asked()).toEqual(['A, first stroke on', 'B, first stroke on']);
  });

  test('under the id of a class changes no step that uses the class', () => {
    const { day: work, piece } = chest();
    const quick = { ...can('clear coat'), windows: [milestone('recoat', 60_000)] };
    work.does(use(piece, 'coat 1', quick), at('9:00'));
    const { steps, products } = work.piece(piece);
    expect(steps[1]?.product).toBe('clear coat');
    expect(products['clear coat']?.windows).toEqual(clearCoat);
    expect(products[steps[0]?.product ?? '']?.windows).toEqual(quick.windows);
    work.next(piece, at('9:10')).done(piece, at('9:20'));
    expect(work.state(piece, 'recoat', at('9:21'))).toBe('open');
  });

  test('starts its own windows, and its batch stands on the job card', () => {
    const { day: work, piece } = chest();
    work.does(use(piece, 'coat 1', can('my-clear')), at('9:00'));
    work.next(piece, at('9:10')).done(piece, at('9:20'));
    const card = jobCard(work.bench, work.piece(piece), at('10:00'), work.sense);
    expect(card.rows.find(({ row }) => row === 'step')).toMatchObject({
      product: 'My clear, batch 24-117 B',
    });
  });

  test('is refused for a step that is begun, that puts nothing on, or that uses it already', () => {
    const { day: work, piece } = chest();
    expect(work.tries(use(piece, 'scuff 2', can('my-clear')), at('9:00'))).toBe(
      'Not changed: scuff 2 on 1 Chest puts nothing on.',
    );
    work.does(use(piece, 'coat 2', can('my-clear')), at('9:00'));
    expect(work.tries(use(piece, 'coat 2', can('my-clear')), at('9:01'))).toMatch(/uses My clear/);
    work.next(piece, at('9:10'));
    expect(work.tries(use(piece, 'coat 1', can('my-clear')), at('9:11'))).toMatch(
      /^Not changed: coat 1 on 1 Chest is begun/,
    );
  });

  test('that tells no time for what a later step waits for says so', () => {
    const { day: work, piece } = chest();
    const bare = product('bare', 'waterborne', [], { name: 'Bare' });
    work.does(use(piece, 'coat 1', bare), at('9:00'));
    expect(work.warned).toBe('Bare tells no time for "recoat", which coat 2 waits for');
  });

  test('past its shelf life is told when the step is picked up, and with its first stroke', () => {
    const { day: work, piece } = chest();
    const old = can('my-clear', { keepsTill: '2026-01-31' });
    const words =
      'My clear, batch 24-117 B, is past its shelf life since 2026-01-31: try it on a sample board first';
    work.does(use(piece, 'coat 1', old), at('9:00'));
    expect(work.warned).toBe(words);
    work.does({ do: 'pick up', targets: [{ piece, part: null }] }, at('9:05'));
    expect(work.warned).toBe(words);
    work.next(piece, at('9:10'));
    expect(work.warned).toBe(words);
    work.done(piece, at('9:20'));
    expect(work.warned).toBeNull();
  });
});

describe('how long a can keeps', () => {
  const from = (keeps: Can) => canTrouble(can('my-clear', keeps), '2026-05-10');

  test.each([
    [{}, null],
    [{ keepsTill: '2026-05-10' }, null],
    [{ keepsTill: '2026-05-09' }, 'is past its shelf life since 2026-05-09'],
    [{ openedOn: '2026-04-10', onceOpened: 30 * day }, null],
    [{ openedOn: '2026-04-09', onceOpened: 30 * day }, 'was opened 2026-04-09 and keeps 30 days'],
    [{ openedOn: '2020-01-01' }, null],
    [{ onceOpened: day }, null],
  ] as const)('%j: %s', (keeps, words) => {
    const told = from(keeps);
    if (words === null) expect(told).toBeNull();
    else expect(told).toContain(words);
  });

  test('is asked of today in the shop', () => {
    expect(canTrouble(can('my-clear', { keepsTill: today }), today)).toBeNull();
  });
});
