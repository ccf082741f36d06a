import { Terminal } from '@xterm/headless';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  osc777,
  osc9,
  osc99,
  terminalPing,
  throughTmux,
  type TerminalPing,
} from '../../../src/shell/ping/terminal.ts';

const ping: TerminalPing = {
  id: 'c12',
  title: '4 Oak chest: B on',
  body: 'A dries at 14:29',
  loud: true,
};

/** What a terminal emulator takes out of the bytes: the payload of each sequence, the bells, and what is left on screen. */
async function received(bytes: string) {
  const terminal = new Terminal({ cols: 80, rows: 4, allowProposedApi: true });
  const payloads: Record<number, string[]> = { 9: [], 99: [], 777: [] };
  for (const [code, list] of Object.entries(payloads)) {
    terminal.parser.registerOscHandler(Number(code), (data) => {
      list.push(data);
      return true;
    });
  }
  let bells = 0;
  terminal.onBell(() => bells++);
  await new Promise<void>((resolve) => terminal.write(`${bytes}|`, resolve));
  const screen = terminal.buffer.active.getLine(0)?.translateToString(true);
  terminal.dispose();
  return { payloads, bells, screen };
}

describe('sequences for the terminal', () => {
  it('writes OSC 9 as one text that ends in BEL', () => {
    expect(osc9(ping)).toBe('\u001b]9;4 Oak chest: B on: A dries at 14:29\u0007');
  });

  it('does not let OSC 9 begin like a progress report', () => {
    expect(osc9({ ...ping, title: '4;1;50', body: '' })).toBe('\u001b]9;4,1;50\u0007');
    expect(osc9({ ...ping, title: ' 12 ; x', body: '' })).toBe('\u001b]9;12 , x\u0007');
  });

  it('keeps semicolons out of the fields of OSC 777', () => {
    expect(osc777({ ...ping, title: 'B on; now', body: 'a;b' })).toBe(
      '\u001b]777;notify;B on, now;a,b\u0007',
    );
  });

  it('writes OSC 99 as two chunks under one id, the second one showing it', () => {
    expect(osc99(ping)).toBe(
      '\u001b]99;i=c12:u=2:d=0:p=title;4 Oak chest: B on\u001b\\\u001b]99;i=c12:u=2:d=1:p=body;A dries at 14:29\u001b\\',
    );
  });

  it('marks only a loud ping as critical and never has an id that breaks the form', () => {
    expect(osc99({ ...ping, loud: false, id: 'a:b;c=d/e' })).toContain('i=abcde:u=1:');
    expect(osc99({ ...ping, id: ';;' })).toContain('i=recoat:');
  });

  it('writes nothing when it is off', () => {
    expect(terminalPing('off', ping, { TMUX: 'x' })).toBe('');
  });

  it('goes through tmux with every escape doubled', () => {
    expect(throughTmux('\u001b]9;x\u0007')).toBe('\u001bPtmux;\u001b\u001b]9;x\u0007\u001b\\');
    expect(terminalPing('osc9', ping, { TMUX: '/tmp/tmux' })).toBe(throughTmux(osc9(ping)));
    expect(terminalPing('osc9', ping, { TMUX: '' })).toBe(osc9(ping));
  });
});

describe('sequences as a terminal emulator reads them', () => {
  it('arrive whole and leave nothing on the screen', async () => {
    expect(await received(osc9(ping))).toEqual({
      payloads: { 9: ['4 Oak chest: B on: A dries at 14:29'], 99: [], 777: [] },
      bells: 0,
      screen: '|',
    });
    expect((await received(osc777(ping))).payloads[777]).toEqual([
      'notify;4 Oak chest: B on;A dries at 14:29',
    ]);
    expect((await received(osc99(ping))).payloads[99]).toHaveLength(2);
  });

  it('can not be broken out of by a name', async () => {
    const texts = fc.string({
      unit: fc.constantFrom(
        '\u001b',
        '\u0007',
        '\\',
        '\u009c',
        ']',
        '9',
        ';',
        'P',
        '\n',
        '\u0018',
        'a',
        '\u009b',
        '[',
        'm',
      ),
    });
    await fc.assert(
      fc.asyncProperty(
        texts,
        texts,
        fc.constantFrom(osc9, osc777, osc99),
        async (title, body, form) => {
          const { payloads, bells, screen } = await received(form({ ...ping, title, body }));
          const { 9: nine, 99: ninetyNine, 777: triple } = payloads;
          expect([nine?.length, ninetyNine?.length, triple?.length]).toEqual(
            form === osc9 ? [1, 0, 0] : form === osc99 ? [0, 2, 0] : [0, 0, 1],
          );
          expect([bells, screen]).toEqual([0, '|']);
          if (form === osc777) expect(triple?.[0]?.split(';')).toHaveLength(3);
        },
      ),
      { numRuns: 150 },
    );
  });
});
