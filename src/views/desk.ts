import { fitLine, lineOf, type Line } from './drawing/index.ts';
import { benchStart } from './bench/bench-state.ts';
import { modules } from './modules.ts';
import type { Press } from './keys/press.ts';
import type { BenchPort, Ticks } from './port.ts';
import {
  refused,
  type Frame,
  type Message,
  type ScreenModule,
  type Step,
  type View,
} from './screen.ts';
import type { Screen } from './screens.ts';
import type { Theme } from './theme/index.ts';
import { tooSmall } from './too-small.ts';

/** All screens together: a pile of them, of which the top one has the keyboard and is drawn. Knows neither Ink nor React. */
export type Desk = {
  readonly subscribe: (listener: () => void) => () => void;
  /** The top screen as lines, each exactly as wide as asked for. */
  readonly frame: (columns: number, rows: number) => Frame;
  /** Presses that arrived in one delivery of input, and when. */
  readonly press: (presses: readonly Press[]) => void;
  readonly picked: (value: string) => void;
  readonly paste: (text: string) => void;
  readonly top: () => Screen;
};

export type DeskOptions = {
  readonly port: BenchPort;
  readonly ticks: Ticks;
  readonly theme: () => Theme;
  readonly leave: () => void;
  readonly start?: Screen;
};

const second = 1000;
const minute = 60 * second;

export function createDesk({ port, ticks, theme, leave, start }: DeskOptions): Desk {
  let pile: readonly Screen[] = [start ?? benchStart(ticks.now())];
  let message: Message | null = null;
  let size = { columns: 80, rows: 24 };
  const listeners = new Set<() => void>();
  const changed = (): void => {
    for (const listener of listeners) listener();
  };
  const top = (): Screen => pile.at(-1) ?? benchStart(ticks.now());
  const view = (now = ticks.now()): View => ({
    snapshot: port.snapshot(),
    now,
    ...size,
    theme: theme(),
    message,
    pingWays: port.pingWays(),
    hasDemo: port.openDemo !== undefined,
  });

  const load = (screen: Screen): void => {
    void moduleOf(screen)
      .load?.(screen, port)
      .then(
        (loaded) => {
          pile = pile.map((each) => (each === screen ? loaded : each));
          changed();
        },
        (error: unknown) => {
          message = refused(
            `Not loaded: ${error instanceof Error ? error.message : String(error)}`,
          );
          changed();
        },
      );
  };

  const take = (step: Step<Screen>): void => {
    const below = pile.slice(0, -1);
    const kept = step.state ?? top();
    if (step.message !== undefined) message = step.message;
    if (step.leave === true) return leave();
    if (step.back === true) {
      pile = below.length > 0 ? withReturn(below) : [kept];
    } else if (step.replace !== undefined) {
      pile = [...below, step.replace];
      load(step.replace);
    } else if (step.open !== undefined) {
      pile = [...below, kept, step.open];
      load(step.open);
    } else {
      pile = [...below, kept];
    }
    changed();
  };

  /** The bench is told that a screen on top of it has closed: the key that closed it must not act there too. */
  const withReturn = (screens: readonly Screen[]): readonly Screen[] =>
    screens.map((screen, index) =>
      index === screens.length - 1 && screen.is === 'bench'
        ? { ...screen, returnedAt: ticks.present() }
        : screen,
    );

  return {
    subscribe: (listener) => {
      listeners.add(listener);
      const stops = [ticks.subscribe(listener), port.subscribe(listener)];
      return () => {
        listeners.delete(listener);
        for (const stop of stops) stop();
      };
    },
    frame: (columns, rows) => {
      size = { columns, rows };
      const small = tooSmall(columns, rows);
      if (small !== null) return small;
      const screen = top();
      const drawn = moduleOf(screen).draw(screen, view());
      ticks.pace(drawn.ticking === true ? second : minute);
      return { ...drawn, lines: fill(drawn.lines, columns, rows, theme()) };
    },
    press: (presses) => {
      const at = ticks.present();
      const screen = top();
      const module = moduleOf(screen);
      if (module.many !== undefined && presses.length > 1 && module.typing?.(screen) !== true) {
        take(module.many(screen, presses, view(at)));
        return;
      }
      for (const press of presses) {
        const current = top();
        message = null;
        take(moduleOf(current).press(current, press, view(at), port));
      }
    },
    picked: (value) => {
      const screen = top();
      const step = moduleOf(screen).picked?.(screen, value, view(ticks.present()), port);
      if (step) take(step);
    },
    paste: (text) => {
      const screen = top();
      const module = moduleOf(screen);
      if (module.typing?.(screen) !== true) return;
      // A field is one line: what a paste has beyond its first goes nowhere.
      for (const character of [...(text.split(/[\r\n]/)[0] ?? '')]) {
        const current = top();
        take(
          moduleOf(current).press(
            current,
            { name: character.toLowerCase(), text: character },
            view(ticks.present()),
            port,
          ),
        );
      }
    },
    top,
  };
}

/** The registry's types tie each name to its own state; this is the one place where that is read back. */
const moduleOf = (screen: Screen): ScreenModule<Screen> =>
  modules[screen.is] as unknown as ScreenModule<Screen>;

function fill(
  lines: readonly Line[],
  columns: number,
  rows: number,
  theme: Theme,
): readonly Line[] {
  const shown = lines.slice(0, rows).map((line) => fitLine(line, columns, theme.glyphs));
  return [...shown, ...Array.from({ length: rows - shown.length }, () => lineOf(''))];
}
