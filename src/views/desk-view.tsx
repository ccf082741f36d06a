import {
  Box,
  Text,
  useApp,
  useCursor,
  useInput,
  useIsScreenReaderEnabled,
  usePaste,
  useWindowSize,
} from 'ink';
import { lineOf, plain } from './drawing/index.ts';
import SelectInput from 'ink-select-input';
import {
  memo,
  useCallback,
  useEffect,
  useState,
  useSyncExternalStore,
  type ReactNode,
} from 'react';
import type { Desk } from './desk.ts';
import { readPresses } from './keys/press.ts';
import type { Frame, Pick } from './screen.ts';
import { paint, type Theme } from './theme/index.ts';

type Props = {
  readonly desk: Desk;
  readonly theme: () => Theme;
  readonly suspending?: Suspending;
};

/** Stopping for a while and coming back (Ctrl+Z, or the signal for it); only the shell can do either. */
export type Suspending = {
  /** Resolves when the process goes on. */
  readonly stop: () => Promise<void>;
  /** Calls back when the signal comes; returns how to stop listening. */
  readonly onSignal: (listener: () => void) => () => void;
};

/**
 * Draws the desk with Ink: each line of the screen is one text, which is cheap to lay out, and Ink takes apart again only
 * the lines of which a character has changed.
 */
export function DeskView({ desk, theme, suspending }: Props): ReactNode {
  const { columns, rows } = useWindowSize();
  const isRead = useIsScreenReaderEnabled();
  const [screen] = useState(() => remembering(desk, theme, isRead));
  const drawn = useSyncExternalStore(
    desk.subscribe,
    useCallback(() => screen(columns, rows), [screen, columns, rows]),
  );
  const { suspendTerminal } = useApp();
  const suspend = useCallback(() => {
    if (suspending !== undefined) void suspendTerminal(suspending.stop);
  }, [suspending, suspendTerminal]);
  useEffect(() => suspending?.onSignal(suspend), [suspending, suspend]);
  const isPicking = drawn.frame.pick !== undefined;
  // The terminal's own cursor stands in the field, where an input method shows what is being composed.
  const { setCursorPosition } = useCursor();
  setCursorPosition(drawn.frame.cursor);
  useInput((input, key) => {
    if (key.ctrl && input === 'z') return suspend();
    const presses = readPresses(input, key);
    // The list has the arrows, Enter and digits; the screen beneath hears only what leaves it.
    const heard = isPicking ? presses.filter((press) => press.name === 'escape') : presses;
    if (heard.length > 0) desk.press(heard);
    else if (presses.length > 0) desk.listHeard();
  });
  usePaste((text) => desk.paste(text));
  if (isRead && !isPicking) return <Text>{drawn.lines.join('\n')}</Text>;
  return (
    // Lines are as wide as the screen already; hidden sideways too, Ink would cut each of them again in every frame. The
    // width is the terminal's own at that moment: where it grows narrower, Ink draws the lines of before once more.
    <Box width="100%" height={rows} overflowY="hidden" flexDirection="column">
      {drawn.frame.pick === undefined ? (
        <Lines lines={drawn.lines} />
      ) : (
        <PickList pick={drawn.frame.pick} lines={drawn.lines} onPick={desk.picked} theme={theme} />
      )}
    </Box>
  );
}

const Lines = ({ lines }: { readonly lines: readonly string[] }): ReactNode =>
  lines.map((line, place) => <ScreenLine key={place} line={line} />);

const ScreenLine = memo(function ScreenLine({ line }: { readonly line: string }): ReactNode {
  // A text of nothing has no height, and would draw up all lines below it.
  return <Text wrap="truncate">{line === '' ? ' ' : line}</Text>;
});

function PickList({ pick, lines, onPick, theme }: PickListProps): ReactNode {
  const [look] = useState(() => pickLook(theme));
  return (
    <>
      <Lines lines={lines.slice(0, pick.row)} />
      <Box flexShrink={0} height={pick.height} overflow="hidden">
        <SelectInput
          items={pick.items.map(({ label, value }) => ({ label, value, key: value }))}
          initialIndex={pick.from}
          limit={Math.min(pick.height, pick.items.length)}
          onSelect={(item) => onPick(item.value)}
          indicatorComponent={look.Mark}
          itemComponent={look.Row}
        />
      </Box>
      <Lines lines={lines.slice(pick.row + pick.height)} />
    </>
  );
}

type PickListProps = {
  readonly pick: Pick;
  readonly lines: readonly string[];
  readonly onPick: (value: string) => void;
  readonly theme: () => Theme;
};

type Picked = { readonly isSelected?: boolean };

/** Mark and row of a list to pick from, in the theme's own looks instead of the list's. */
const pickLook = (theme: () => Theme) => ({
  Mark: ({ isSelected = false }: Picked): ReactNode => <Text>{isSelected ? '  > ' : '    '}</Text>,
  Row: ({ isSelected = false, label }: Picked & { readonly label: string }): ReactNode => (
    <Text wrap="truncate">{paint(lineOf(label, isSelected ? 'strong' : 'text'), theme())}</Text>
  ),
});

/** Lines as the terminal is sent them; for a screen reader as they are read out. */
type Drawn = { readonly lines: readonly string[]; readonly frame: Frame };
type Asked = { readonly version: number; readonly columns: number; readonly rows: number };

/** Gives the same object as long as nothing visible has changed, so that nothing is drawn again. */
function remembering(
  desk: Desk,
  theme: () => Theme,
  isRead: boolean,
): (columns: number, rows: number) => Drawn {
  let last: Drawn | null = null;
  let asked: Asked | null = null;
  return (columns, rows) => {
    const version = desk.version();
    // React asks several times for one change.
    const isAsked = asked?.version === version && asked.columns === columns && asked.rows === rows;
    if (last !== null && isAsked) return last;
    asked = { version, columns, rows };
    const frame = desk.frame(columns, rows);
    const lines = isRead
      ? aloud(frame).split('\n')
      : frame.lines.map((line) => paint(line, theme()));
    const isSame =
      last !== null && sameLines(last.lines, lines) && samePick(last.frame.pick, frame.pick);
    if (!isSame || last === null) last = { lines, frame };
    return last;
  };
}

/** A frame for a screen reader: sentences where it has them, else its lines without the blank ones. */
const aloud = ({ spoken, lines }: Frame): string =>
  spoken?.() ??
  lines
    .map((line) => plain(line).trim())
    .filter((line) => line !== '')
    .join('\n');

const sameLines = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((line, place) => line === b[place]);

const samePick = (a: Pick | undefined, b: Pick | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && JSON.stringify(a) === JSON.stringify(b));
