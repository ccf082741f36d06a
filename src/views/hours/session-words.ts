import { sessionMinutes, type Bench, type Piece, type Session } from '../../tracker/bench/index.ts';
import { leftRunning, type LeftRunning } from '../../tracker/estimate/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { cut, type GlyphSet } from '../drawing/index.ts';
import { clock, shopDay, shortDay, weekdayOf, type ShopClock } from '../format/index.ts';

/** Sessions of a piece for correcting, the newest first; dropped ones too, so that they can come back. */
export const correctable = (bench: Bench, piece: string): readonly Session[] =>
  bench.sessions
    .filter(({ targets }) => targets.some((target) => target.piece === piece))
    .toSorted((a, b) => b.start - a.start);

/** `Tue 17 Nov` */
export const sessionDay = ({ start }: Pick<Session, 'start'>, shop: ShopClock): string => {
  const on = shopDay(start, shop.zone);
  return `${weekdayOf(on)} ${shortDay(on)}`;
};

/** `11:46 to 12:31`, over midnight `17:00 to Wed 08:00`, in hand `since 14:02`. */
export function sessionSpan(
  { start, end }: { readonly start: Instant; readonly end: Instant | null },
  shop: ShopClock,
): string {
  if (end === null) return `since ${clock(start, shop)}`;
  const on = shopDay(end, shop.zone);
  const over = on === shopDay(start, shop.zone) ? '' : `${weekdayOf(on)} `;
  return `${clock(start, shop)} to ${over}${clock(end, shop)}`;
}

export const sessionLength = (session: Session, now: Instant): string =>
  session.dropped ? 'dropped' : `${Math.round(sessionMinutes(session, now))} min`;

/** What a session was for, on one piece. */
export function sessionWork(session: Session, piece: Piece): string {
  const target = session.targets.find((each) => each.piece === piece.id);
  const step = piece.steps.find(({ id }) => id === target?.step)?.name ?? 'other work';
  const part = piece.parts.find(({ id }) => id === target?.part);
  return part === undefined ? step : `${part.name}, ${step}`;
}

/** What was first recorded, where a correction made it something else. */
export function firstWords({ first }: Session, shop: ShopClock): string {
  return first === null ? '' : `first recorded ${sessionSpan(first, shop)}`;
}

/** Sessions of a piece that were perhaps left running, the newest first. */
export const doubted = (bench: Bench, piece: Piece, now: Instant): readonly LeftRunning[] =>
  correctable(bench, piece.id)
    .map((session) => leftRunning(bench, piece, session, now))
    .filter((found) => found !== null);

/**
 * `Tue 17 Nov, sand 120, 11:46 to 12:31: no key from 12:00. Left running? y: trim to 12:00, n: it is right`; what it was
 * for in at most so many cells.
 */
export function doubtWords(
  { session, quiet, trimTo }: LeftRunning,
  piece: Piece,
  workCells: number,
  { shop, glyphs }: { readonly shop: ShopClock; readonly glyphs: GlyphSet },
): string {
  const work = cut(sessionWork(session, piece), workCells, glyphs);
  const which = `${sessionDay(session, shop)}, ${work}, ${sessionSpan(session, shop)}`;
  const answers =
    trimTo === null ? 'w: correct it' : `Left running? y: trim to ${clock(trimTo, shop)}`;
  return `${which}: ${quietWords(session, quiet, shop)}. ${answers}, n: it is right`;
}

function quietWords({ start, end }: Session, quiet: LeftRunning['quiet'], shop: ShopClock): string {
  if (quiet === null) return 'far longer than such work takes';
  const isToEnd = end === null || quiet.to === end;
  if (isToEnd)
    return quiet.from === start ? 'no key all that time' : `no key from ${clock(quiet.from, shop)}`;
  return `no key ${clock(quiet.from, shop)} to ${clock(quiet.to, shop)}`;
}
