import { currentStep, lanesOf, pieceMinutes, stepPlace } from '../../tracker/bench/index.ts';
import { fitEnd, lineOf, segment, spaces, type Line } from '../drawing/index.ts';
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

/** On a wide and high screen, a third line under each row: parts, progress and minutes recorded. */
export function thirdLine({ standing, view }: RowInput): Line {
  const { piece } = standing;
  if (piece === null) return lineOf('');
  const told: string[] = [];
  if (piece.parts.length > 0) {
    for (const part of lanesOf(piece)) {
      const name = piece.parts.find((each) => each.id === part)?.name ?? '';
      told.push(`${name} ${currentStep(piece, part)?.name ?? 'done'}`);
    }
  }
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
  return [
    segment(
      spaces(tagCells) + fitEnd(told.join('  '), view.columns - tagCells, view.theme.glyphs),
      'quiet',
    ),
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
