import { render as renderInk } from 'ink';
import { PassThrough } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { createDesk } from '../../src/views/desk.ts';
import { DeskView } from '../../src/views/desk-view.tsx';
import type { Theme } from '../../src/views/theme/index.ts';
import { afternoon, at } from './support/bench-of.ts';
import { FakePort } from './support/fake-port.ts';

const theme = (): Theme => ({ colour: 'dark', glyphs: 'blocks' });

/** What a screen reader is given of the afternoon's bench, write by write. */
function readAloud() {
  const port = new FakePort({ now: at('24 14:28:10'), facts: afternoon().list });
  const desk = createDesk({ port, ticks: port.ticks, theme, leave: () => undefined });
  const written: string[] = [];
  const stdout = Object.assign(new PassThrough(), { columns: 80, rows: 24, isTTY: true });
  stdout.on('data', (chunk: Buffer) => written.push(chunk.toString()));
  const stdin = Object.assign(new PassThrough(), {
    isTTY: true,
    setRawMode: () => stdin,
    ref: () => stdin,
    unref: () => stdin,
  });
  const app = renderInk(<DeskView desk={desk} theme={theme} />, {
    stdout: stdout as unknown as NodeJS.WriteStream,
    stdin: stdin as unknown as NodeJS.ReadStream,
    isScreenReaderEnabled: true,
    interactive: true,
    patchConsole: false,
  });
  return { port, app, written };
}

const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 60));

describe('the bench for a screen reader', () => {
  it('is a sentence for each piece, without bars and figures', async () => {
    const { app, written } = readAloud();
    await settle();
    const text = written.join('');
    expect(text).toContain(
      '2 Plant stand, varnish coat 1: try it till 18 30, 4 hours 1 minute left',
    );
    expect(text).not.toMatch(/[█▒┊×]/);
    app.unmount();
  });

  it('says nothing more while only seconds go by', async () => {
    const { app, port, written } = readAloud();
    await settle();
    const before = written.length;
    port.wait(2000);
    await settle();
    expect(written.length).toBe(before);
    app.unmount();
  });
});
