import { describe, expect, it } from 'vitest';
import { hoursOfFinished } from '../../../src/tracker/estimate/index.ts';
import { reviewOf } from '../../../src/tracker/review/index.ts';
import type { BackTest } from '../../../src/tracker/learning/index.ts';
import { monthIn } from '../../../src/views/format/index.ts';
import type { LookingBack } from '../../../src/views/port.ts';
import type { HoursState } from '../../../src/views/screens.ts';
import { at, sizes } from '../support/bench-of.ts';
import { deskOf } from '../support/desk-of.ts';
import { inventedWork } from './invented-work.ts';

const now = at('17 14:00');
const reading: LookingBack = {
  is: 'reading',
  done: 3,
  of: 10,
  says: null,
  review: null,
  backTest: null,
  problems: [],
  found: null,
};
const row = { steps: 40, held: 33, claimed: 0.8, missed: 1.214, scheduleMissed: 1.43 };
const result: BackTest = {
  done: 2000,
  of: 100000,
  whole: row,
  first: { ...row, steps: 30, held: 24 },
  classes: [
    { ...row, stepClass: 'strip', steps: 25, held: 10 },
    { ...row, stepClass: 'wax', steps: 8, held: 8 },
  ],
};

function opened(lookingBack: LookingBack, page: HoursState['page'] = 'classes', empty = false) {
  const work = inventedWork();
  return deskOf({
    now,
    ...(empty ? {} : { facts: work.shop.facts() }),
    snapshot: { lookingBack },
    start: { is: 'hours', piece: null, at: 0, past: null, page },
  });
}

const whole = (): LookingBack => {
  const bench = inventedWork().shop.bench();
  const review = reviewOf(hoursOfFinished([bench], now), monthIn('UTC'));
  return { ...reading, is: 'waiting', done: 0, of: 0, review };
};

describe('looking back over past years from the hours', () => {
  it('shows how many years are read, what is shown till then, and the key that stops it', () => {
    const desk = opened(reading);
    expect(desk.rows()[0]).toBe('hours: 4 finished pieces on the bench, past years not read yet');
    expect(desk.text()).toContain('past years  ██████··············  3 of 10  s: stop');
    expect(desk.text([40, 20])).toContain('past years 3 of 10  s: stop');
    desk.press('s');
    expect(desk.port.lookedBack).toEqual(['stop']);
  });

  it('shows the review of all once it has come, in place of the bench alone', () => {
    const desk = opened(whole(), 'classes', true);
    expect(desk.rows()[0]).toBe('hours: 4 finished pieces, 2 Nov to 5 Nov');
    expect(desk.text()).not.toContain('past years');
    desk.press('s');
    expect(desk.text()).toContain('Not here: that is about one piece.');
  });

  it('begins with the screen and ends when that is left, not when another lies on it', () => {
    const work = inventedWork();
    const desk = deskOf({ now, facts: work.shop.facts() });
    desk.press('m');
    expect(desk.port.lookedBack).toEqual(['begin']);
    desk.press('j');
    expect(desk.rows()[0]).toContain('Job card');
    desk.press('escape');
    expect(desk.port.lookedBack).toEqual(['begin']);
    desk.press('escape');
    expect(desk.port.lookedBack).toEqual(['begin', 'end']);
  });

  it('begins the back-test where its page is turned to, by either way', () => {
    const desk = opened(whole(), 'ranges');
    desk.press('tab');
    expect(desk.text()).toContain('Every step foretold anew, as it is done today');
    desk.press('tab', 'left');
    expect(desk.port.lookedBack).toEqual(['back-test', 'back-test']);
  });

  it('draws the result as it comes, with how far it is', () => {
    const desk = opened(
      { ...whole(), is: 'trying', done: 2000, of: 100000, backTest: result },
      'back-test',
    );
    expect(desk.rows().slice(2, 7)).toEqual([
      'step class                  steps range held               missed by    schedule',
      '> all steps                    40  83 in 100  as claimed  1.21 times  1.43 times',
      '  your first 30                30  80 in 100  as claimed  1.21 times  1.43 times',
      '  strip                        25  40 in 100  too narrow  1.21 times  1.43 times',
      '  wax                           8 100 in 100  few yet     1.21 times  1.43 times',
    ]);
    expect(desk.text()).toContain('past steps  ····················  2000 of 100000  s: stop');
    expect(desk.text()).toContain('80 in 100 was claimed, 83 in 100 held: as claimed; half of the');
  });

  it('says when it was stopped, and begins again with the same key', () => {
    const stopped = {
      ...whole(),
      is: 'stopped',
      done: 2000,
      of: 100000,
      backTest: result,
    } as const;
    const desk = opened(stopped, 'back-test');
    expect(desk.text()).toContain('Stopped after 2000 of 100000 steps. s: from the beginning.');
    desk.press('s');
    expect(desk.port.lookedBack).toEqual(['begin', 'back-test']);
    expect(opened(stopped).text()).not.toContain('Stopped');
    const early = opened({ ...reading, is: 'stopped' });
    expect(early.text()).toContain(
      'Stopped after 3 of 10 years: only the bench is shown. s: read them again.',
    );
    early.press('s');
    expect(early.port.lookedBack).toEqual(['begin']);
  });

  it('says in words why it failed', () => {
    const desk = opened({ ...reading, is: 'failed', says: 'memory ran out.' });
    expect(desk.text()).toContain(
      'Not looked back: memory ran out. s: try again. Only the bench is shown.',
    );
  });

  it('fetches a past piece that Enter asks for, and shows it when it is there', () => {
    const bench = inventedWork().shop.bench();
    const [first] = whole().review?.outcomes.pieces ?? [];
    if (first === undefined) throw new Error('no outcome');
    const desk = opened(whole(), 'ranges', true);
    desk.press('enter');
    expect(desk.port.lookedBack).toEqual([`find ${first.piece.id}`]);
    expect(desk.text()).toContain('Reading that piece.');
    const found = opened({ ...whole(), found: { piece: first.piece.id, bench } }, 'ranges', true);
    found.press('enter');
    expect(found.rows()[0]).toContain(`hours: ${first.piece.name}`);
    found.press('w');
    expect(found.text()).toContain('has gone to history');
  });

  it('says on a piece that past years are still being read', () => {
    const work = inventedWork();
    const desk = deskOf({
      now,
      facts: work.shop.facts(),
      snapshot: { lookingBack: reading },
      start: { is: 'hours', piece: work.stool, at: 0, past: null },
    });
    expect(desk.text()).toContain('Past years are still being');
  });

  it('fits every terminal', () => {
    for (const state of [reading, { ...whole(), is: 'stopped', backTest: result } as const])
      for (const page of ['classes', 'back-test'] as const)
        for (const size of sizes)
          for (const line of opened(state, page).rows(size))
            expect([line, line.length <= size[0]]).toEqual([line, true]);
  });
});
