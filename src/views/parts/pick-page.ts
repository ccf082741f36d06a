import { cut, width } from '../drawing/index.ts';
import type { Pick as PickList, View } from '../screen.ts';

export type PickItem = {
  readonly label: string;
  readonly value: string;
  /** The end of the label, told in whole under the list where the label has no room for it. */
  readonly whole?: string;
};

/** Value of the item that turns the page of a list; no id looks like it. */
export const nextPage = ':next page';

/** A list picks by digit: no page of it has more than nine. */
const longest = 9;

/** Cells before a label: the list's margin and the sign of the marked item. */
const before = 4;

/**
 * The part of a list that begins at `from`, its items numbered as the digits pick them. Where not all fit, the last
 * number turns the page.
 * @param row the row, from 0, at which the list begins
 * @param room rows that it may take
 */
export function pickPage(
  items: readonly PickItem[],
  from: number,
  row: number,
  room: number,
  { columns, theme }: Pick<View, 'columns' | 'theme'>,
): PickList {
  const size = pageSize(items.length, room);
  const isWhole = items.length <= size;
  const shown = isWhole ? items : items.slice(from, from + size - 1);
  const left = items.length - from - shown.length;
  const more = {
    label: left > 0 ? `${left} more` : 'from the first again',
    value: nextPage,
  };
  const numbered = (isWhole ? shown : [...shown, more]).map(({ label, value }, index) => ({
    label: cut(`${index + 1} ${label}`, columns - before, theme.glyphs),
    value,
  }));
  return { items: numbered, from: 0, row, height: numbered.length };
}

/** What the labels shown have no room for, by the number before each. */
export const cutOff = (
  items: readonly PickItem[],
  shown: PickList,
  { columns }: Pick<View, 'columns'>,
): readonly string[] =>
  shown.items.flatMap(({ value }, index) => {
    const { label = '', whole } = items.find((item) => item.value === value) ?? {};
    if (whole === undefined) return [];
    const isWhole = label.includes(whole) && width(`${index + 1} ${label}`) <= columns - before;
    return isWhole ? [] : [`${index + 1} ${whole}`];
  });

/** Where the next page begins; after the last one, the first. */
export function fromNextPage(items: number, from: number, room: number): number {
  const next = from + pageSize(items, room) - 1;
  return next < items ? next : 0;
}

const pageSize = (items: number, room: number): number =>
  Math.min(items, Math.max(2, Math.min(longest, room)));
