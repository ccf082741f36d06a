import { pingsOfBench, type BenchPing } from '../../tracker/bench/index.ts';
import { clock, day } from '../../views/format/index.ts';
import { pingText } from '../../views/ping-text/index.ts';
import { iso } from '../json/iso.ts';
import { pieceName } from '../json/names.ts';
import type { PingToComeJson } from '../json-shapes/index.ts';
import type { Look } from '../line/look.ts';

/** Pings that are still to come, the next first. */
export const pingsToCome = (
  { bench, now, sense }: Look,
  claimed: ReadonlySet<string>,
): readonly BenchPing[] =>
  pingsOfBench(bench, now, sense).filter((ping) => ping.at > now && !claimed.has(ping.key));

/** In the words in which it will go out. */
const wordsOf = (ping: BenchPing, { shop }: Look): string =>
  pingText({ pings: [ping], settles: [], loud: ping.loud, lateBy: 0 }, ping.at, shop, ping.at).text;

export const toComeLine = (ping: BenchPing, look: Look): string =>
  ` ${day(ping.at, look.shop)} ${clock(ping.at, look.shop)}  ${ping.loud ? 'loud: ' : ''}${wordsOf(ping, look)}`;

export const toComeJson = (ping: BenchPing, look: Look): PingToComeJson => ({
  at: iso(ping.at, look.shop.zone),
  text: wordsOf(ping, look),
  loud: ping.loud,
  piece: ping.piece === null ? null : pieceName(ping.piece),
});
