import { standingsAt } from '../tracker/bench/index.ts';
import type { Instant } from '../tracker/time/index.ts';
import { fitLine, lineOf, type Line } from './drawing/index.ts';
import { benchRows } from './bench/bench-rows.ts';
import { benchStart, type BenchState } from './bench/bench-state.ts';
import { orderAfter, type RowOrder } from './bench/moved-rows.ts';
import { modules } from './modules.ts';
import type { Press } from './keys/press.ts';
import { kindsClosed, pileAfter, pileOf, withLoaded, withSelected, type Laid } from './pile.ts';
import type { BenchPort, Snapshot, Ticks } from './port.ts';
import {
  refused,
  said,
  type Frame,
  type Message,
  type ScreenModule,
  type Step,
  type View,
} from './screen.ts';
import type { Screen } from './screens.ts';
import type { Theme } from './theme/index.ts';
import { claimsOf, silencedNow, silencedPressAgain } from './silence.ts';
import { tooSmall } from './too-small.ts';

/** All screens together: a pile of them, of which the top one has the keyboard and is drawn. Knows neither Ink nor React. */
export type Desk = {
  readonly subscribe: (listener: () => void) => () => void;
  /** The top screen as lines, each exactly as wide as asked for. */
  readonly frame: (columns: number, rows: number) => Frame;
  /** Another one whenever a frame may have changed. */
  readonly version: () => number;
  /** Presses that arrived in one delivery of input, and when. */
  readonly press: (presses: readonly Press[]) => void;
  readonly picked: (value: string) => void;
  /** A key went to the open list, which acts on it by itself. */
  readonly listHeard: () => void;
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
/** One key reaches an open list and the desk this close together. */
const sameKey = 100;
const minute = 60 * second;

export function createDesk({ port, ticks, theme, leave, start }: DeskOptions): Desk {
  let pile = pileOf(start ?? firstBench(port.snapshot(), ticks.now()));
  let message: Message | null = null;
  /** That a key in a field silenced a ping: stands as long as the field is written in. */
  let silencedMeanwhile: Message | null = null;
  let silencedAt: Instant | null = null;
  let size = { columns: 80, rows: 24 };
  let order: RowOrder | null = null;
  const listeners = new Set<() => void>();
  let version = 0;
  let seen: Snapshot | null = null;
  const changed = (): void => {
    version += 1;
    for (const listener of listeners) listener();
  };
  const top = (): Screen => pile.top.screen;
  const view = (now = ticks.now()): View => ({
    snapshot: port.snapshot(),
    now,
    ...size,
    theme: theme(),
    message: message ?? silencedMeanwhile,
    pingWays: port.pingWays(),
    hasDemo: port.openDemo !== undefined,
  });

  const load = (opened: Laid): void => {
    void moduleOf(opened.screen)
      .load?.(opened.screen, port)
      .then(
        (loaded) => {
          pile = withLoaded(pile, opened, loaded);
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
    if (step.message !== undefined) message = step.message;
    if (step.leave === true) return leave();
    const before = pile;
    pile = pileAfter(before, step, ticks.present);
    if (pile.openings > before.openings) load(pile.top);
    changed();
    for (const kind of kindsClosed(before, pile)) modules[kind].closed?.(port);
  };

  const isTyping = (screen: Screen): boolean => moduleOf(screen).typing?.(screen) === true;

  /**
   * A loud ping takes any key. On the bench that comes after the guards, so the bench does it itself; elsewhere it does
   * nothing else but select the pinged piece on the bench beneath. In a field the key is still written.
   * @returns whether the key is used up
   */
  const silences = (at: Instant, isWritten: boolean): boolean => {
    if (top().is === 'bench') return false;
    const loud = silencedNow(view(at));
    const worst = loud[0];
    if (worst === undefined) return false;
    port.acknowledge(claimsOf(loud));
    silencedAt = at;
    if (isWritten) silencedMeanwhile = said(`silenced: ${worst.text}`);
    else message = said(silencedPressAgain);
    if (worst.piece !== null) pile = withSelected(pile, worst.piece);
    changed();
    return !isWritten;
  };

  return {
    subscribe: (listener) => {
      listeners.add(listener);
      const tick = (): void => {
        version += 1;
        listener();
      };
      const stops = [
        ticks.subscribe(tick),
        port.subscribe(() => {
          // What was just recorded lies after the last tick; a frame of that tick would not show it yet.
          ticks.present();
          tick();
        }),
      ];
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
      const seenNow = view();
      if (screen.is === 'bench')
        order = orderAfter(order, benchRows(screen, seenNow).rows, seenNow.now);
      const moved = order?.movedAt;
      const drawn = moduleOf(screen).draw(screen, moved ? { ...seenNow, moved } : seenNow);
      const isMarked = screen.is === 'bench' && (moved?.size ?? 0) > 0;
      ticks.pace(drawn.ticking === true || isMarked ? second : minute);
      return { ...drawn, lines: fill(drawn.lines, columns, rows, theme()) };
    },
    press: (presses) => {
      const at = ticks.present();
      const screen = top();
      const module = moduleOf(screen);
      const isWritten =
        isTyping(screen) && !presses.every(({ name }) => name === 'enter' || name === 'escape');
      if (silences(at, isWritten)) return;
      if (module.many !== undefined && presses.length > 1 && !isTyping(screen)) {
        take(module.many(screen, presses, view(at)));
        return;
      }
      for (const press of presses) {
        const current = top();
        const told = message;
        message = null;
        const step = moduleOf(current).press(current, press, view(at), port);
        // A key that a guard held back has not answered what the last one said.
        if (step.heldBack === true) message = told;
        take(step);
        if (!isTyping(top())) silencedMeanwhile = null;
      }
    },
    picked: (value) => {
      const at = ticks.present();
      // Whichever hears of a key first, the list or this: a key that silenced picks nothing.
      const hasSilenced = silencedAt !== null && at >= silencedAt && at - silencedAt < sameKey;
      if (hasSilenced || silences(at, false)) return;
      const screen = top();
      const step = moduleOf(screen).picked?.(screen, value, view(at), port);
      if (step) take(step);
    },
    listHeard: () => void silences(ticks.present(), false),
    paste: (text) => {
      const screen = top();
      if (!isTyping(screen)) return;
      silences(ticks.present(), true);
      message = null;
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
    version: () => {
      const now = port.snapshot();
      // Something may have changed while nobody was listening yet.
      if (now !== seen) version += 1;
      seen = now;
      return version;
    },
    top,
  };
}

/** The bench with its first row selected: from then on selection goes with the piece, not with the row. */
const firstBench = ({ bench, sense }: Snapshot, now: Instant): BenchState => ({
  ...benchStart(now),
  selected: standingsAt(bench, now, sense)[0]?.key ?? null,
});

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
