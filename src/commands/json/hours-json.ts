import type { FinishedHours, Lean, PieceHours } from '../../tracker/estimate/index.ts';
import {
  bySchedule,
  costliest,
  overTime,
  pieceOutcomes,
  whereHoursWent,
} from '../../tracker/review/index.ts';
import { monthIn } from '../../views/hours/finished-tables.ts';
import type { Zone } from '../../views/format/zone.ts';
import type { FinishedHoursJson, PieceHoursJson } from '../json-shapes/index.ts';
import { estimateJson } from './estimate-json.ts';
import { isoOrNull } from './iso.ts';
import { pieceName } from './names.ts';

export function pieceHoursJson(hours: PieceHours): PieceHoursJson {
  const { piece, steps, done, toGo, setup, other, recorded, sessions } = hours;
  return {
    piece: pieceName(piece),
    steps: steps.map((own) => ({
      id: own.step.id,
      name: own.step.name,
      stepClass: own.step.stepClass,
      state: own.state,
      estimate: estimateJson(own.expected),
      minutes: own.minutes,
      setupMinutes: own.setup,
      about: own.about,
      sessions: own.sessions,
      verdict: own.verdict,
    })),
    done: done === null ? null : { estimate: estimateJson(done.expected), minutes: done.minutes },
    toGo: toGo === null ? null : estimateJson(toGo),
    setupMinutes: setup.minutes,
    otherMinutes: other,
    recordedMinutes: recorded,
    sessions,
  };
}

export function finishedHoursJson(finished: FinishedHours, zone: Zone): FinishedHoursJson {
  const { pieces, since, until, classes, held } = finished;
  const time = overTime(finished, monthIn(zone));
  const outcomes = pieceOutcomes(finished);
  const went = whereHoursWent(finished);
  return {
    pieces: pieces.length,
    importedPieces: pieces.filter(({ imported }) => imported === true).length,
    since: isoOrNull(since, zone),
    until: isoOrNull(until, zone),
    classes: classes.map((each) => ({ stepClass: each.stepClass, ...leanJson(each) })),
    rangesHeld: { held: held.held, of: held.of, claimed: held.claimed },
    schedules: bySchedule(finished).map((each) => ({
      id: each.id,
      name: each.name,
      ...leanJson(each),
    })),
    months: time.months.map((each) => ({ month: each.name, ...leanJson(each) })),
    trend: time.trend,
    pastRanges: {
      ...outcomes.held,
      pieces: outcomes.pieces.map(({ piece, expected, minutes, verdict }) => ({
        piece: pieceName(piece),
        estimate: estimateJson(expected),
        minutes,
        verdict,
      })),
    },
    spent: {
      workingMinutes: went.working,
      setupMinutes: went.setup,
      otherMinutes: went.other,
      waitingMinutes: went.waiting,
    },
    costliest: costliest(finished).map(({ stepClass, over, pieces: count, mostly }) => ({
      stepClass,
      overMinutes: over,
      pieces: count,
      mostly: mostly === null ? null : pieceName(mostly),
    })),
  };
}

const leanJson = ({ pieces, ratio, range }: Lean) => ({
  pieces,
  ratio,
  low: range?.low ?? null,
  high: range?.high ?? null,
});
