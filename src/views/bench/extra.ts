import { currentStep, pieceMinutes, stepPlace } from '../../tracker/bench/index.ts';
import { cut, fitEnd, lineOf, segment, spaces, width, type Line } from '../drawing/index.ts';
import {
  air,
  clock,
  clockCell,
  clockCells,
  minutesSpent,
  shopDay,
  whenInWords,
} from '../format/index.ts';
import type { View } from '../screen.ts';
import type { RowInput } from './bench-row.ts';
import { tagCells } from './layout.ts';

/** Of many parts the last go rather than what each is at. */
const leastOfPart = 16;

/** On a wide and high screen, a third line under each row: parts, progress and minutes recorded. */
export function thirdLine({ standing, view }: RowInput): Line {
  const { piece } = standing;
  if (piece === null) return lineOf('');
  const parts = piece.parts.map(
    ({ id, name }) => `${name} ${currentStep(piece, id)?.name ?? 'done'}`,
  );
  const told: string[] = [];
  if (standing.step !== null) {
    const { place, of } = stepPlace(piece, standing.step.id);
    told.push(`step ${place} of ${of}`);
  }
  const minutes = pieceMinutes(view.snapshot.bench, piece, view.now);
  told.push(
    minutes > 0
      ? `recorded ${minutesSpent(minutes * 60_000)}`
      : `came in ${whenInWords(piece.addedAt, view.now, view.snapshot.shop)}`,
  );
  const room = view.columns - tagCells;
  const { glyphs } = view.theme;
  // Steps are cut so that the last part is still named, and how far the piece is.
  const forParts = room - width(told.join('  ')) - 2 * parts.length;
  const each = Math.max(leastOfPart, Math.floor(forParts / parts.length));
  const named =
    width(parts.join('  ')) <= forParts ? parts : parts.map((part) => cut(part, each, glyphs));
  return [
    segment(spaces(tagCells) + fitEnd([...named, ...told].join('  '), room, glyphs), 'quiet'),
  ];
}

/** `checks today`, and what parts it from the rest. */
const headCells = 14;

/** What is left of a large screen: today's pings and checks. */
export function extraLines(view: View, room: number): readonly Line[] {
  if (view.columns < 120 || room < 3) return [];
  const { shop, pings, bench } = view.snapshot;
  const today = shopDay(view.now, shop.zone);
  const isToday = (at: number): boolean => shopDay(at, shop.zone) === today;
  // All but the head, the clock before it and when it was seen.
  const textRoom = view.columns - headCells - 2 * clockCells(shop) - '    seen '.length;
  const told = [
    ...pings
      .filter((ping) => isToday(ping.at))
      .slice(-4)
      .map((ping) => ({
        head: 'pings today',
        text: `${clockCell(ping.at, shop)}  ${fitEnd(ping.text, textRoom, view.theme.glyphs)}  ${ping.seenAt === null ? '' : `seen ${clock(ping.seenAt, shop)}`}`,
      })),
    ...[...bench.pieces.values()]
      .flatMap((piece) => piece.checks.map((check) => ({ piece, check })))
      .filter(({ check, piece }) => piece.place === 'bench' && isToday(check.at))
      .sort((a, b) => a.check.at - b.check.at)
      .slice(-3)
      .map(({ piece, check }) => ({
        head: 'checks today',
        text: `${clockCell(check.at, shop)}  ${piece.number} ${piece.name}: ${check.finding}${check.shown === null ? '' : `, ${check.shown}`}${check.air === null ? '' : `   ${air(check.air, shop.temperature)}`}`,
      })),
  ].slice(0, room - 1);
  return told.map(({ head, text }, index) => {
    const isFirst = told[index - 1]?.head !== head;
    return [segment(fitEnd(isFirst ? head : '', headCells), 'quiet'), segment(text, 'quiet')];
  });
}
