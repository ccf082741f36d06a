import { describe, expect, it } from 'vitest';
import type { HoursLookedAt } from '../../../src/views/port.ts';
import { at, sizes } from '../support/bench-of.ts';
import { deskOf, type DrivenDesk } from '../support/desk-of.ts';

const now = at('24 14:00');
const row = (piece: string, minutes: number) => ({
  at: at('02 12:00'),
  piece,
  stepClass: 'strip' as const,
  minutes,
  estimate: 60,
});
const good: HoursLookedAt = {
  rows: [row('Oak chest', 90), row('Pine box', 60)],
  fingerprint: 'f1',
  refused: [],
  passedOver: ['who'],
};
const refusedLine =
  'old.csv, line 3, minutes: "long" is no number of minutes. Write minutes above 0.';

async function lookedAt(looked: HoursLookedAt): Promise<DrivenDesk> {
  const desk = deskOf({ now });
  const asked: string[] = [];
  Object.assign(desk.port, {
    lookAtHours: (file: string) => {
      asked.push(file);
      return Promise.resolve(looked);
    },
  });
  desk.press('m');
  desk.press('i');
  expect(desk.text()).toContain('hours kept elsewhere');
  desk.type('old.csv');
  desk.press('enter');
  await desk.settled();
  expect(asked).toEqual(['old.csv']);
  return desk;
}

describe('hours kept elsewhere, on the screen', () => {
  it('are shown before anything is taken, and taken by y', async () => {
    const desk = await lookedAt(good);
    expect(desk.rows()[0]).toBe('old.csv: 2 lines of 2 pieces, Mon 2 Nov 2026');
    expect(desk.text()).toMatch(/^strip +2 +2 +2 h 30 +2 h 00 +1\.3 times$/m);
    expect(desk.text()).toContain('Passed over: the columns who.');
    expect(desk.port.asked).toEqual([]);
    desk.press('y');
    expect(desk.port.bench.imports?.map(({ file, rows }) => [file, rows.length])).toEqual([
      ['old.csv', 2],
    ]);
    expect(desk.rows()[0]).toContain('hours: 2 finished pieces, all imported');
    expect(desk.text()).toContain('2 lines of hours taken from old.csv');
  });

  it('name every refused line with its place, and take the others', async () => {
    const desk = await lookedAt({ ...good, refused: [refusedLine] });
    expect(desk.text()).toContain('old.csv, line 3, minutes: "long" is no number of minutes.');
    expect(desk.text()).toContain('y: take 2 lines and leave out what is refused');
    desk.press('y');
    expect(desk.port.bench.imports).toHaveLength(1);
  });

  it('are left by n or Esc, with the name to be mended', async () => {
    for (const key of ['n', 'escape']) {
      const desk = await lookedAt(good);
      desk.press(key);
      expect(desk.text()).toContain('file  old.csv');
      desk.press('escape');
      expect(desk.rows()[0]).toContain('hours: ');
      expect(desk.port.bench.imports ?? []).toEqual([]);
    }
  });

  it('are known again, and can not be taken twice', async () => {
    const desk = await lookedAt(good);
    desk.press('y', 'i');
    desk.type('old.csv');
    desk.press('enter');
    await desk.settled();
    expect(desk.text()).toContain('Not taken: these hours are in already, from old.csv on Tue 24');
    expect(desk.text()).not.toContain('y: take');
    desk.press('y');
    expect(desk.port.bench.imports).toHaveLength(1);
  });

  it('say why a file can not be read, and want a name', async () => {
    const says =
      "Not taken: old.csv can't be read (ENOENT). Check its name and that you may read it.";
    const desk = await lookedAt({ rows: [], fingerprint: '', refused: [says], passedOver: [] });
    expect(desk.text()).toContain("old.csv can't be read (ENOENT)");
    desk.press('y');
    expect(desk.port.asked).toEqual([]);
    const empty = deskOf({ now, start: { is: 'import hours', text: '', looked: null, from: 0 } });
    empty.press('enter');
    expect(empty.text()).toContain('Not looked at: no file is named yet.');
  });

  it('move between many refused lines, and fit every terminal', async () => {
    const refused = Array.from({ length: 60 }, (_, index) => `old.csv, line ${index + 2}: no day.`);
    const desk = await lookedAt({ ...good, refused });
    expect(desk.text()).toMatch(/down: \d+ more/);
    desk.press('end');
    expect(desk.text()).toContain('line 61');
    for (const size of sizes)
      for (const line of desk.rows(size)) expect(line.length).toBeLessThanOrEqual(size[0]);
  });
});
