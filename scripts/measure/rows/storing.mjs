import { openForWriting, openStore } from '../../../src/persist/index.ts';
import { createSession } from '../../../src/shell/session.ts';
import { piecesOnBench } from '../../../src/tracker/bench/index.ts';
import { noRules } from '../../../src/tracker/trade/index.ts';
import { fullBench, usualBench } from '../place.mjs';
import { atMost } from '../report.mjs';
import { inMs, median } from '../statistics.mjs';

/**
 * @typedef {import('../place.mjs').Place} Place
 * @typedef {import('../report.mjs').Row} Row
 */

const rounds = 80;

/**
 * One intent from the key to the disk, by turns on a store with ten years of history and on one with none.
 *
 * @param {Place} place
 * @returns {Promise<readonly Row[]>}
 */
export async function storingRows(place) {
  const rows = [];
  for (const pieces of [usualBench, fullBench]) {
    const sides = [];
    for (const hasHistory of [true, false]) {
      const folder = await place.freshStore({ pieces, hasHistory });
      sides.push({ storeOne: await storer(folder), times: /** @type {number[]} */ ([]) });
    }
    for (let round = -5; round < rounds; round++) {
      for (const { storeOne, times } of round % 2 === 0 ? sides : sides.toReversed()) {
        const ms = storeOne();
        if (round >= 0) times.push(ms);
      }
    }
    const [long = [], none = []] = sides.map(({ times }) => times);
    // Each against its neighbour in time: the disk of a busy machine is now fast, now slow.
    const ratios = long.map((ms, round) => ms / (none[round] ?? NaN));
    rows.push(
      atMost(
        `one intent stored durably, with ten years of history against none, ${pieces} pieces`,
        1.1,
        median(ratios),
        `${inMs(median(long))} against ${inMs(median(none))}, n ${rounds}`,
      ),
    );
  }
  return rows;
}

/**
 * @param {string} folder
 * @returns {Promise<() => number>} acts once and returns how many milliseconds it took until it was on the disk
 */
async function storer(folder) {
  const clock = { now: Date.now, uptime: () => null, bootId: null };
  const today = () => new Date().toISOString().slice(0, 10);
  const options = { clock: { now: clock.now, today } };
  const [opened, writing] = [
    await openStore(folder, options),
    await openForWriting(folder, options),
  ];
  if (!opened.ok || !writing.ok) throw new Error(`${folder} can't be opened`);
  let ids = 0;
  const session = createSession({
    loaded: opened.value,
    notices: [],
    folder,
    rules: noRules,
    store: () => writing.value,
    clock,
    newId: () => `measured-${(ids += 1)}`,
    here: { zone: 'UTC', locale: 'en-GB' },
    soon: () => undefined,
  });
  const piece = piecesOnBench(session.snapshot().bench)[0]?.id ?? '';
  return () => {
    const began = performance.now();
    const reply = session.act({ do: 'write note', piece, step: null, text: 'runner replaced' });
    session.flush();
    const ms = performance.now() - began;
    if (!reply.ok) throw new Error(reply.says);
    if (session.snapshot().obstacle !== null) throw new Error('an intent was not stored');
    return ms;
  };
}
