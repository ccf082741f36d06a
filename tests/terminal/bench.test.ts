import { describe, expect, it } from 'vitest';
import { keys, openTerminal } from './support/terminal.ts';

const addPiece = async (
  terminal: ReturnType<typeof openTerminal>,
  name: string,
  schedule: string,
): Promise<void> => {
  await terminal.press('a');
  await terminal.shows('add a piece');
  await terminal.type(name);
  await terminal.press(keys.enter);
  await terminal.shows('add a piece, 2 of 2');
  await terminal.press(schedule);
  await terminal.shows(name);
  // For a second after a list has closed the bench takes no key for its own.
  await new Promise((resolve) => setTimeout(resolve, 1000));
};

describe('the bench in a real terminal', () => {
  it('says in three lines what to do when it is empty', async () => {
    const terminal = openTerminal();
    await terminal.shows('The bench is empty.');
    expect(terminal.isAlternateScreen()).toBe(true);
    expect(terminal.screen()).toContain('Add a piece: a name and a finishing schedule will do.');
  });

  it('adds a piece, picks it up, and remembers both after being killed', async () => {
    const terminal = openTerminal();
    await terminal.shows('The bench is empty.');
    await addPiece(terminal, 'Oak settle', '1');
    await terminal.press(keys.enter);
    await terminal.shows('in hand since');
    await terminal.settles();
    terminal.kill('SIGKILL');
    await terminal.ends();
    const again = openTerminal({ folder: terminal.folder });
    await again.shows('in hand since');
    expect(again.screen()).toContain('[1] Oak settle');
  });
});
