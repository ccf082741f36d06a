import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readHours } from '../../../src/persist/hours-import/read-hours.ts';
import { tellCell } from '../../../src/persist/hours-import/tell-cell.ts';
import { stepClasses } from '../../../src/tracker/trade/index.ts';

const noonOf = (day: string): number => Date.parse(`${day}T12:00Z`);
const read = (text: string) => readHours('old.csv', text, { today: '2026-11-24', noonOf });
const header = 'date,piece,step class,minutes,estimate\n';

/** Values that RFC 4180 (sections 2.5 to 2.7) wants in quotes, and others. */
const quoted = (text: string): string =>
  /[",;\t\r\n]|^\s|\s$/.test(text) || text === '' ? `"${text.replaceAll('"', '""')}"` : text;

describe('reading hours that were kept elsewhere', () => {
  it('takes the columns in any order, however they are written, and passes others over', () => {
    const { rows, problems, passedOver } = read(
      '\uFEFFEstimate,Step_Class,DATE,colour,Minutes,piece\r\n60,strip,2026-03-14,red,95,"Chest, oak"\r\n',
    );
    expect(problems).toEqual([]);
    expect(passedOver).toEqual(['colour']);
    expect(rows).toEqual([
      {
        at: noonOf('2026-03-14'),
        piece: 'Chest, oak',
        stepClass: 'strip',
        minutes: 95,
        estimate: 60,
      },
    ]);
  });

  it('takes semicolons with decimal commas, and tabs', () => {
    const semicolons = read(
      'date;piece;step class;minutes;estimate\n2026-03-14;Chest, oak;coat, brushed;12,5;10\n',
    );
    expect(semicolons.rows[0]).toMatchObject({
      piece: 'Chest, oak',
      stepClass: 'coat, brushed',
      minutes: 12.5,
    });
    expect(read(`${header}2026-03-14,Chest,strip,12.5,10`.replaceAll(',', '\t')).rows).toHaveLength(
      1,
    );
  });

  it('refuses line by line: where, what stands there, what was expected', () => {
    const lines = [
      '2026-03-14,Chest,strip,95,60',
      '14.3.2026,Chest,strip,95,60',
      '2026-02-30,Chest,strip,95,60',
      '2026-11-25,Chest,strip,95,60',
      '',
      '1066-10-14,Chest,strip,95,60',
      '2026-03-14,,strip,95,60',
      '2026-03-14,Chest,stirp,95,60',
      '2026-03-14,Chest,strip,0,60',
      '2026-03-14,Chest,strip,-5,60',
      '2026-03-14,Chest,strip,100000,60',
      '2026-03-14,Chest,strip,an hour,60',
      '2026-03-14,Chest,strip,95,',
      '2026-03-14,Chest,strip,NaN,Infinity',
      '2026-03-14,Chest,strip,1e2,60',
      '2026-03-14,Chest',
    ];
    const { rows, problems } = read(header + lines.join('\n'));
    expect(rows).toHaveLength(1);
    expect(problems.map(({ line, field, found }) => [line, field, found])).toEqual([
      [3, 'date', '"14.3.2026"'],
      [4, 'date', '"2026-02-30"'],
      [5, 'date', '"2026-11-25"'],
      [7, 'date', '"1066-10-14"'],
      [8, 'piece', '""'],
      [9, 'step class', '"stirp"'],
      [10, 'minutes', '"0"'],
      [11, 'minutes', '"-5"'],
      [12, 'minutes', '"100000"'],
      [13, 'minutes', '"an hour"'],
      [14, 'estimate', '""'],
      [15, 'minutes', '"NaN"'],
      [15, 'estimate', '"Infinity"'],
      [16, 'minutes', '"1e2"'],
      [17, 'step class', '""'],
      [17, 'minutes', '""'],
      [17, 'estimate', '""'],
    ]);
    expect(problems.find(({ line }) => line === 9)?.nearest).toContain('strip');
    for (const { says, todo, expected } of problems) {
      expect(`${says} ${todo} ${expected}`).not.toMatch(/undefined|null|please|sorry/);
      expect(says).toMatch(/\.$/);
    }
  });

  it('says in which place of its line a cell is, as this file has its columns', () => {
    const { problems } = read(
      'estimate,colour,step class,minutes,date,piece\n60,red,stirp,0,2026-03-14,Chest\n0,"a, b",strip,9\n',
    );
    expect(problems.map(({ line, field, column }) => [line, field, column])).toEqual([
      [2, 'step class', 3],
      [2, 'minutes', 4],
      [3, 'date', 5],
      [3, 'piece', 6],
      [3, 'estimate', 1],
    ]);
    expect(problems.map(tellCell)[0]).toBe(
      'old.csv, line 2, column step class: "stirp" is no step class. Perhaps strip.',
    );
    const twice = read('date,piece,date,step class,minutes,estimate\n').problems;
    expect(twice.map(({ column }) => column)).toEqual([3]);
    expect(twice.map(tellCell)[0]).toMatch(/^old\.csv, line 1: There are two columns date\./);
  });

  it('says which column is missing or stands there twice, and what an empty or broken file is', () => {
    expect(read('date,piece,class,minutes,estimate\n').problems[0]).toMatchObject({
      line: 1,
      says: 'There is no column step class.',
    });
    expect(read('date,date,piece,step class,minutes,estimate\n').problems[0]?.says).toBe(
      'There are two columns date.',
    );
    expect(read('').problems[0]?.says).toBe('The file is empty.');
    expect(read(`${header}2026-03-14,"Chest,strip,95,60\n`).problems[0]?.says).toContain('A quote');
  });

  it('knows the same hours again, saved in another way', () => {
    const one = read(`${header}2026-03-14,Chest,strip,95,60\n2026-03-15,Chest,scuff,10,12\n`);
    const other = read(
      'piece;minutes;estimate;date;step class\r\nChest;10;12;2026-03-15;SCUFF\r\n"Chest";95;60;2026-03-14;strip\r\n',
    );
    expect(other.rows).toHaveLength(2);
    expect(other.fingerprint).toBe(one.fingerprint);
    expect(read(`${header}2026-03-14,Chest,strip,95,61\n`).fingerprint).not.toBe(one.fingerprint);
  });

  it('reads back whatever names and figures are written by RFC 4180', () => {
    const name = fc
      .string({ unit: 'grapheme', minLength: 1, maxLength: 20 })
      .filter((text) => text.trim() === text && text !== '');
    const row = fc.record({
      piece: name,
      stepClass: fc.constantFrom(...stepClasses),
      minutes: fc.integer({ min: 1, max: 1440 }),
      estimate: fc.integer({ min: 1, max: 1440 }),
    });
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 12 }), (rows) => {
        const lines = rows.map(({ piece, stepClass, minutes, estimate }) =>
          ['2026-03-14', piece, stepClass, minutes, estimate].map(String).map(quoted).join(','),
        );
        const found = read(header + lines.join('\r\n'));
        expect(found.problems).toEqual([]);
        expect(found.rows.map(({ at: _, ...each }) => each)).toEqual(rows);
      }),
    );
  });
});
