import { describe, expect, it } from 'vitest';
import type { HoursPage } from '../../../src/views/screens.ts';
import { at } from '../support/bench-of.ts';
import { deskOf } from '../support/desk-of.ts';
import { inventShop } from '../../tracker/estimate/invented-shop.ts';
import { inventedWork } from './invented-work.ts';

const now = at('17 14:00');

const rows = [
  { at: at('03 12:00'), piece: 'Oak chest', stepClass: 'strip', minutes: 95, estimate: 60 },
  { at: at('04 12:00'), piece: 'Oak chest', stepClass: 'scuff', minutes: 25, estimate: 10 },
  { at: at('05 12:00'), piece: 'Elm stool', stepClass: 'strip', minutes: 70, estimate: 60 },
] as const;
const intent = { do: 'import hours', file: 'old.csv', fingerprint: 'made up', rows } as const;

function shown(page: HoursPage, isAlone: boolean): string {
  const shop = isAlone
    ? inventShop({ tempC: 16, rh: 60, readAt: at('16 08:00') })
    : inventedWork().shop;
  shop.act(intent, at('17 13:50'));
  return deskOf({
    now,
    facts: shop.facts(),
    start: { is: 'hours', piece: null, at: 0, past: null, page },
  }).text();
}

describe('imported hours alone', () => {
  it('are said to be all, and claimed no range', () => {
    expect(shown('classes', true)).toContain(
      'hours: 2 finished pieces, all imported, 4 Nov to 5 Nov',
    );
    expect(shown('classes', true)).toContain('Fewer than 5 pieces in each row: a hint at most.');
    for (const page of ['classes', 'ranges'] as const) {
      expect(shown(page, true)).toContain('No range to judge yet: imported hours claimed none.');
      expect(shown(page, true)).not.toContain('Nothing was done and timed');
    }
    expect(shown('ranges', true)).not.toContain('claimed then');
  });

  it('went into nothing that can be told apart, and that is said in place of noughts', () => {
    const where = shown('where', true);
    expect(where).not.toContain('0 min');
    expect(where).not.toContain('Nothing was done');
    expect(where).toContain('Imported hours tell neither setup nor waiting apart, and no piece of');
    expect(where).toContain('Cost most against the estimate, imported hours too:');
    expect(where).toContain('strip: 45 min over estimate on 2 pieces, mostly on Oak chest');
    expect(where).toContain('scuff: 15 min over estimate on Oak chest; few pieces yet');
  });
});

it('imported hours beside own ones are left out of where the hours went, and counted in what cost most: both is said', () => {
  const where = shown('where', false);
  expect(where).toContain('> working');
  expect(where.replaceAll('\n', ' ')).toContain(
    'Imported hours are left out: they tell neither setup nor waiting apart.',
  );
  expect(where).toContain('Cost most against the estimate, imported hours too:');
  expect(where).toContain('strip: 85 min over estimate on 6 pieces');
});
