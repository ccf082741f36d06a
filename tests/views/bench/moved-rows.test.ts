import { describe, expect, it } from 'vitest';
import { lineWidth, plain } from '../../../src/views/drawing/index.ts';
import { orderAfter, type RowOrder } from '../../../src/views/bench/moved-rows.ts';
import { afternoon, at } from '../support/bench-of.ts';
import { deskOf } from '../support/desk-of.ts';

const now = at('24 14:29');
type Row = RowOrder['rows'][number];
const rows = (text: string, rank: Row['rank'] = 'waits'): readonly Row[] =>
  [...text].map((key) => ({ key, rank }));

const movedBetween = (before: readonly Row[], after: readonly Row[]): readonly string[] => [
  ...orderAfter(orderAfter(null, before, now), after, now).movedAt.keys(),
];

describe('which rows have changed their place', () => {
  it.each([
    ['none at first and while the order stays', 'abcd', 'abcd', []],
    ['the one that went up past all others', 'abcd', 'dabc', ['d']],
    ['the one that went down', 'abcd', 'bcda', ['a']],
    ['none where one came or one went', 'abcd', 'abed', []],
  ])('%s', (_, before, after, moved) => {
    expect(movedBetween(rows(before), rows(after))).toEqual(moved);
  });

  it('of two that changed places the one that stands otherwise than before', () => {
    const after = [...rows('b', 'in hand'), ...rows('ac')];
    expect(movedBetween(rows('abc'), after)).toEqual(['b']);
    expect(movedBetween(rows('abc'), [...rows('b'), ...rows('a', 'spoils'), ...rows('c')])).toEqual(
      ['a'],
    );
  });

  it('for ten seconds', () => {
    const moved = orderAfter(orderAfter(null, rows('ab'), now), rows('ba'), now);
    expect(orderAfter(moved, rows('ba'), now + 9_999).movedAt.size).toBe(1);
    expect(orderAfter(moved, rows('ba'), now + 10_000).movedAt.size).toBe(0);
  });
});

describe('the mark of a row that has changed its place', () => {
  const tagsOf = (colour: 'dark' | 'none') => {
    const driven = deskOf({
      now,
      facts: afternoon().list,
      theme: { colour, glyphs: 'blocks' },
    });
    driven.press('6', 'enter', '1');
    const frame = driven.desk.frame(80, 24);
    return {
      driven,
      frame,
      row: frame.lines.find((line) => /6 {2}Cane rocker {2}/.test(plain(line))),
    };
  };

  it('is a line under its number, and goes by itself', () => {
    const { driven, frame, row } = tagsOf('dark');
    expect(row?.find(({ role }) => role === 'moved')?.text).toBe('6');
    expect(frame.lines.every((line) => lineWidth(line) === 80)).toBe(true);
    driven.port.wait(10_000);
    const later = driven.desk.frame(80, 24);
    expect(later.lines.flat().filter(({ role }) => role === 'moved')).toEqual([]);
  });

  it('is ^ before it without colours', () => {
    expect(plain(tagsOf('none').row ?? [])).toMatch(/^▶\^6 {2}Cane rocker/);
  });
});
