import { expect, test } from 'vitest';
import { at, Facts, product, step } from '../support/bench-of.ts';
import { deskOf } from '../support/desk-of.ts';

const now = at('24 14:29');

/** A chair that is being coated, and a chest of two drawers that gets the same coat. */
function coating() {
  const steps = [
    step('coat', 'coat 1', {
      product: 'clear',
      stepClass: 'coat, brushed',
      stamps: [{ event: 'first-stroke', says: 'first stroke' }],
    }),
    step('buff', 'buff'),
  ];
  const clear = product('clear', [], { chemistry: 'waterborne' });
  const facts = new Facts()
    .piece('24 08:00', 1, 'Chair', steps, [clear])
    .piece('24 08:01', 2, 'Chest', steps, [clear]);
  const driven = deskOf({ now, facts: facts.list, settings: { farView: 0 } });
  driven.port.act({ do: 'name parts', piece: 'p2', names: ['top drawer', 'bottom drawer'] });
  const [top = '', bottom = ''] = driven.port.piece('p2').parts.map(({ id }) => id);
  const { port, press, rows } = driven;
  press('1', 'enter');
  return {
    ...driven,
    top,
    bottom,
    foot: () => rows()[22] ?? '',
    /** The go that is in hand: whose parts, by id. */
    go: () => {
      const [session, ...others] = port.bench.sessions.filter(({ end }) => end === null);
      expect(others).toEqual([]);
      return session?.targets.map(({ piece, part, step: at }) => `${piece} ${part} ${at}`);
    },
    /** For which parts a step is finished. */
    finished: (piece: string) => port.piece(piece).finishes.map(({ part }) => part),
  };
}

test('a part that is selected is taken along by itself, and its sister beside it', () => {
  const { press, foot, go, rows, top, bottom } = coating();
  press('2', 'tab');
  expect(foot()).toContain('[2] Chest, top drawer.');
  expect(foot()).toContain('e: take along');
  press('e');
  expect(go()).toEqual(['p1 null coat', `p2 ${top} coat`]);
  expect(rows()[3]).toContain('in hand  1 Chair, 2 Chest top drawer: coat 1');
  expect(rows().filter((row) => row.startsWith('▶'))).toHaveLength(2);
  press('tab', 'e');
  expect(go()).toEqual(['p1 null coat', `p2 ${top} coat`, `p2 ${bottom} coat`]);
  // The same again takes out the one that is selected, and only it.
  press('e');
  expect(go()).toEqual(['p1 null coat', `p2 ${top} coat`]);
});

test('each part is stamped and finished by itself, and the go goes on for the others', () => {
  const { press, foot, go, finished, port, top, bottom } = coating();
  press('2', 'tab', 'e', 'tab', 'e');
  const all = go();
  press('tab', 'tab');
  expect(foot()).toContain('[2] Chest, top drawer.');
  press('space');
  expect(port.piece('p2').stamps.map(({ part, step: on }) => `${part} ${on}`)).toEqual([
    `${top} coat`,
  ]);
  press('space');
  expect(finished('p2')).toEqual([top]);
  // The keys go on with its sister, in the same go.
  expect(foot()).toContain('[2] Chest, bottom drawer.');
  expect(go()).toEqual(all);
  press('space', 'space');
  expect(finished('p2')).toEqual([top, bottom]);
  expect(go()).toEqual(all);
  expect(finished('p1')).toEqual([]);
  press('1', 'space', 'space');
  expect(finished('p1')).toEqual([null]);
  expect(go()).toEqual(all);
  press('enter');
  expect(go()).toBeUndefined();
  // One session, of which all three share the minutes.
  expect(port.bench.sessions).toHaveLength(1);
});

test('a part that was worked is not taken out again, and the screen says so', () => {
  const { press, go, text, top } = coating();
  press('2', 'tab', 'e', 'space', 'e');
  expect(text().replaceAll('\n', ' ')).toContain('Not taken out: 2 Chest was worked in this go');
  expect(go()).toEqual(['p1 null coat', `p2 ${top} coat`]);
});

test('a key on the sister that is not in this go does not put the others down; e takes it along', () => {
  const { press, foot, go, text, finished, port, top, bottom } = coating();
  press('2', 'tab', 'e', 'space', 'space');
  expect(finished('p2')).toEqual([top]);
  expect(foot()).toContain('[2] Chest, bottom drawer.');
  press('space');
  expect(text().replaceAll('\n', ' ')).toContain(
    'Not stamped: 2 Chest, bottom drawer, is not in this go, and 1 Chair is not done. e takes it along; Enter puts all of it down.',
  );
  expect(go()).toEqual(['p1 null coat', `p2 ${top} coat`]);
  press('e', 'space', 'space');
  expect(go()).toEqual(['p1 null coat', `p2 ${top} coat`, `p2 ${bottom} coat`]);
  expect(finished('p2')).toEqual([top, bottom]);
  expect(port.bench.sessions).toHaveLength(1);
});
