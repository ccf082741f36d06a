import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { foldBench } from '../../../src/tracker/bench/index.ts';
import { plain } from '../../../src/views/drawing/index.ts';
import { jobCardScreen } from '../../../src/views/job-card/index.ts';
import type { JobCardState } from '../../../src/views/screens.ts';
import { inventedWork } from '../hours/invented-work.ts';
import { at, key, portOf, sizes, snapshotOf, viewOf } from '../support/bench-of.ts';
import { deskOf } from '../support/desk-of.ts';

const now = at('17 14:00');
const work = inventedWork();
const state: JobCardState = { is: 'job card', piece: work.stool, from: 0, past: null };

const opened = () => deskOf({ now, facts: work.shop.facts(), start: state });

describe('job card on the screen', () => {
  it('opens from the bench with j, and goes back with Esc', () => {
    const desk = deskOf({ now, facts: work.shop.facts() });
    desk.press('1', 'j');
    expect(desk.rows()[0]).toBe('Job card: 1 Beech stool');
    desk.press('escape');
    expect(desk.rows()[0]).toContain('14:00');
  });

  it('scrolls where it does not fit, and its title stays', () => {
    const desk = opened();
    const size = [40, 12] as const;
    desk.rows(size);
    expect(desk.text(size)).toMatch(/down: \d+ more/);
    desk.press('end');
    expect(desk.rows(size)[0]).toBe('Job card: 1 Beech stool');
    expect(desk.text(size)).toContain('minutes');
    expect(desk.text(size)).not.toMatch(/down: \d+ more/);
    desk.press('home');
    expect(desk.text(size)).toContain('look over, lead test');
  });

  it('goes to the hours of the piece and back', () => {
    const desk = opened();
    desk.press('m');
    expect(desk.rows()[0]).toContain('hours: 1 Beech stool');
    desk.press('j', 'escape', 'escape');
    expect(desk.rows()[0]).toBe('Job card: 1 Beech stool');
  });

  it('fits every terminal', () => {
    for (const size of sizes) {
      const { lines } = jobCardScreen.draw(state, viewOf(snapshotOf(work.shop.bench()), now, size));
      expect(lines.length).toBeLessThanOrEqual(size[1]);
      for (const line of lines) expect(stringWidth(plain(line))).toBeLessThanOrEqual(size[0]);
    }
  });

  it('shows a piece that is only in the history, and says while past years are read', async () => {
    const empty = snapshotOf(foldBench([]));
    const view = viewOf(empty, now);
    const text = (each: JobCardState): string =>
      jobCardScreen.draw(each, view).lines.map(plain).join('\n');
    expect(text(state)).toContain('Reading past years.');
    const past = { bench: work.shop.bench(), problems: ['History of 2019 is damaged.'] };
    const port = portOf(() => empty, { past: () => Promise.resolve(past) });
    const loaded = (await jobCardScreen.load?.(state, port)) ?? state;
    expect(text(loaded)).toContain('Job card: 1 Beech stool');
    expect(text(loaded)).toContain('History of 2019 is damaged.');
    expect(text({ ...loaded, piece: 'nowhere' })).toContain('There is no such piece any more.');
    expect(jobCardScreen.press({ ...loaded, piece: 'nowhere' }, key('m'), view, port)).toEqual({});
  });
});
