import { openForWriting, type FactStore, type Result } from '../persist/index.ts';
import { second, type Instant, type Milliseconds } from '../tracker/time/index.ts';
import { lengthAloud, shopDay } from '../views/format/index.ts';
import type { Snapshot } from '../views/port.ts';
import { createClockWatch } from './clock-watch.ts';
import { createStandingAside } from './keeper/stand-aside.ts';
import { movePastPieces } from './move-past.ts';
import type { Awake } from './ping/awake.ts';
import type { Diagnostics } from './ping/diagnostics.ts';
import { createPingWatch } from './ping/ping-watch.ts';
import type { Pinger } from './ping/pinger.ts';
import type { Session } from './session.ts';
import { thinOldRecords } from './thin-old-records.ts';
import type { Ticker } from './ticker.ts';
import type { World } from './world.ts';

export type BackgroundOptions = {
  readonly world: World;
  readonly session: Session;
  readonly ticker: Pick<Ticker, 'subscribe' | 'wakeAt'>;
  readonly pinger: Pinger;
  readonly awake: Awake;
  readonly diagnostics: Diagnostics;
  readonly folder: string;
  /** A store that is open already; else it is opened in `folder`. */
  readonly given: FactStore | null;
  /** Told once the store can be written. */
  readonly opened: (store: FactStore) => void;
  /** Who watches; a screen where nothing is said. */
  readonly by?: 'screen' | 'keeper';
  /** Another process sends the pings for now: none goes out from here, for as long as that one does so. */
  readonly standsAside?: () => boolean;
  /** What would end the pings although the machine is kept awake, in words; null where nothing would. */
  readonly closing?: () => string | null;
  /** Told after every look when the next ping is to come; null while none is. */
  readonly looked?: (next: Instant | null) => void;
};

/** A store that can't be opened is tried again after so long. */
const triesAgainAfter: Milliseconds = 5 * second;

/** What goes on behind the screens: writing, hearing of other processes, pings, and staying awake. */
export type Background = { readonly stop: () => void };

/**
 * Opens the store for writing and begins to watch. Called after the first frame, which needs none of it. What keeps
 * the store from being opened is told on the screen, until it can be opened after all.
 */
export async function startBackground(options: BackgroundOptions): Promise<Background> {
  const { world, session, ticker, awake, diagnostics, by = 'screen' } = options;
  const { standsAside = () => false, closing = () => null, looked = () => undefined } = options;
  const { clock, newId } = world;
  let opened =
    options.given === null
      ? await openStoreOf(options)
      : ({ ok: true, value: options.given } as const);
  if (opened.ok) begin(options, opened.value);
  // Nothing is recorded then, but what was seen on the disk still pings.
  else session.obstruct(opened.problem);
  let triedAt = clock.now();

  diagnostics.record({ at: clock.now(), what: 'began', by, pid: process.pid });
  const pings = createPingWatch({
    store: { change: (decide) => (opened.ok ? opened.value.change(decide) : opened) },
    clock,
    newId,
    pinger: options.pinger,
    awake,
    keepAwake: () => session.snapshot().settings.awake,
    diagnostics,
    shop: () => session.snapshot().shop,
    sense: () => session.snapshot().sense,
    known: () => {
      const { bench, pings: shown } = session.snapshot();
      return { bench, pings: session.loaded().pings, shown };
    },
    since: clock.now(),
    // The store tells only of what others write.
    recorded: session.reload,
    onScreen: by === 'screen',
  });
  const clockWatch = createClockWatch(clock, session.loaded().bench);
  const aside = createStandingAside();
  let isStopped = false;
  let isToLook = false;
  /** The disk may have been put right meanwhile, the folder's rights given back. */
  const openAfterAll = async (): Promise<void> => {
    triedAt = clock.now();
    const again = await openStoreOf(options);
    if (opened.ok || isStopped) {
      if (again.ok) again.value.close();
      return;
    }
    if (!again.ok) {
      if (again.problem.says !== opened.problem.says) session.obstruct(again.problem);
      opened = again;
      return;
    }
    opened = again;
    session.obstruct(null);
    begin(options, again.value);
    stops.push(again.value.watch(session.reload));
    session.say('The store is open now: what is pressed from here on is kept.');
  };
  const wakeFor = (next: Instant | null): void => {
    const again = triedAt + triesAgainAfter;
    ticker.wakeAt(
      opened.ok ? next : Math.min(next ?? again, Math.max(again, clock.now() + second)),
    );
  };
  const look = (): void => {
    isToLook = false;
    // Whatever was still to be looked at when this ended must not wake what has been closed.
    if (isStopped) return;
    const stepped = clockWatch.look();
    if (stepped !== null) {
      session.act({ do: 'note clock step', byMs: stepped });
      session.say(clockSetWords(stepped));
    }
    session.flush();
    if (!opened.ok && Math.abs(clock.now() - triedAt) >= triesAgainAfter) void openAfterAll();
    if (standsAside()) {
      const { isDue, next } = pings.lookOnly();
      if (aside.isToStand(isDue, clock.now())) {
        awake.want(null);
        // Whoever is there now may be gone by then.
        wakeFor(next);
        return;
      }
    } else aside.alone();
    const next = pings.look();
    wakeFor(next);
    looked(next);
    session.setAwake(howAwake(awake, pings.spoils() ? closing() : null));
  };
  /** Once for all that changes together. */
  const lookSoon = (): void => {
    if (!isToLook) setImmediate(look);
    isToLook = true;
  };
  const stops = [
    opened.ok ? opened.value.watch(session.reload) : () => undefined,
    ticker.subscribe(look),
    session.subscribe(lookSoon),
  ];
  look();
  return {
    stop: () => {
      isStopped = true;
      for (const stop of stops) stop();
      diagnostics.record({ at: clock.now(), what: 'ended', by, pid: process.pid });
    },
  };
}

function howAwake(awake: Awake, closing: string | null): Snapshot['awake'] {
  const { wanted, kept, why } = awake.state();
  const told = closing === null ? {} : { closing };
  if (wanted) return { kept, says: why, ...told };
  const says = 'Nothing keeps this machine awake: that is switched off.';
  return closing === null ? null : { kept: null, says, ...told };
}

/** What is done with a store once it can be written. */
function begin({ session, world, opened }: BackgroundOptions, store: FactStore): void {
  opened(store);
  thinOldRecords(store, world.clock.now());
  movePastPieces(store, session.snapshot().shop.zone, world.clock.now());
  session.reload();
  session.learn();
  for (const { says, todo } of store.notices()) session.say(`${says} ${todo}`);
  session.flush();
}

function openStoreOf({ world, session, folder }: BackgroundOptions): Promise<Result<FactStore>> {
  const { now } = world.clock;
  const today = () => shopDay(now(), session.snapshot().shop.zone);
  return openForWriting(folder, { clock: { now, today } });
}

const clockSetWords = (byMs: Milliseconds): string =>
  `The machine's clock was set ${lengthAloud(Math.abs(byMs))} ${byMs > 0 ? 'forward' : 'back'}. What runs keeps its length; times of day have moved with it.`;
