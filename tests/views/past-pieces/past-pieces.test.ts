import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { foldBench } from '../../../src/tracker/bench/index.ts';
import { plain } from '../../../src/views/drawing/index.ts';
import { pastScreen } from '../../../src/views/past-pieces/index.ts';
import type { PastState } from '../../../src/views/screens.ts';
import { inventShop, scheduleOf, step } from '../../tracker/estimate/invented-shop.ts';
import { inventedWork } from '../hours/invented-work.ts';
import { at, portOf, sizes, snapshotOf, viewOf, type Size } from '../support/bench-of.ts';
import { deskOf, type DrivenDesk } from '../support/desk-of.ts';

const now = at('24 14:00');
const start: PastState = { is: 'past pieces', find: '', at: 0, past: null };

async function opened(work = inventedWork()): Promise<DrivenDesk> {
  const desk = deskOf({ now, facts: work.shop.facts() });
  desk.press('z');
  await desk.settled();
  return desk;
}

const names = (desk: DrivenDesk, size?: Size): readonly string[] =>
  desk
    .rows(size)
    .filter((row) => / h \d\d/.test(row))
    .map((row) => row.slice(2, 17).trim());

describe('past pieces', () => {
  it('lists them with their dates, minutes and schedule, the last that left first', async () => {
    const desk = await opened();
    expect(desk.rows().slice(0, 7)).toEqual([
      '4 past pieces',
      '',
      'piece                              left minutes     came in  finishing schedule',
      '> Side table                      5 Nov  3 h 00       5 Nov  Invented schedule',
      '  Hat rack                        4 Nov  2 h 20       4 Nov  Invented schedule',
      '  Music stand                     3 Nov  2 h 10       3 Nov  Invented schedule',
      '  Hall bench                      2 Nov  3 h 50       2 Nov  Invented schedule',
    ]);
  });

  it('finds by name as it is typed, whatever case, accents and order of words', async () => {
    const work = inventedWork();
    const id = work.shop.add('Étagère, oak', scheduleOf([step('sand')]), at('18 09:00'));
    work.shop.act({ do: 'pick up', targets: [{ piece: id, part: null }] }, at('18 09:00'));
    work.shop.act({ do: 'take off bench', piece: id }, at('18 10:40'));
    const desk = await opened(work);
    desk.press('f');
    desk.type('OAK etag');
    expect(desk.rows()[0]).toBe('5 past pieces, 1 found');
    expect(names(desk)).toEqual(['Étagère, oak']);
    desk.press('escape');
    expect(names(desk)).toHaveLength(5);
    desk.press('f');
    desk.type('h');
    // p is a letter here, not "put back".
    desk.type('p');
    expect(desk.text()).toContain('No past piece is called "hp". Esc shows all.');
    expect(desk.port.asked).toEqual([]);
  });

  it('offers the nearest names where none is found', async () => {
    const desk = await opened();
    desk.press('f');
    desk.type('hat rakc');
    desk.press('enter');
    expect(desk.text()).toContain(
      'Not opened: no past piece is called "hat rakc". Did you mean Hat rack?',
    );
  });

  it('opens the job card with Enter, also out of the search, and its hours with m', async () => {
    const desk = await opened();
    desk.press('f');
    desk.type('hall');
    desk.press('enter');
    expect(desk.rows()[0]).toBe('Job card: Hall bench');
    expect(desk.text()).toContain('two layers of paint');
    desk.press('escape', 'm');
    expect(desk.rows()[0]).toContain('hours: Hall bench');
    desk.press('escape', 'escape', 'escape');
    expect(desk.rows()[0]).toContain('14:00');
  });

  it('puts one back on the bench with p, under a number, and takes it off the list', async () => {
    const desk = await opened();
    desk.press('down', 'p');
    expect(desk.text()).toContain('3 Hat rack back on the bench');
    expect(names(desk)).toEqual(['Side table', 'Music stand', 'Hall bench']);
    const [back] = [...desk.port.bench.pieces.values()].filter(({ number }) => number === 3);
    expect(back?.name).toBe('Hat rack');
  });

  it('shows pieces of the bench file and of the history, each once, and hides removed ones', () => {
    const work = inventedWork();
    const { shop } = work;
    const past = { bench: shop.bench(), problems: [] };
    shop.act({ do: 'remove piece', piece: work.bench }, at('23 09:00'));
    const [, , hatRack] = [...shop.bench().pieces.keys()];
    shop.act({ do: 'put back on bench', piece: hatRack ?? '' }, at('23 09:01'));
    const text = (bench = shop.bench()): string =>
      pastScreen
        .draw({ ...start, past }, viewOf(snapshotOf(bench), now))
        .lines.map(plain)
        .join('\n');
    expect(text()).toContain('2 past pieces');
    expect(text()).not.toContain('Hall bench');
    expect(text(foldBench([]))).toContain('4 past pieces');
    expect(text(foldBench([]))).toContain('Hall bench');
  });

  it('gives dates of other years in full', () => {
    const shop = inventShop();
    const old = shop.add('Old chest', scheduleOf([step('sand')]), Date.UTC(2019, 4, 3, 9));
    shop.act({ do: 'take off bench', piece: old }, Date.UTC(2019, 5, 7, 9));
    const rows = pastScreen.draw(start, viewOf(snapshotOf(shop.bench()), now)).lines.map(plain);
    expect(rows.find((row) => row.includes('Old chest'))).toMatch(/7 Jun 2019 .* 3 May 2019/);
  });

  it('says what is wrong with a year that could not be read, and that none has left yet', () => {
    const past = { bench: foldBench([]), problems: ['History of 2019 is damaged. Restore it.'] };
    const text = pastScreen
      .draw({ ...start, past }, viewOf(snapshotOf(foldBench([])), now))
      .lines.map(plain)
      .join('\n');
    expect(text).toContain('History of 2019 is damaged. Restore it.');
    expect(text).toContain('No piece has left the bench yet.');
  });

  it('keeps columns straight and lines within every terminal, with long and wide names', () => {
    const shop = inventShop();
    for (const [index, name] of [
      '食器棚 研磨 食器棚 研磨 食器棚 研磨 食器棚',
      'A chest of drawers with a name far longer than any column there is',
      'Tray',
      '🪑🪑🪑🪑',
    ].entries()) {
      const id = shop.add(name, scheduleOf([step('sand')]), at(`0${index + 1} 08:00`));
      shop.act({ do: 'take off bench', piece: id }, at(`0${index + 1} 09:00`));
    }
    for (const size of sizes) {
      const { lines } = pastScreen.draw(start, viewOf(snapshotOf(shop.bench()), now, size));
      expect(lines.length).toBeLessThanOrEqual(size[1]);
      const texts = lines.map(plain);
      for (const line of texts) expect(stringWidth(line)).toBeLessThanOrEqual(size[0]);
      const starts = texts
        .filter((line) => line.includes(' Nov '))
        .map((line) => stringWidth(line.slice(0, line.indexOf(' Nov '))));
      expect(starts.length).toBeGreaterThan(1);
      expect(new Set(starts).size).toBe(1);
    }
  });

  it('reads past years once', async () => {
    const port = portOf(() => snapshotOf(foldBench([])), {
      past: () => Promise.resolve({ bench: foldBench([]), problems: [] }),
    });
    const loaded = (await pastScreen.load?.(start, port)) ?? start;
    expect(loaded.past).not.toBeNull();
    expect(await pastScreen.load?.(loaded, portOf(port.snapshot))).toBe(loaded);
  });
});
