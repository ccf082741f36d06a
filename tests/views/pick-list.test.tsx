import { render } from 'ink-testing-library';
import { afterEach, expect, test } from 'vitest';
import { createDesk } from '../../src/views/desk.ts';
import { DeskView } from '../../src/views/desk-view.tsx';
import type { Theme } from '../../src/views/theme/index.ts';
import { afternoon, at, step } from './support/bench-of.ts';
import { FakePort } from './support/fake-port.ts';

const theme = (): Theme => ({ colour: 'bare', glyphs: 'blocks' });

/** React and Ink have drawn everything that a key set off. */
const drawn = async (): Promise<void> => {
  for (let turn = 0; turn < 4; turn += 1) await new Promise((resolve) => setImmediate(resolve));
};

/** Ink waits this long to tell Esc from the beginning of an arrow key. */
const escape = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 60));

const keys = { enter: '\r', down: '\u001b[B', up: '\u001b[A', escape: '\u001b' };

let unmount: () => void = () => undefined;
afterEach(() => unmount());

function shownDesk(): {
  readonly port: FakePort;
  readonly write: (...inputs: readonly string[]) => Promise<void>;
  readonly rows: () => readonly string[];
} {
  const port = new FakePort({
    now: at('24 14:29'),
    facts: afternoon().list,
    schedules: ['bleach and clear', 'paint and wax', 'glue-up repair'].map((name) => ({
      id: name,
      name,
      summary: `for \u001b]0;${name}\u0007`,
      hash: '',
      steps: [step('s', 'sand')],
      products: {},
    })),
  });
  const desk = createDesk({ port, ticks: port.ticks, theme, leave: () => undefined });
  const screen = render(<DeskView desk={desk} theme={theme} />);
  ({ unmount } = screen);
  return {
    port,
    write: async (...inputs) => {
      for (const input of inputs) {
        port.wait(2000);
        screen.stdin.write(input);
        await drawn();
        if (input === keys.escape) await escape();
      }
    },
    rows: () => (screen.lastFrame() ?? '').split('\n').map((row) => row.trimEnd()),
  };
}

const listed = (rows: readonly string[]): readonly string[] =>
  rows.filter((row) => /^ {2}(>| ) \d /.test(row)).map((row) => row.slice(2, 22).trimEnd());

test('a schedule is picked with arrows and Enter from the list that stands on its own rows', async () => {
  const { write, rows, port } = shownDesk();
  await drawn();
  await write('a', 'Cane ', 'rocker', keys.enter);
  expect(rows()).toHaveLength(24);
  expect(rows()[0]).toBe('add a piece, 2 of 2: Cane rocker');
  expect(rows().slice(2, 5)).toEqual([
    expect.stringMatching(/^ {2}> 1 bleach and clear {2}1 step/),
    expect.stringMatching(/^ {4}2 paint and wax/),
    expect.stringMatching(/^ {4}3 glue-up repair/),
  ]);
  expect(rows()[6]).toBe(
    'Hours from the finishing schedule, not yet from you. Wood, size, date: later.',
  );
  expect(rows().at(-1)).toBe('Enter or its number: on the bench   Esc: back to the name');
  await write(keys.down);
  expect(rows()[3]).toMatch(/^ {2}> 2 paint and wax/);
  await write(keys.enter);
  expect(port.piece('key1').schedule.id).toBe('paint and wax');
  expect(rows()).toContainEqual(
    expect.stringMatching(/^9 Cane rocker on the bench: .* at least 1 day/),
  );
  expect(rows().join('\n')).toContain('[9] Cane rocker.');
});

test('its number picks it at once, and nothing that would act on the terminal is sent', async () => {
  const { write, rows, port } = shownDesk();
  await drawn();
  await write('a', 'Chest', keys.enter);
  expect(rows().join('\n')).toContain('for \\x1b]0;bleach and clear\\x07');
  // eslint-disable-next-line no-control-regex -- what acts is to be absent
  expect(rows().join('\n')).not.toMatch(/[\u0007\u001b]/);
  await write('3');
  expect(port.piece('key1').schedule.id).toBe('glue-up repair');
});

test('Esc leaves the list, letters do nothing in it', async () => {
  const { write, rows, port } = shownDesk();
  await drawn();
  await write('a', 'Chest', keys.enter, 'x', 'q', ' ', keys.escape);
  expect(rows()[2]).toBe('name   Chest_');
  await write(keys.escape);
  expect(rows()[0]).toMatch(/^14:29 {2}Tue 24 Nov/);
  expect(port.asked).toEqual([]);
});

test('a list that turns its page begins with its first item again', async () => {
  const { write, rows, port } = shownDesk();
  await drawn();
  await write('3', 'p', 'i', 'odd job', keys.enter);
  expect(rows()[0]).toBe('insert odd job: what kind of work is it?');
  expect(listed(rows())[0]).toBe('> 1 look over');
  await write(keys.up);
  expect(listed(rows()).at(-1)).toMatch(/^> 9 \d+ more/);
  await write(keys.enter);
  expect(listed(rows())[0]).toMatch(/^> 1 /);
  expect(listed(rows())[0]).not.toBe('> 1 look over');
  await write('1');
  expect(port.steps('p3')).toEqual(['clear coat 2 of 3', 'odd job', 'next coat']);
});

test('a whole line in one delivery is a name and its Enter', async () => {
  const { write, rows } = shownDesk();
  await drawn();
  await write('a', 'Chest of drawers\r');
  expect(rows()[0]).toBe('add a piece, 2 of 2: Chest of drawers');
  expect(listed(rows())).toHaveLength(3);
});
