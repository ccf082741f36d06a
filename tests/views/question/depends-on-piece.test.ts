import { describe, expect, test } from 'vitest';
import { minute } from '../../../src/tracker/time/index.ts';
import { dependsOnPiece } from '../../tracker/support/schedules.ts';
import { deskOf, type DrivenDesk } from '../support/desk-of.ts';
import { fitsEverywhere } from '../support/fits.ts';

/** A bench with one piece of which nothing is known; its number is 1. */
function shop(): DrivenDesk {
  const driven = deskOf({ now: Date.UTC(2026, 4, 5, 8, 0) });
  driven.port.act({ do: 'add piece', name: 'Pine box', schedule: dependsOnPiece });
  driven.press('1');
  return driven;
}

const piece = (driven: DrivenDesk) => {
  const [only] = driven.port.bench.pieces.values();
  if (only === undefined) throw new Error('no piece');
  return only;
};

/** Works the lead test, and the step that finds the old finish. */
function findOldFinish(driven: DrivenDesk): void {
  driven.press('enter', 'd', 'enter', 'enter', 'd');
}

describe('a question', () => {
  test('comes up when its step is done, and the answer picks the branch', () => {
    const driven = shop();
    findOldFinish(driven);
    expect(driven.desk.top()).toMatchObject({ is: 'question', step: 'old finish' });
    expect(driven.text()).toContain('which solvent softened it?');
    expect(driven.list()).toEqual(['1 alcohol: shellac', '2 neither: varnish', '3 not now']);
    driven.pick(1);
    expect(driven.desk.top().is).toBe('bench');
    expect(piece(driven).answers['old finish']?.answer).toBe('shellac');
    expect(driven.port.steps(piece(driven).id)).toContain('(strip)');
  });

  test('can be left, and is asked again by a in the opened piece, where the answer shows', () => {
    const driven = shop();
    findOldFinish(driven);
    driven.press('escape');
    expect(piece(driven).answers).toEqual({});
    driven.press('p');
    expect(driven.text()).toContain('not answered: a');
    driven.press('a');
    driven.pick(2);
    expect(driven.desk.top().is).toBe('piece');
    expect(driven.text()).toContain('neither: varnish');
    driven.press('a');
    expect(driven.list().at(-1)).toBe('3 not known after all');
    driven.pick(3);
    expect(piece(driven).answers).toEqual({});
  });

  test('fits every terminal', () => {
    const driven = shop();
    findOldFinish(driven);
    fitsEverywhere(({ columns, rows }) => driven.desk.frame(columns, rows), /Esc/);
  });
});

describe('a step that is not for the piece', () => {
  test('stands in the opened piece with its reason, and x puts it in anyway', () => {
    const driven = shop();
    const { id } = piece(driven);
    driven.port.act({ do: 'describe piece', piece: id, changes: { yearMade: 1990, wood: 'hard' } });
    driven.press('p', 'home');
    expect(driven.text()).toMatch(/1 lead test .* out .* made 1990/);
    expect(driven.text()).toContain('not for this piece (made 1990). x puts it in anyway.');
    expect(driven.text()).toMatch(/5 prime .* out .* no answer yet: old finish/);
    driven.press('x');
    expect(driven.text()).not.toContain('made 1990. x puts it in');
    expect(driven.port.steps(id)[0]).toBe('lead test');
    expect(driven.text([40, 24])).toMatch(/5 prime +out/);
  });
});

describe('a step that waits for its trial', () => {
  const atCoat = (): DrivenDesk => {
    const driven = shop();
    const { id } = piece(driven);
    for (const step of ['lead test', 'old finish', 'strip', 'sample'])
      driven.port.act({ do: 'skip step', piece: id, step, skipped: true });
    return driven;
  };

  test('is refused once, asks for a reason the second time, and is then in hand', () => {
    const driven = atCoat();
    driven.press('enter');
    expect(driven.text().replaceAll(/\s+/g, ' ')).toContain(
      'The same key again: without it, and why.',
    );
    expect(driven.port.bench.sessions).toEqual([]);
    driven.press('enter');
    expect(driven.desk.top().is).toBe('without trial');
    expect(driven.text()).toContain('why without its trial?');
    fitsEverywhere(({ columns, rows }) => driven.desk.frame(columns, rows), /Esc/);
    driven.pick(1);
    expect(driven.desk.top().is).toBe('bench');
    expect(driven.port.bench.sessions).toHaveLength(1);
    expect(piece(driven).waivers).toMatchObject([
      { reason: 'tried before, same wood and same products' },
    ]);
  });

  test('is refused anew after a while, and by every key that would begin it', () => {
    for (const key of ['space', 'f', 'd']) {
      const driven = atCoat();
      driven.press(key);
      expect(driven.port.piece(piece(driven).id).stamps).toEqual([]);
      driven.port.wait(minute);
      driven.press(key);
      expect(driven.desk.top().is).toBe('bench');
      driven.press(key);
      expect(driven.desk.top().is).toBe('without trial');
      driven.press('escape');
      expect(piece(driven).waivers).toEqual([]);
    }
  });

  test('says so in the opened piece, where picking it up does the same', () => {
    const driven = atCoat();
    driven.press('p');
    expect(driven.text()).toContain('after its trial');
    driven.press('enter');
    expect(driven.desk.top().is).toBe('piece');
    driven.press('enter');
    driven.pick(2);
    expect(driven.desk.top().is).toBe('bench');
    expect(driven.port.bench.sessions).toHaveLength(1);
  });

  test('a trial that shows trouble is offered the remedies of a trial', () => {
    const driven = shop();
    const { id } = piece(driven);
    for (const step of ['lead test', 'old finish', 'strip'])
      driven.port.act({ do: 'skip step', piece: id, step, skipped: true });
    driven.press('enter', 'd');
    driven.port.wait(40 * minute);
    driven.press('t');
    expect(driven.list()[1]).toContain('blotches');
    driven.pick(2);
    expect(driven.port.steps(id)).toEqual(
      expect.arrayContaining(['sample', 'sample, again, with it']),
    );
  });
});
