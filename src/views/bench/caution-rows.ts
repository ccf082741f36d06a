import { sessionHolding, type Piece, type PlannedStep } from '../../tracker/bench/index.ts';
import { glyphSets, lineOf, type Line } from '../drawing/index.ts';
import { keyMapWith, keyOf } from '../keys/key-map.ts';
import { airLines } from '../piece/air-lines.ts';
import { cautionLines, cautionsOf, type Cautions } from '../piece/cautions.ts';
import type { View } from '../screen.ts';
import type { BenchRows } from './bench-rows.ts';

/**
 * What the air says against the step that the keys are on, and what to be careful about in it. While the piece is in hand these rows are kept free
 * whatever else there is to show, so that gloved hands need no key to read them; before that they take spare rows.
 */
export type CautionRows = {
  /** Asked for only where there is room: all that a caution hangs on takes long. */
  readonly lines: () => readonly Line[];
  readonly kept: boolean;
};

export function cautionRows({ selected }: BenchRows, view: View, budget: number): CautionRows {
  const piece = selected?.piece ?? null;
  const step = selected?.step ?? null;
  if (piece === null || step === null) return { lines: () => [], kept: false };
  const kept = sessionHolding(view.snapshot.bench, piece.id) !== null;
  // The other half is for the rows themselves; on a small screen the rest is in the opened piece.
  return { lines: () => fitted(piece, step, view, Math.floor(budget / 2)), kept };
}

function fitted(piece: Piece, step: PlannedStep, view: View, room: number): readonly Line[] {
  const opens = `${keyOf(keyMapWith(view.snapshot.settings.keys), 'open piece')}, then c`;
  const lines = [
    ...airLines(piece, step, view),
    ...cautionLines(inOneGo(unsaid(cautionsOf(piece, step, view), view)), view, opens),
  ];
  if (lines.length <= room) return lines;
  return room < 1
    ? []
    : [
        ...lines.slice(0, room - 1),
        lineOf(`         ${glyphSets[view.theme.glyphs].cut} all of it: ${opens}`, 'strong'),
      ];
}

/** One after the other without a new row for each: the rows belong to the bench, and nothing is left out. */
const inOneGo = (cautions: Cautions): Cautions => ({
  ...cautions,
  full: cautions.full.length === 0 ? [] : [cautions.full.map(asSentence).join(' ')],
});

/** What the last key's message says in the foot isn't said twice. */
function unsaid(cautions: Cautions, { message }: View): Cautions {
  if (message === null) return cautions;
  const isUnsaid = (text: string): boolean => !message.text.includes(text.replace(/\.$/, ''));
  return {
    ...cautions,
    full: cautions.full.filter(isUnsaid),
    brief: cautions.brief.filter(isUnsaid),
  };
}

/** Told one after the other, each ends before the next begins. */
const asSentence = (caution: string): string => (/[.!?]$/.test(caution) ? caution : `${caution}.`);
