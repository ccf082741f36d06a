import { expect, test } from 'vitest';
import { noteScreen } from '../../../src/views/note/index.ts';
import type { NoteState } from '../../../src/views/screens.ts';
import { afternoon, at, snapshotOf, viewOf } from '../support/bench-of.ts';
import { deskOf, type DrivenDesk } from '../support/desk-of.ts';
import { fitsEverywhere } from '../support/fits.ts';

const now = at('24 14:29');

function noting(): DrivenDesk {
  const driven = deskOf({ now, facts: afternoon().list });
  driven.press('1', 'w');
  return driven;
}

test('writes a note on the piece', () => {
  const { press, type, rows, port, desk, text } = noting();
  expect(rows()[0]).toBe('note on 1 Oak settle');
  type('Runner replaced, left.');
  expect(text()).toContain('note  Runner replaced, left._');
  press('enter');
  expect(desk.top().is).toBe('bench');
  expect(port.piece('p1').notes).toMatchObject([{ step: null, text: 'Runner replaced, left.' }]);
  expect(text()).toContain('note on 1 Oak settle');
});

test('up and down choose the step it is on, and the notes already there are shown', () => {
  const { press, type, rows, port, text } = noting();
  press('down');
  expect(rows()[0]).toBe('note on 1 Oak settle, sand 120 grit');
  press('down');
  expect(rows()[0]).toBe('note on 1 Oak settle, sand 150 grit');
  press('down');
  expect(rows()[0]).toBe('note on 1 Oak settle');
  press('up');
  type('mind the inlay');
  press('enter', 'w', 'tab', 'tab');
  expect(port.piece('p1').notes).toMatchObject([{ step: 'sand2', text: 'mind the inlay' }]);
  expect(text()).toMatch(/14:29 {2}mind the inlay/);
});

test('an empty note is refused, Esc writes none', () => {
  const { press, type, port, desk, text } = noting();
  type('   ');
  press('enter');
  expect(text()).toContain('Not noted: the note is empty.');
  expect(text()).toContain('note     _');
  press('escape');
  expect(desk.top().is).toBe('bench');
  expect(port.piece('p1').notes).toEqual([]);
});

test('fits everywhere, also for a piece that is gone', () => {
  const view = viewOf(snapshotOf(afternoon().bench()), now);
  const state: NoteState = {
    is: 'note',
    piece: 'p1',
    step: 'sand',
    text: `漆\u001b[31m ${'x'.repeat(300)}`,
  };
  fitsEverywhere((size) => noteScreen.draw(state, { ...view, ...size }), /Esc: no note/);
  fitsEverywhere(
    (size) => noteScreen.draw({ ...state, piece: 'gone' }, { ...view, ...size }),
    /Esc/,
  );
});
