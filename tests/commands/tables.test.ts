import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import MarkdownIt from 'markdown-it';
import { describe, expect, it } from 'vitest';
import { csvLines } from '../../src/commands/text/csv-lines.ts';
import { visible } from '../../src/views/drawing/visible.ts';
import { openShop, type Shop } from './support/shop.ts';

const nasty = '=HYPERLINK("x";"y"), `a|b` <b>*x*</b>\r\n@www.example.org\u001b[31m';

async function workedShop(name: string): Promise<Shop> {
  const shop = openShop();
  await shop.does('add', name, '--schedule', 'paint-and-wax');
  await shop.does('note', '1', `+${name}`);
  await shop.does('hold', '1', '--', `-${name}`);
  await shop.does('lift', '1');
  await shop.does('pick-up', '1');
  shop.minutesLater(20);
  await shop.does('done', '1');
  await shop.does('put-down');
  return shop;
}

const read = (text: string): readonly Record<string, string>[] =>
  parse<Record<string, string>>(text, { columns: true });

describe('CSV', () => {
  it('has the minutes of each step, as a reader of its own finds them', async () => {
    const shop = await workedShop('Oak chest');
    const rows = read(await shop.does('hours', '1', '--csv'));
    const { steps } = await shop.json('hours', '1');
    expect(rows).toHaveLength(steps.length);
    expect(rows.map((row) => row['step'])).toEqual(steps.map(({ name }) => visible(name)));
    expect(Number(rows[0]?.['minutes'])).toBeCloseTo(steps[0]?.minutes ?? -1, 0);
    expect(rows[1]?.['minutes']).toBe('');
    expect(Number(rows[1]?.['estimated'])).toBeCloseTo(steps[1]?.estimate.minutes ?? -1, 0);
    expect(read(await shop.does('hours', '--csv'))).toEqual([]);
    await shop.does('off-bench', '1');
    expect(read(await shop.does('hours', '--csv'))[0]).toEqual(rows[0]);
    expect(rows[0]).toMatchObject({ chance: '0.8', 'estimate from': 'finishing schedule' });
    expect(rows[0]?.['verdict']).toBe(steps[0]?.verdict);
  });

  it('leaves the range of hours from elsewhere empty: they claimed none', async () => {
    const shop = openShop();
    const lines = 'date,piece,step class,minutes,estimate\n2026-03-14,Chest,strip,95,60\n';
    writeFileSync(join(shop.root, 'old.csv'), lines);
    await shop.does('import-hours', 'old.csv', '--take');
    expect(read(await shop.does('hours', '--csv'))).toMatchObject([
      { minutes: '95', estimated: '60', low: '', high: '', chance: '', verdict: '' },
    ]);
  });

  it('has the rows of a job card', async () => {
    const shop = await workedShop('Oak chest');
    const rows = read(await shop.does('job-card', '1', '--csv'));
    const card = await shop.json('job-card', '1');
    expect(rows.map((row) => [row['at'], row['row']])).toEqual(
      card.rows.map(({ at, row }) => [at, row]),
    );
    // The apostrophe keeps it a text.
    expect(rows.find((row) => row['row'] === 'note')?.['what']).toBe("'+Oak chest");
  });

  it('is nowhere a formula, and each row is one line', async () => {
    const shop = await workedShop(nasty);
    for (const line of [
      ['hours', '1', '--csv'],
      ['job-card', '1', '--csv'],
    ]) {
      const text = await shop.does(...line);
      const rows = read(text);
      expect(text.trimEnd().split('\n')).toHaveLength(rows.length + 1);
      for (const cell of rows.flatMap((row) => Object.values(row)))
        expect(cell).not.toMatch(/^[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/);
      expect(rows[0]?.['piece']).toBe(`'${visible(nasty)}`);
    }
  });

  it('reads back any cells as they were, made harmless', async () => {
    const cell = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.constantFrom('=1', '+', '@x', '-1', "'"),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(fc.array(cell, { minLength: 2, maxLength: 4 })), async (rows) => {
        const lines = await csvLines(rows);
        expect(lines).toHaveLength(rows.length);
        const back = parse(lines.join('\n'), { relax_column_count: true, skip_empty_lines: false });
        expect(
          back.map((row) => row.map((text) => text.replace(/^'(?=[=+\-@＝＋－＠])/, ''))),
        ).toEqual(
          rows.map((row) => row.map((text) => visible(text).replace(/^'(?=[=+\-@＝＋－＠])/, ''))),
        );
      }),
    );
    expect(await csvLines([[-5, 'x']])).toEqual(['-5,x']);
  });

  it('is one form of several', async () => {
    const shop = await workedShop('Oak chest');
    expect((await shop.refuses('hours', '1', '--csv', '--json')).code).toBe(64);
    expect((await shop.refuses('job-card', '1', '--csv', '--markdown')).code).toBe(64);
  });
});

describe('Markdown', () => {
  it('is a heading, a table and a list for a reader of its own, with nothing of a name as a sign', async () => {
    const shop = await workedShop(nasty);
    const text = await shop.does('job-card', '1', '--markdown');
    const html = new MarkdownIt({ linkify: true, html: true }).render(text);
    const tags = new Set([...html.matchAll(/<\/?([a-z0-9]+)/g)].map(([, tag]) => tag));
    expect([...tags].sort()).toEqual(
      ['h1', 'li', 'p', 'table', 'tbody', 'td', 'th', 'thead', 'tr', 'ul'].sort(),
    );
    const cells = [...html.matchAll(/<tr>\n((?:<td.*<\/td>\n)+)<\/tr>/g)];
    const card = await shop.json('job-card', '1');
    expect(cells).toHaveLength(card.rows.length);
    for (const [, row = ''] of cells) expect(row.match(/<td/g)).toHaveLength(4);
    const shown = html
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&quot;', '"')
      .replaceAll('&amp;', '&');
    expect(shown).toContain(`+${visible(nasty)}`);
  });
});
