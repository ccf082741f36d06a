import { describe, expect, test } from 'vitest';
import type { FinishingSchedule } from '../../../src/tracker/trade/index.ts';
import { addPieceScreen } from '../../../src/views/add-piece/index.ts';
import type { AddPieceState } from '../../../src/views/screens.ts';
import { dependsOnPiece } from '../../tracker/support/schedules.ts';
import { afternoon, at, snapshotOf, step, viewOf } from '../support/bench-of.ts';
import { deskOf, type DrivenDesk } from '../support/desk-of.ts';
import { fitsEverywhere } from '../support/fits.ts';

const now = at('24 14:29');

const schedule = (id: string, name: string, steps: number, summary = ''): FinishingSchedule => ({
  id,
  name,
  summary,
  hash: `hash of ${id}`,
  steps: Array.from({ length: steps }, (_, index) =>
    step(`${id}-${index}`, `step ${index + 1}`, { minutes: { typical: 45, low: 30, high: 60 } }),
  ),
  products: {},
});

const three = [
  schedule('bleach', 'bleach and clear', 12, 'two-part, waterborne'),
  schedule('paint', 'paint and wax', 8, 'chalk-type'),
  schedule('glue', 'glue-up repair', 1),
];

/** The bench of an afternoon with the first step of adding a piece open. */
async function adding(schedules: readonly FinishingSchedule[] = three): Promise<DrivenDesk> {
  const driven = deskOf({ now, facts: afternoon().list, schedules });
  driven.press('a');
  await driven.settled();
  return driven;
}

describe('the name', () => {
  test('is asked for, with the number that is free', async () => {
    const { type, rows } = await adding();
    type('Cane Rocker');
    expect(rows().filter((row) => row !== '')).toEqual([
      'add a piece, 1 of 2',
      'name   Cane Rocker_',
      'Number 9 is free. Tag its bag of hardware with it.',
      'Enter: next   Esc: no piece',
    ]);
  });

  test('of nothing but spaces is refused, and what was typed stays', async () => {
    const { press, type, text } = await adding();
    type('  ');
    press('enter');
    expect(text()).toContain('Not added: a piece needs a name.');
    type('x');
    press('enter');
    expect(text()).toContain('add a piece, 2 of 2: x');
  });

  test('of more than eighty letters comes back with its refusal, to be shortened', async () => {
    const { press, type, text, pick, port } = await adding();
    type('x'.repeat(90));
    press('enter');
    pick(1);
    expect(text()).toContain('Not added: a name has at most 80 letters; this one has 90.');
    expect(text()).toContain('add a piece, 1 of 2');
    for (let letter = 0; letter < 10; letter += 1) press('backspace');
    press('enter');
    pick(1);
    expect([...port.bench.pieces.values()].at(-1)?.name).toBe('x'.repeat(80));
  });

  test('Esc adds nothing', async () => {
    const { press, type, desk, port } = await adding();
    type('Cane rocker');
    press('escape');
    expect(desk.top().is).toBe('bench');
    expect(port.asked).toEqual([]);
  });

  test('keys that act on the bench are letters here', async () => {
    const { type, text, port } = await adding();
    type('d q 0 1');
    expect(text()).toContain('name   d q 0 1_');
    expect(port.asked).toEqual([]);
  });

  test('a paste goes in up to its first line end', async () => {
    const { desk, text } = await adding();
    desk.paste('Old\u001b[31m chest\nof drawers');
    expect(text()).toContain('name   Old\\x1b[31m chest_');
  });
});

describe('the finishing schedule', () => {
  test('is picked from a list with its steps, its hours and what it is for', async () => {
    const { press, type, list, text } = await adding();
    type('Cane rocker');
    press('enter');
    expect(text()).toContain('add a piece, 2 of 2: Cane rocker');
    expect(list()).toEqual([
      '1 bleach and clear  12 steps, 8 to 11 h, 1+ day   two-part, waterborne',
      '2 paint and wax     8 steps, 5 to 8 h, 1+ day     chalk-type',
      expect.stringMatching(/^3 glue-up repair {4}1 step, 30 to 60 min/),
    ]);
    expect(text()).toContain('Hours from the finishing schedule, not yet from you.');
    expect(text()).toContain('for what dries or sets, with hands at work 08:00-18:00.');
  });

  test('counts only steps that can be in together, and every line fits', async () => {
    const either = { ...dependsOnPiece, name: 'either way' };
    const { press, type, list } = await adding([either, schedule('glue', 'glue-up repair', 1)]);
    type('Cane rocker');
    press('enter');
    expect(list()[0]).toMatch(/^1 either way {6}5 to 7 steps, 2(\.5)? to \d(\.5)? h/);
    expect(list()[1]).toMatch(/^2 glue-up repair {2}1 step, 30 to 60 min/);
  });

  test('its number puts the piece on the bench, selected, and says so', async () => {
    const { press, type, pick, port, desk, text } = await adding();
    type('Cane rocker');
    press('enter');
    pick(2);
    expect(desk.top()).toMatchObject({ is: 'bench', selected: 'key1' });
    const piece = port.piece('key1');
    expect([piece.number, piece.name, piece.schedule.id]).toEqual([9, 'Cane rocker', 'paint']);
    expect(text()).toContain('9 Cane rocker on the bench: 5 to 8 h, 4 times in 5; at least 1 day');
    press('escape');
    expect(text()).toContain('[9] Cane rocker');
  });

  test('Esc goes back to the name, which is as it was', async () => {
    const { press, type, text, list } = await adding();
    type('Cane');
    press('enter', 'escape');
    expect(list()).toEqual([]);
    expect(text()).toContain('name   Cane_');
    type('!');
    expect(text()).toContain('name   Cane!_');
  });

  test('can be read while the name is being written, and after', async () => {
    let bring: (schedules: readonly FinishingSchedule[]) => void = () => undefined;
    const slow = new Promise<readonly FinishingSchedule[]>((resolve) => (bring = resolve));
    const { press, type, text, list, settled } = deskOf({ now, schedules: slow });
    press('a');
    type('Cane ');
    await settled();
    type('rocker');
    press('enter');
    expect(text()).toContain('Reading the finishing schedules.');
    expect(list()).toEqual([]);
    bring(three);
    await settled();
    expect(text()).toContain('add a piece, 2 of 2: Cane rocker');
    expect(list()).toHaveLength(3);
  });

  test('of which none could be read says what is wrong with the files', async () => {
    const { press, type, text, settled, list } = deskOf({
      now,
      scheduleProblems: ['my-own.yaml, line 3, minutes: "lots" is no figure'],
    });
    press('a');
    await settled();
    type('Chest');
    press('enter');
    expect(list()).toEqual([]);
    expect(text()).toContain('There is no finishing schedule to pick.');
    expect(text()).toContain('Left out: my-own.yaml, line 3, minutes: "lots" is no figure');
    expect(text()).toContain('Esc: back to the name');
  });

  test('of which there are many comes in pages, each picked by its own numbers', async () => {
    const many = Array.from({ length: 21 }, (_, index) =>
      schedule(`s${index + 1}`, `schedule ${index + 1}`, 2),
    );
    const { press, type, list, pick, port } = await adding(many);
    type('Chest');
    press('enter');
    const first = (): string | undefined => list()[0];
    expect(list()).toHaveLength(9);
    expect(first()).toMatch(/^1 schedule 1 /);
    expect(list()[8]).toBe('9 13 more');
    pick(9);
    expect(first()).toMatch(/^1 schedule 9 /);
    expect(list()[8]).toBe('9 5 more');
    pick(9);
    expect(list().at(-1)).toBe('6 from the first again');
    pick(6);
    expect(first()).toMatch(/^1 schedule 1 /);
    pick(9);
    pick(2);
    expect([...port.bench.pieces.values()].at(-1)?.schedule.id).toBe('s10');
  });
});

test('both steps fit everywhere, also with a name that is far too long and acts on the terminal', () => {
  const name = `漆塗り ${'very '.repeat(40)}long \u001b]0;name\u0007`;
  const naming: AddPieceState = { is: 'add piece', name, schedules: three };
  const view = viewOf(snapshotOf(afternoon().bench()), now);
  fitsEverywhere((size) => addPieceScreen.draw(naming, { ...view, ...size }), /Esc: no piece/);
  const picking: AddPieceState = { ...naming, from: 0 };
  fitsEverywhere((size) => addPieceScreen.draw(picking, { ...view, ...size }), /Esc: back/);
});
