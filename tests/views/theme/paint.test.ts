import terminal from '@xterm/headless';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { plain, roles, segment, type Line } from '../../../src/views/drawing/index.ts';
import { okabeIto, paint, type ColourWay } from '../../../src/views/theme/index.ts';

const everyWay: readonly ColourWay[] = [
  'dark',
  'light',
  '16 on dark',
  '16 on light',
  'none',
  'bare',
];
const painted = (line: Line, colour: ColourWay): string =>
  paint(line, { colour, glyphs: 'blocks' });

const row: Line = [
  segment('▶[1]', 'strong'),
  segment(' Book rack '),
  segment('try it till', 'go'),
  segment(' 18:30', 'go'),
  segment(' ···', 'quiet'),
];

/** What a terminal shows after a text was sent to it: its first row, cell by cell. */
async function shown(text: string) {
  const screen = new terminal.Terminal({ cols: 80, rows: 2, allowProposedApi: true });
  await new Promise<void>((done) => screen.write(text, done));
  const line = screen.buffer.active.getLine(0);
  return (column: number) => {
    const cell = line?.getCell(column);
    if (cell === undefined) throw new Error(`no cell ${column}`);
    return {
      sign: cell.getChars(),
      ink: cell.isFgDefault() ? null : cell.getFgColor(),
      ground: cell.isBgDefault() ? null : cell.getBgColor(),
      bold: cell.isBold() !== 0,
      dim: cell.isDim() !== 0,
      inverse: cell.isInverse() !== 0,
      underlined: cell.isUnderline() !== 0,
    };
  };
}

const nothing = {
  ink: null,
  ground: null,
  bold: false,
  dim: false,
  inverse: false,
  underlined: false,
};
const rgb = (colour: string): number => Number.parseInt(colour.slice(1), 16);

describe('a painted line, as a terminal shows it', () => {
  it('on a dark ground with many colours', async () => {
    const at = await shown(painted(row, 'dark'));
    expect(at(0)).toEqual({ ...nothing, sign: '▶', bold: true });
    expect(at(5)).toEqual({ ...nothing, sign: 'B' });
    expect(at(15)).toEqual({ ...nothing, sign: 't', ink: rgb(okabeIto.skyBlue) });
    expect(at(31)).toEqual({ ...nothing, sign: '0', ink: rgb(okabeIto.skyBlue) });
    expect(at(33)).toEqual({ ...nothing, sign: '·', dim: true });
    expect(at(36)).toEqual({ ...nothing, sign: '' });
  });

  it('on a light ground: what is lost is a ground under black', async () => {
    const at = await shown(
      painted(
        [segment('a', 'work lost'), segment('b', 'keep off'), segment('c', 'loud'), segment('d')],
        'light',
      ),
    );
    expect(at(0)).toEqual({ ...nothing, sign: 'a', ink: 0, ground: rgb(okabeIto.orange) });
    expect(at(1)).toEqual({ ...nothing, sign: 'b', ink: 0, ground: rgb(okabeIto.purple) });
    expect(at(2)).toEqual({
      ...nothing,
      sign: 'c',
      ink: 0,
      ground: rgb(okabeIto.vermillion),
      bold: true,
    });
    expect(at(3)).toEqual({ ...nothing, sign: 'd' });
  });

  it('with sixteen colours', async () => {
    const at = await shown(
      painted(
        [
          segment('a', 'go'),
          segment('b', 'work lost'),
          segment('c', 'spoils'),
          segment('d', 'keep off'),
          segment('e', 'quiet'),
        ],
        '16 on dark',
      ),
    );
    expect([0, 1, 2, 3, 4].map((column) => [at(column).ink, at(column).ground])).toEqual([
      [14, null],
      [3, null],
      [0, 9],
      [5, null],
      [8, null],
    ]);
  });

  it('without colour: bold, inverse and underline are left', async () => {
    const at = await shown(
      painted(
        roles.map((role) => segment('x', role)),
        'none',
      ),
    );
    for (const [column, role] of roles.entries()) {
      expect(at(column)).toEqual({
        ...nothing,
        sign: 'x',
        bold: ['strong', 'work lost', 'refusal', 'loud'].includes(role),
        inverse: ['spoils', 'inverse', 'loud'].includes(role),
        underlined: role === 'moved',
      });
    }
  });

  test.each(everyWay)('leaves nothing behind it: %s', async (colour) => {
    for (const role of roles) {
      const at = await shown(`${painted([segment('x', role)], colour)}y`);
      expect(at(1)).toEqual({ ...nothing, sign: 'y' });
    }
  });
});

const anyLine: fc.Arbitrary<Line> = fc.array(
  fc.record({
    text: fc.string({ unit: 'binary', maxLength: 12 }),
    role: fc.constantFrom(...roles),
  }),
  { maxLength: 6 },
);

/** SGR sequences of ECMA-48: CSI, numbers, m. */
// eslint-disable-next-line no-control-regex -- sequences begin with a control
const sequences = /\u001b\[[\d;]+m/g;

it('sends nothing but its own sequences and the text, whatever stands in a name', () => {
  fc.assert(
    fc.property(anyLine, fc.constantFrom(...everyWay), (line, colour) => {
      const sent = painted(line, colour).replace(sequences, '');
      // eslint-disable-next-line no-control-regex -- none may be left
      expect(sent).not.toMatch(/[\u0000-\u001f\u007f-\u009f]/);
    }),
  );
});

it('sends no sequence at all to a bare terminal', () => {
  fc.assert(
    fc.property(anyLine, (line) => {
      expect(painted(line, 'bare')).toBe(plain(line));
      expect(painted(line, 'bare')).not.toContain('\u001b');
    }),
  );
});

it('changes its look once for neighbours of one role', () => {
  expect(painted(row, 'dark').match(sequences)).toHaveLength(6);
});
