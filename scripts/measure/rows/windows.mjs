import { senseIn } from '../../../src/shell/shop-air.ts';
import { createSession } from '../../../src/shell/session.ts';
import { memoryStore } from '../../../src/persist/memory-store.ts';
import { nextPingAt, sendingsDue, windowsOfPiece } from '../../../src/tracker/bench/index.ts';
import { noRules } from '../../../src/tracker/trade/index.ts';
import { stateAt } from '../../../src/tracker/windows/index.ts';
import { benchStart } from '../../../src/views/bench/bench-state.ts';
import { benchScreen } from '../../../src/views/bench/index.ts';
import { hour, inventBench, minute, sense as labelSense } from '../invented-bench.mjs';
import { inventorOfTemplates } from '../large-store.mjs';
import { atMost } from '../report.mjs';
import { median } from '../statistics.mjs';

const pieces = 60;
const windowsOfEach = 20;
const ticks = 200;
/** A reading each quarter of an hour for four weeks: a script's, after thinning. */
const readings = 4 * 7 * 96;

/**
 * What a tick spends on the windows of a full bench (their states, and which pings are due) beside what it spends in all,
 * with the shop's air moving them; and what a new reading costs, after which every window is worked out anew.
 *
 * @returns {Promise<readonly import('../report.mjs').Row[]>}
 */
export async function windowRows() {
  const now = Date.UTC(2026, 10, 24, 14, 29);
  const facts = inventBench(await inventorOfTemplates(), {
    pieces,
    now,
    firstOpensIn: hour,
    apart: minute,
  });
  const store = memoryStore({ bench: facts });
  const loaded = store.load();
  if (!loaded.ok) throw new Error('the invented bench could not be loaded');
  const session = createSession({
    loaded: loaded.value,
    notices: [],
    rules: noRules,
    folder: null,
    store: () => store,
    clock: { now: () => now, uptime: () => null, bootId: null },
    newId: () => 'id',
    here: { zone: 'UTC', locale: 'en-GB' },
    soon: () => undefined,
  });
  const base = session.snapshot();
  const air = Array.from({ length: readings }, (_, index) => ({
    at: now - (readings - index) * 15 * minute,
    tempC: 18 + (index % 13) / 2,
    rh: 45 + (index % 17),
  }));
  const { bench, shop, settings } = base;
  const newSense = () => senseIn(shop, settings, air);
  const all = (/** @type {typeof labelSense} */ sense) =>
    [...bench.pieces.values()].flatMap((piece) => {
      const own = windowsOfPiece(piece, bench.sessions, sense);
      return own.length === 0
        ? []
        : Array.from({ length: windowsOfEach }, (_, at) => own[at % own.length]);
    });
  const sense = newSense();
  const snapshot = { ...base, sense, readings: air };
  const windows = all(sense);
  const claimed = new Set();
  const ofWindows = (/** @type {number} */ at) => {
    for (const window of windows) if (window !== undefined) stateAt(window, at);
    sendingsDue(bench, claimed, at, sense);
    nextPingAt(bench, claimed, at, sense);
  };
  const state = benchStart(now);
  const draw = (/** @type {number} */ at) =>
    benchScreen.draw(state, {
      snapshot,
      now: at,
      columns: 80,
      rows: 24,
      theme: { colour: 'dark', glyphs: 'blocks' },
      message: null,
    });
  const timed = (/** @type {(at: number) => unknown} */ work) => {
    const times = Array.from({ length: ticks }, (_, tick) => {
      const began = performance.now();
      work(now + tick * 1000);
      return performance.now() - began;
    });
    return median(times.slice(ticks / 4));
  };
  const own = timed(ofWindows);
  const rest = timed(draw);
  const label = timed(() => all(labelSense));
  const moved = timed(() => all(newSense()));
  const inMs = (/** @type {number} */ ms) => `${ms.toFixed(2)} ms`;
  return [
    atMost(
      `states and pings of ${pieces} pieces with ${windowsOfEach} windows each, per tick, of the whole tick`,
      0.5,
      own / (own + rest),
      `${inMs(own)} of ${inMs(own + rest)}, the rest draws the bench; n ${ticks}`,
    ),
    atMost(
      `all windows worked out anew after a reading, with ${readings} readings against the label's figures`,
      3,
      moved / label,
      `${inMs(moved)} against ${inMs(label)}, n ${ticks}`,
    ),
  ];
}
