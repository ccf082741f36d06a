import { isDeepStrictEqual } from 'node:util';
import type { FactStore, Loaded, StoreProblem } from '../persist/index.ts';
import {
  clockStep,
  foldBench,
  type Bench,
  type BenchFact,
  type Intent,
  type PingFact,
} from '../tracker/bench/index.ts';
import type { Instant } from '../tracker/time/index.ts';
import type { Metered, TradeRules } from '../tracker/trade/index.ts';
import type { ActReply, Obstacle, PingWays, Snapshot } from '../views/port.ts';
import { applyIntent, type Telling } from './apply-intent.ts';
import { clockReading, type Clock } from './clock.ts';
import { deedReply } from './deed-reply.ts';
import { createLearning, mayChangeLessons } from './learning.ts';
import { factHead } from './head-facts.ts';
import { createLearnAnew } from './past/learn-anew.ts';
import type { LearnBeside } from './past/learn-beside.ts';
import type { NewId } from './ids.ts';
import { recallPiece } from './recall.ts';
import { createSeenPings } from './seen-pings.ts';
import type { Whereabouts } from './shop.ts';
import { pingWays, shownPings } from './shown-pings.ts';
import { createSurroundings } from './surroundings.ts';
import { decideAnew, factsOf, type Unwritten } from './unwritten.ts';

export type Session = {
  readonly subscribe: (listener: () => void) => () => void;
  readonly snapshot: () => Snapshot;
  readonly act: (intent: Intent, at?: Instant) => ActReply;
  readonly takeReading: (read: Metered) => ActReply;
  /** Writes what is not on the disk yet. Called after the frame that shows it, and before leaving. */
  readonly flush: () => void;
  /** Takes over what another process has written. */
  readonly reload: () => void;
  readonly loaded: () => Loaded;
  /** Takes note of pings, so that they stop. */
  readonly acknowledge: (claims: readonly string[]) => void;
  readonly say: (notice: string) => void;
  /** Something keeps the store from being opened; null once it is open after all. */
  readonly obstruct: (obstacle: Obstacle | null) => void;
  readonly pingWays: () => PingWays;
  /** Learns from the history of past years where it has changed. */
  readonly learn: () => void;
  readonly setAwake: (awake: Snapshot['awake']) => void;
  readonly setKeeper: (keeper: Snapshot['keeper']) => void;
};

export type SessionOptions = {
  readonly loaded: Loaded;
  readonly notices: readonly string[];
  readonly folder: string | null;
  readonly rules: TradeRules;
  /** Null until the writing part is loaded; what is pressed before waits for it. */
  readonly store: () => FactStore | null;
  readonly clock: Clock;
  readonly newId: NewId;
  readonly here: Whereabouts;
  /** Runs something once the frame is out. */
  readonly soon: (work: () => void) => void;
  /** Learns from past years in a thread of its own, so that no key waits for it; absent: at once. */
  readonly learnBeside?: LearnBeside;
};

/**
 * Holds the state that screens show. An intent is decided and shown at once, then written; if writing fails it is
 * undone and said. Nothing is lost between: what isn't written is marked so.
 */
export function createSession(options: SessionOptions): Session {
  const { clock, newId, here, store, soon } = options;
  let loaded = options.loaded;
  let unwritten: readonly Unwritten[] = [];
  let obstacle: Obstacle | null = null;
  /** The store can't be opened for writing: what is pressed now would never be kept. */
  let shut: Obstacle | null = null;
  let isUnreadable = false;
  let notices = options.notices;
  let awake: Snapshot['awake'] = null;
  let keeper: Snapshot['keeper'] = 'cannot';
  const surroundingsOf = createSurroundings(here);
  let around = surroundingsOf(loaded);
  const learning = createLearning(options.folder);
  /** What the clock showed when the bench was folded: it may have been set since the last fact, and nothing told it yet. */
  let foldedAt = clockReading(clock);
  const folded = (facts: readonly BenchFact[], before?: Bench): Bench => {
    foldedAt = clockReading(clock);
    return learning.withLearned(foldBench(facts, before, foldedAt), around);
  };
  let bench: Bench = folded(loaded.bench);
  let shown: Snapshot | null = null;
  const seenHere = createSeenPings();
  const listeners = new Set<() => void>();

  const changed = (): void => {
    shown = null;
    for (const listener of listeners) listener();
  };

  const learnAnew = createLearnAnew({
    learning,
    folder: options.folder,
    beside: options.learnBeside,
    store,
    now: () => ({ bench, readings: around.readings }),
    learned: () => refold(),
    say: (notice) => say(notice),
  });

  const takeOver = (next: Loaded): void => {
    around = surroundingsOf(next);
    loaded = next;
    refold();
  };

  const refold = (): void => {
    bench = folded(factsNow(), bench);
    changed();
  };

  const factsNow = (): readonly BenchFact[] => [...loaded.bench, ...unwritten.flatMap(factsOf)];

  /** A piece from the history of a year brings its facts along when it is put back. */
  const recalledFor = (intent: Intent): readonly BenchFact[] => {
    const open = store();
    if (open === null || intent.do !== 'put back on bench' || bench.pieces.has(intent.piece))
      return [];
    return recallPiece(open, intent.piece);
  };

  const apply = (on: Bench, intent: Intent, telling: Telling) =>
    applyIntent(on, intent, telling, around);

  const act = (intent: Intent, at?: Instant): ActReply => {
    if (shut !== null) return { ok: false, says: `${shut.says} ${shut.todo}`, nearest: [] };
    const telling = { clock: clockReading(clock), at, group: newId() };
    // What is decided by the clock as it stands now needs a bench that goes by it too.
    if (clockStep(foldedAt, telling.clock) !== null) bench = folded(factsNow());
    const recalled = recalledFor(intent);
    const on = recalled.length === 0 ? bench : folded([...factsNow(), ...recalled]);
    const applied = apply(on, intent, telling);
    if (!applied.ok) return { ...applied, nearest: applied.nearest ?? [] };
    const { facts, piece } = applied;
    unwritten = [...unwritten, { intent, ...telling, recalled, facts, piece }];
    refold();
    soon(flush);
    return deedReply(
      applied,
      { bench, rules: options.rules, now: telling.clock.told, sense: around.sense },
      around.shop,
    );
  };

  /**
   * Appends what was pressed. Where another process has written meanwhile, each intent is decided anew on what is
   * really there; one that is refused now is said.
   */
  const flush = (): void => {
    const open = store();
    if (open === null || unwritten.length === 0) return;
    const waiting = unwritten;
    let overtaken: readonly string[] = [];
    const result = open.change((current) => {
      if (current.bench === loaded.bench)
        return { append: { bench: waiting.flatMap(factsOf) }, result: null };
      const anew = decideAnew(waiting, current.bench, {
        fold: folded,
        apply,
        present: clockReading(clock),
      });
      overtaken = anew.refusals;
      // The facts keep their ids, but may say something else now: nothing worked out from them before holds.
      bench = foldBench([]);
      return { append: { bench: anew.facts }, result: null };
    });
    unwritten = unwritten.filter((each) => !waiting.includes(each));
    if (!result.ok) {
      obstacle = obstacleOf(result.problem);
      refold();
      return;
    }
    obstacle = null;
    notices = [...notices, ...overtaken.map((says) => `Changed elsewhere meanwhile. ${says}`)];
    reload();
    // A past piece that is left out stops teaching now, not at the next start.
    if (mayChangeLessons(waiting.map(({ intent }) => intent))) learnAnew();
  };

  const reload = (): void => {
    const open = store();
    if (open === null) return;
    const next = open.load();
    if (next.ok) {
      if (isUnreadable) obstacle = null;
      isUnreadable = false;
      takeOver(next.value);
    } else {
      isUnreadable = true;
      obstacle = obstacleOf(next.problem);
      changed();
    }
  };

  const say = (notice: string): void => {
    notices = [...notices, notice];
    changed();
  };

  const takeReading = (climate: Metered): ActReply => {
    const open = store();
    if (open === null)
      return {
        ok: false,
        says: 'Not noted: the store is still being opened. Press again.',
        nearest: [],
      };
    const head = factHead(newId(), clockReading(clock));
    const result = open.change(() => ({
      append: { conditions: [{ ...head, kind: 'reading-taken', body: climate }] },
      result: null,
    }));
    if (!result.ok)
      return { ok: false, says: `${result.problem.says} ${result.problem.todo}`, nearest: [] };
    obstacle = null;
    reload();
    return { ok: true, says: 'conditions noted', piece: null };
  };

  return {
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    snapshot: () =>
      (shown ??= {
        bench,
        ...around,
        rules: options.rules,
        pings: seenHere.on(shownPings(loaded.pings)),
        unwritten: new Set(unwritten.flatMap((each) => (each.piece === null ? [] : [each.piece]))),
        obstacle,
        notices,
        awake,
        keeper,
        folder: options.folder,
      }),
    act,
    takeReading,
    flush,
    reload,
    loaded: () => loaded,
    acknowledge: (claims) => {
      const now = clockReading(clock);
      const pings = claims.map((claim): PingFact => ({
        ...factHead(newId(), now),
        kind: 'ping-acknowledged',
        body: { claim },
      }));
      const noted = store()?.change(() => ({ append: { pings }, result: null }));
      if (noted?.ok === true) {
        obstacle = null;
        return reload();
      }
      seenHere.note(claims, now.told);
      if (noted !== undefined) obstacle = obstacleOf(noted.problem);
      changed();
    },
    obstruct: (next) => {
      shut = obstacle = next && { says: next.says, todo: next.todo };
      changed();
    },
    learn: learnAnew,
    pingWays: () => pingWays(loaded.pings, loaded.settings),
    say,
    setAwake: (next) => {
      if (isDeepStrictEqual(next, awake)) return;
      awake = next;
      changed();
    },
    setKeeper: (next) => {
      if (next === keeper) return;
      keeper = next;
      changed();
    },
  };
}

/** A store's problem as the screen says it, until it is mended. */
const obstacleOf = (problem: StoreProblem): Obstacle => ({
  says: problem.says,
  todo: problem.todo,
});
