import { expect, it } from 'vitest';
import { benchStart } from '../../../src/views/bench/bench-state.ts';
import { benchScreen } from '../../../src/views/bench/index.ts';
import type { ShownPing } from '../../../src/views/port.ts';
import {
  at,
  barred,
  clamps,
  Facts,
  ping,
  pot,
  product,
  rowsOf,
  snapshotOf,
  step,
  viewOf,
} from '../support/bench-of.ts';

const drawnAt = (facts: Facts, when: string, pings: readonly ShownPing[] = []) =>
  benchScreen.draw(
    { ...benchStart(at(when)), selected: 'p1' },
    viewOf(snapshotOf(facts.bench(), { pings }), at(when)),
  );
const textAt = (...asked: Parameters<typeof drawnAt>): string =>
  rowsOf(drawnAt(...asked)).join('\n');

it('is drawn every second while a row counts seconds, and once a minute before', () => {
  // In clamps for an hour, till 15:20; nothing is lost then, so that no large figure counts.
  const glued = new Facts()
    .piece('24 09:00', 1, 'Side table', [
      step('glue', 'glue-up', {
        windows: [clamps],
        stamps: [{ event: 'in-clamps', says: 'in clamps' }],
      }),
    ])
    .stamp('24 14:20', 1, 'glue', 'in-clamps');
  expect(textAt(glued, '24 15:09')).toMatch(/15:20 +11 min/);
  expect(drawnAt(glued, '24 15:09').ticking).toBe(false);
  expect(textAt(glued, '24 15:11')).toMatch(/15:20 +9:00/);
  expect(drawnAt(glued, '24 15:11').ticking).toBe(true);
});

it('tells the minutes that a step has taken so far, while nothing is in hand', () => {
  const begun = new Facts()
    .piece('24 09:00', 1, 'Oak settle', [
      step('sand', 'sand 120', { minutes: { typical: 45, low: 25, high: 90 } }),
    ])
    .pickUp('24 09:10', 1, 'sand')
    .tell('24 09:50', 'put-down', { session: 's1-24 09:10' });
  expect(textAt(begun, '24 11:00')).toContain(
    'sand 120, 1 of 1; 40 min so far, expected 25 to 90 min',
  );
});

it('says before when not to go on, of a step in hand for which the gap of a coat is not over', () => {
  const sprayed = new Facts()
    .piece('24 08:00', 1, 'Garden bench', [
      step('coat', 'coat 1', { windows: [barred] }),
      step('next', 'coat 2', { needs: ['recoat'] }),
    ])
    .stamp('24 08:40', 1, 'coat', 'first-stroke')
    .done('24 08:55', 1, 'coat')
    .pickUp('24 14:00', 1, 'next');
  // 24 hours after its last stroke.
  expect(textAt(sprayed, '24 14:10')).toContain('not before Wed 08:55, expected');
});

it('tells of a pot on which pieces it is, and not on which another is', () => {
  const mixed = (letter: string) => ({
    pot: letter,
    letter,
    product: product('epoxy', [pot], { productClass: 'epoxy' }),
  });
  const stamped = (number: number, of: string) => ({
    piece: `p${number}`,
    part: null,
    step: 'coat',
    event: 'first-stroke' as const,
    agent: null,
    pass: 1,
    section: null,
    pot: of,
    air: null,
  });
  const shop = new Facts();
  for (const number of [1, 2, 3])
    shop.piece('24 08:00', number, `Shelf ${number}`, [step('coat', 'coat')]);
  shop
    .tell('24 14:00', 'pot-mixed', mixed('A'))
    .tell('24 14:05', 'pot-mixed', mixed('B'))
    .tell('24 14:06', 'stamped', stamped(1, 'A'))
    .tell('24 14:07', 'stamped', stamped(3, 'A'))
    .tell('24 14:08', 'stamped', stamped(2, 'B'));
  const text = textAt(shop, '24 14:10');
  expect(text).toContain('mixed 14:00; on 1, 3;');
  expect(text).toContain('mixed 14:05; on 2;');
});

it('shows no ping that went out later than now: the clock was set back since', () => {
  const shop = new Facts().piece('24 09:00', 1, 'Oak settle', [step('sand', 'sand')]);
  const called = ping('a', '24 14:30', '1 Oak settle: try it, till 18:30');
  expect(textAt(shop, '24 14:30', [called])).toContain('1 Oak settle: try it, till 18:30');
  expect(textAt(shop, '24 14:29', [called])).not.toContain('try it, till 18:30');
});
