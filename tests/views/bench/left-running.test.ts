import { describe, expect, it } from 'vitest';
import { at } from '../support/bench-of.ts';
import { deskOf } from '../support/desk-of.ts';
import { inventedWork } from '../hours/invented-work.ts';

describe('a session left running, on the bench', () => {
  const opened = (now: string) => deskOf({ now: at(now), facts: inventedWork().shop.facts() });

  it('is asked about in one quiet line that names the keys, and answered there once', () => {
    const desk = opened('17 14:00');
    expect(desk.text()).toContain('1 Beech stool left running from 10:20? 1 m');
    expect(desk.text([40, 20])).toContain('1 left running? 1 m');
    const ends = desk.port.bench.sessions.map(({ end }) => end);
    desk.press('1', 'm');
    expect(desk.text()).toContain('trim to 10:54, n: it is right');
    expect(desk.port.bench.sessions.map(({ end }) => end)).toEqual(ends);
    desk.press('n', 'escape', 'up');
    expect(desk.text()).not.toContain('left running');
    expect(desk.port.bench.sessions.map(({ end }) => end)).toEqual(ends);
  });

  it('is no longer asked on the bench after two days', () => {
    expect(opened('20 14:00').text()).not.toContain('left running');
  });
});
