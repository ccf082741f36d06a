import { killSenders } from '../../../tests/terminal/time/dying-senders.ts';
import { writeWhileClockJumps } from '../../../tests/terminal/time/jumping-clock.ts';
import { newFolder } from '../place.mjs';
import { atMost } from '../report.mjs';

/**
 * @typedef {import('../place.mjs').Place} Place
 * @typedef {import('../report.mjs').Row} Row
 */

const senderDeaths = 100;
/** One for each core of a small machine. */
const atOnce = 2;
const notesWhileClockJumps = 300;
const seed = 20261124;

/** Mostly at instants nobody chose; by the sender's own hook too, so that both sides of the sending are met for certain. */
const ways = /** @type {const} */ ([
  ['screen', 'at random'],
  ['keeper', 'at random'],
  ['screen', 'kill before'],
  ['screen', 'at random'],
  ['keeper', 'at random'],
  ['keeper', 'kill after'],
]);

/**
 * What a person hears of pings whose sender dies, and what a clock that jumps does to what is written: real processes.
 *
 * @param {Place} place
 * @returns {AsyncGenerator<Row>}
 */
export async function* timeRows(place) {
  yield await jumpsRow(place);
  yield await sendersRow(place);
}

/** @param {Place} place @returns {Promise<Row>} */
async function sendersRow(place) {
  const shares = await Promise.all(
    Array.from({ length: atOnce }, (_, share) =>
      killSenders(place, newFolder(place.folder), {
        ends: Array.from(
          { length: senderDeaths / atOnce },
          (_, each) => ways[each % ways.length] ?? ways[0],
        ),
        seed: seed + share,
      }),
    ),
  );
  const sum = (/** @type {keyof (typeof shares)[number]} */ name) =>
    shares.reduce((all, share) => all + share[name], 0);
  return atMost(
    'pings missing, or told twice without need or without saying so: kill -9 of the sender',
    0,
    sum('missing') + sum('unexplained'),
    `${sum('deaths')} senders killed around the claim and the sending, ${sum('missing')} missing, ${sum('handedOver')} told by another instead, ${sum('twice')} told twice and said so, ${sum('unexplained')} otherwise`,
  );
}

/** @param {Place} place @returns {Promise<Row>} */
async function jumpsRow(place) {
  const count = await writeWhileClockJumps(place, newFolder(place.folder), {
    notes: notesWhileClockJumps,
    seed,
  });
  return atMost(
    'lost or damaged, or minutes wrong: a clock that jumps while commands write',
    0,
    count.lost + count.damaged + (count.minutesOff < 0.1 ? 0 : 1),
    `${count.notes} notes, the clock set ${count.jumps} times meanwhile by up to two days; ${count.lost} lost, ${count.damaged} damaged, minutes in hand off by ${(count.minutesOff * 60).toFixed(1)} s`,
  );
}
