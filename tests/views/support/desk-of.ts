import { createDesk, type Desk } from '../../../src/views/desk.ts';
import type { Theme } from '../../../src/views/theme/index.ts';
import type { Screen } from '../../../src/views/screens.ts';
import { key, rowsOf, type Size } from './bench-of.ts';
import { FakePort, type FakePortOptions } from './fake-port.ts';

/** A desk on a fake port, driven by the names of keys, and read row by row. */
export type DrivenDesk = {
  readonly desk: Desk;
  readonly port: FakePort;
  /** Each key on its own, two seconds after the one before it, so that no guard holds it back. */
  readonly press: (...names: readonly string[]) => void;
  /** Text as it is typed, letter by letter. */
  readonly type: (text: string) => void;
  readonly rows: (size?: Size) => readonly string[];
  readonly text: (size?: Size) => string;
  /** The list's labels, if one is open. */
  readonly list: (size?: Size) => readonly string[];
  /** Picks from the open list by the number before the label. */
  readonly pick: (number: number, size?: Size) => void;
  /** Everything that was begun has come to its end. */
  readonly settled: () => Promise<void>;
};

const usual: Size = [80, 24];

export function deskOf(
  options: FakePortOptions & { readonly start?: Screen; readonly theme?: Theme },
): DrivenDesk {
  const port = new FakePort(options);
  const theme: Theme = options.theme ?? { colour: 'none', glyphs: 'blocks' };
  const desk = createDesk({
    port,
    ticks: port.ticks,
    theme: () => theme,
    leave: () => undefined,
    ...(options.start === undefined ? {} : { start: options.start }),
  });
  desk.subscribe(() => undefined);
  desk.frame(...usual);
  const rows = (size: Size = usual): readonly string[] => rowsOf(desk.frame(...size));
  const list = (size: Size = usual): readonly string[] =>
    desk.frame(...size).pick?.items.map(({ label }) => label) ?? [];
  return {
    desk,
    port,
    press: (...names) => {
      for (const name of names) {
        port.wait(2000);
        desk.press([key(name)]);
      }
    },
    type: (text) => {
      for (const character of text)
        desk.press([key(character === ' ' ? 'space' : character.toLowerCase(), character)]);
    },
    rows,
    text: (size) => rows(size).join('\n'),
    list,
    pick: (number, size = usual) => {
      const item = desk.frame(...size).pick?.items[number - 1];
      if (item === undefined) throw new Error(`nothing stands at ${number}`);
      desk.picked(item.value);
    },
    settled: async () => {
      for (let turn = 0; turn < 5; turn += 1) await Promise.resolve();
    },
  };
}
