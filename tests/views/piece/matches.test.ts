import { expect, test } from 'vitest';
import { pieceScreen } from '../../../src/views/piece/index.ts';
import type { PieceState } from '../../../src/views/screens.ts';
import { at, Facts, rowsOf, snapshotOf, viewOf, type Size } from '../support/bench-of.ts';
import { deskOf } from '../support/desk-of.ts';
import { fitsEverywhere } from '../support/fits.ts';
import { clear, stoolSteps, twoPartBleach } from './invented-stool.ts';

const now = at('24 14:02');

/** Two stools alike; A stood six minutes on the first, and stands on the second since 14:00. */
const stools = (): Facts =>
  new Facts()
    .piece('24 08:00', 4, 'Beech stool', stoolSteps, [clear, twoPartBleach])
    .piece('24 08:01', 5, 'Its twin', stoolSteps, [clear, twoPartBleach])
    .stamp('24 09:00', 4, 'bleach', 'first-stroke', { agent: 'A' })
    .stamp('24 09:06', 4, 'bleach', 'first-stroke', { agent: 'B' })
    .done('24 09:20', 4, 'bleach')
    .done('24 09:30', 5, 'look')
    .done('24 09:40', 5, 'strip')
    .tell('24 14:00', 'picked-up', {
      session: 's5',
      targets: [{ piece: 'p5', part: null, step: 'bleach' }],
      hand: 1,
    })
    .stamp('24 14:00', 5, 'bleach', 'first-stroke', { agent: 'A' });

test('m picks the other piece, and the same again undoes it', () => {
  const { press, text, list, pick, port } = deskOf({ now, facts: stools().list });
  press('5', 'p', 'm');
  expect(text()).toContain('what should 5 Its twin match?');
  expect(list()).toEqual(['1 4 Beech stool']);
  pick(1);
  expect(text()).toContain('5 Its twin matches 4 Beech stool');
  expect(port.piece('p5').partners).toEqual([{ piece: 'p4', name: 'Beech stool' }]);
  port.wait(2000);
  press('m');
  expect(list()).toEqual(['1 4 Beech stool   matches; again: no longer']);
  press('escape');
  expect(port.piece('p5').partners).toHaveLength(1);
  port.wait(2000);
  press('m');
  pick(1);
  expect(port.piece('p5').partners).toEqual([]);
});

const paired = (): Facts =>
  stools()
    .tell('24 08:02', 'match-told', {
      piece: 'p5',
      partner: 'p4',
      name: 'Beech stool',
      matches: true,
    })
    .tell('24 08:02', 'match-told', {
      piece: 'p4',
      partner: 'p5',
      name: 'Its twin',
      matches: true,
    });

function shown(facts: Facts, size: Size = [80, 24]): string {
  const state: PieceState = { is: 'piece', piece: 'p5', at: null };
  const view = viewOf(snapshotOf(facts.bench()), now, size);
  return rowsOf(pieceScreen.draw(state, view)).join('\n').replaceAll(/\s+/g, ' ');
}

test("a dwell that runs has the partner's as its target, on the opened piece and on the bench", () => {
  expect(shown(paired())).toContain('dwell match 4: 6:00; 4:00 from now');
  const { press, text } = deskOf({ now, facts: paired().list });
  press('5');
  expect(text()).toContain('match 4: 6:00, at 14:06');
  press('4');
  expect(text()).not.toContain('match 4');
});

test('what differs is said, or that nothing does', () => {
  expect(shown(paired())).toContain('matches 4 Beech stool: nothing differs so far');
  const late = paired()
    .stamp('24 14:01', 5, 'bleach', 'first-stroke', { agent: 'B' })
    .tell('24 14:01', 'step-skipped', { piece: 'p5', step: 'coat3', skipped: true });
  expect(shown(late.done('24 14:02', 4, 'coat1'), [80, 30])).toContain(
    'matches 4 Beech stool: 4 gets 3 coats of Waterborne clear, this 2; A stood 6 min on 4, 1 min here',
  );
});

test('fits everywhere, also the list', () => {
  const view = viewOf(snapshotOf(paired().bench()), now);
  for (const state of [
    { is: 'piece', piece: 'p5', at: null },
    { is: 'piece', piece: 'p5', at: null, asks: 'match', from: 0 },
  ] as const)
    fitsEverywhere((size) => pieceScreen.draw(state, { ...view, ...size }), /Esc/);
});
