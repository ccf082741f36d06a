import {
  leftOutWords,
  lockOn,
  lockWords,
  type Piece,
  type PlannedStep,
} from '../../tracker/bench/index.ts';
import { expectationOf, hoursOfPiece } from '../../tracker/estimate/index.ts';
import type { StepsJson } from '../json-shapes/index.ts';
import type { Look } from '../line/look.ts';
import { estimateJson } from './estimate-json.ts';
import { matchesJson } from './matches-json.ts';
import { moistureJson } from './moisture-json.ts';
import { holdJson, pieceName } from './names.ts';

/** A piece and all its steps, as planned and as done. */
export function stepsJson(piece: Piece, look: Look): StepsJson {
  const { bench, now, shop } = look;
  const hours = hoursOfPiece(bench, piece, now).steps;
  return {
    piece: pieceName(piece),
    schedule: { id: piece.schedule.id, name: piece.schedule.name },
    wood: piece.wood,
    areaM2: piece.areaM2,
    profile: piece.profile,
    fittings: piece.fittings,
    joints: piece.joints,
    drawers: piece.drawers,
    yearMade: piece.yearMade,
    kind: piece.kind,
    promised: piece.promised,
    parts: piece.parts.map(({ id, name }) => ({ id, name })),
    hold: holdJson(piece.hold, shop.zone),
    matches: matchesJson(piece, look),
    moisture: moistureJson(piece, look),
    steps: piece.steps.map((step, index) => {
      // A skipped step on which nothing was done has no hours.
      const own = hours.find((each) => each.step.id === step.id);
      return {
        place: index + 1,
        id: step.id,
        name: step.name,
        stepClass: step.stepClass,
        state: own?.state ?? 'skipped',
        leftOut: orNull(leftOutWords(piece, step)),
        asks:
          step.asks === undefined
            ? null
            : { ...step.asks, answer: piece.answers[step.copyOf ?? step.id]?.answer ?? null },
        locked: lockedBy(piece, step),
        estimate: estimateJson(own?.expected ?? expectationOf(bench, piece, step)),
        minutes: own?.minutes ?? null,
        needs: step.needs,
        cautions: step.cautions,
      };
    }),
  };
}

const orNull = (words: string): string | null => (words === '' ? null : words);

function lockedBy(piece: Piece, step: PlannedStep): string | null {
  const lock = step.skipped ? null : lockOn(piece, step);
  return lock === null ? null : lockWords(piece, lock);
}
