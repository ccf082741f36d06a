import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { ImportJson, ImportsJson } from '../../src/commands/json-shapes/index.ts';
import { must } from './support/must.ts';
import { openShop, type Shop } from './support/shop.ts';

const header = 'date,piece,step class,minutes,estimate\n';
const old = `${header}2026-03-14,Oak chest,strip,90,60
2026-03-15,Oak chest,scuff,10,10
2026-04-02,Pine box,strip,88,60
2026-05-02,Elm stool,strip,92,60
2026-06-02,Bench,strip,90,60
`;

async function shopWith(text: string, name = 'old.csv'): Promise<Shop> {
  const shop = openShop();
  await shop.does('add', 'Next chest', '--schedule', 'strip-stain-varnish');
  writeFileSync(join(shop.root, name), text);
  return shop;
}

const stripEstimate = async (shop: Shop) =>
  must((await shop.json('hours', 'Next chest')).steps.find((each) => each.stepClass === 'strip'))
    .estimate;

const asJson = async <Shape>(shop: Shop, ...line: readonly string[]): Promise<Shape> =>
  JSON.parse(await shop.does(...line, '--json')) as Shape;

describe('hours that were kept elsewhere', () => {
  it('are shown first, grouped by step class, and nothing is taken', async () => {
    const shop = await shopWith(old);
    const preview = await shop.does('import-hours', 'old.csv');
    expect(preview).toContain('old.csv: 5 lines of 4 pieces, Sat 14 Mar 2026 to Tue 2 Jun 2026');
    expect(preview).toMatch(/^strip +4 +4 +6 h 00 +4 h 00 +1\.5 times$/m);
    expect(preview).toContain('Nothing is taken yet. To take them: --take');
    expect(await asJson<ImportJson>(shop, 'import-hours', 'old.csv')).toMatchObject({
      lines: 5,
      problems: [],
    });
    expect((await shop.json('hours')).pieces).toBe(0);
  });

  it('teach, and stand among the finished pieces marked as imported', async () => {
    const shop = await shopWith(old);
    const before = await stripEstimate(shop);
    expect(await shop.does('import-hours', 'old.csv', '--take')).toContain(
      '5 lines of hours taken from old.csv',
    );
    const after = await stripEstimate(shop);
    expect(after.model).toBe('learned minutes');
    // Nearly all of it stripping, and nearly all half as long again as guessed: that may be the guessing.
    expect(after.minutes).toBeGreaterThan(before.minutes);
    expect(after.minutes).toBeLessThan(1.15 * before.minutes);
    const hours = await shop.json('hours');
    expect(hours).toMatchObject({
      pieces: 4,
      importedPieces: 4,
      rangesHeld: { held: 0, of: 0, claimed: null },
      pastRanges: { of: 0 },
      spent: { workingMinutes: 0, waitingMinutes: 0 },
    });
    expect(hours.classes.find(({ stepClass }) => stepClass === 'strip')).toMatchObject({
      pieces: 4,
      ratio: 1.5,
    });
    expect(await shop.does('hours')).toContain('4 finished pieces, all imported');
  });

  it('are taken once: the same hours under another name are known', async () => {
    const shop = await shopWith(old);
    await shop.does('import-hours', 'old.csv', '--take');
    writeFileSync(join(shop.root, 'copy.csv'), old.replaceAll('\n', '\r\n'));
    for (const more of [[], ['--take']]) {
      const { says } = await shop.refuses('import-hours', 'copy.csv', ...more);
      expect(says).toContain(
        'Not taken: the hours in copy.csv are in already, from old.csv on Tue 24 Nov 2026.',
      );
    }
  });

  it('can be taken out again as a whole, or taken back like anything else', async () => {
    const shop = await shopWith(old);
    const before = await stripEstimate(shop);
    await shop.does('import-hours', 'old.csv', '--take');
    expect(await shop.does('import-hours')).toMatch(/^1 +old\.csv +5 lines/);
    expect(await shop.does('import-hours', '--take-out', '1')).toContain(
      'hours from old.csv taken out',
    );
    expect(await stripEstimate(shop)).toEqual(before);
    expect((await shop.json('hours')).pieces).toBe(0);
    expect(await asJson<ImportsJson>(shop, 'import-hours')).toEqual({ imports: [] });
    await shop.does('import-hours', 'old.csv', '--take');
    expect(await shop.does('take-back')).toContain('taken back: hours from old.csv');
    expect(await stripEstimate(shop)).toEqual(before);
    expect((await shop.refuses('import-hours', '--take-out', '3')).says).toContain(
      'Not taken out: no hours were imported.',
    );
    await shop.does('import-hours', 'old.csv', '--take');
    expect((await shop.refuses('import-hours', '--take-out', '3')).says).toContain(
      'Not taken out: there is no import "3". To see which there are: recoat import-hours',
    );
  });

  it('with lines that are refused are taken only when that is said, each with its place', async () => {
    const shop = await shopWith(`${old}2026-06-03,Bench,stripp,0,60\n`);
    const { says } = await shop.refuses('import-hours', 'old.csv', '--take');
    expect(says).toContain(
      'old.csv, line 7, column step class: "stripp" is no step class. Perhaps strip.',
    );
    expect(says).toContain('old.csv, line 7, column minutes: 0 is no time worked.');
    expect(says).toContain('To take the other 5 all the same: --without-refused');
    expect((await shop.json('hours')).pieces).toBe(0);
    await shop.does('import-hours', 'old.csv', '--take', '--without-refused');
    expect((await shop.json('hours')).pieces).toBe(4);
  });

  it('are asked about where somebody is there to answer', async () => {
    const shop = await shopWith(old);
    const answered = async (answer: boolean): Promise<string> => {
      const { code, out, err } = await shop.run(['import-hours', 'old.csv'], {
        ask: () => Promise.resolve(answer),
      });
      expect(code).toBe(0);
      return `${err}\n${out}`;
    };
    expect(await answered(false)).toContain('5 lines of 4 pieces');
    expect((await shop.json('hours')).pieces).toBe(0);
    expect(await answered(true)).toContain('5 lines of hours taken');
    expect((await shop.json('hours')).pieces).toBe(4);
  });

  it('say what is wrong with a file that is none', async () => {
    const shop = await shopWith('one,two\n1,2\n');
    expect((await shop.refuses('import-hours', 'nowhere.csv')).says).toContain(
      "Not taken: nowhere.csv can't be read (ENOENT).",
    );
    const { out, code } = await shop.run(['import-hours', 'old.csv']);
    expect(code).not.toBe(0);
    expect(out).toContain('There is no column date, piece, step class, minutes, estimate.');
  });
});
