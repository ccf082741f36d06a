import type { PieceHours } from '../../tracker/estimate/index.ts';
import type { BriefLean, Review } from '../../tracker/review/index.ts';
import type { Zone } from '../../views/format/zone.ts';
import { judgedRow, type BackTest, type BackTestRow } from '../../tracker/learning/index.ts';
import type {
  BackTestJson,
  BackTestRowJson,
  FinishedHoursJson,
  PieceHoursJson,
} from '../json-shapes/index.ts';
import { estimateJson } from './estimate-json.ts';
import { isoOrNull } from './iso.ts';
import { pieceName } from './names.ts';

export function pieceHoursJson(hours: PieceHours): PieceHoursJson {
  const { piece, steps, classes, done, toGo, setup, begun, countedOff, other, recorded, sessions } =
    hours;
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
    byClass: classes.map((own) => ({
      stepClass: own.stepClass,
      steps: own.steps.length,
      done: own.done,
      estimate: estimateJson(own.expected),
      minutes: own.minutes,
      about: own.about,
      verdict: own.verdict,
    })),
    done:
      done === null
        ? null
        : {
            estimate: estimateJson(done.expected),
            minutes: done.minutes,
            verdict: done.verdict,
          },
    toGo: toGo === null ? null : estimateJson(toGo),
    begunMinutes: begun,
    countedOffMinutes: countedOff,
    setupMinutes: setup.minutes,
    setupEstimatedMinutes: setup.expected,
    otherMinutes: other,
    recordedMinutes: recorded,
    sessions,
  };
}

export function finishedHoursJson(review: Review, zone: Zone): FinishedHoursJson {
  const { pieces, imported, since, until, whole, classes, held, schedules } = review;
  const { time, outcomes, went } = review;
  return {
    pieces,
    importedPieces: imported,
    since: isoOrNull(since, zone),
    until: isoOrNull(until, zone),
    whole: leanJson(whole),
    classes: classes.map((each) => ({ stepClass: each.stepClass, ...leanJson(each) })),
    furthestOff: whole.steps.map(({ piece, step, expected, minutes, note }) => ({
      piece: pieceName(piece),
      step: step.name,
      estimatedMinutes: expected.minutes,
      minutes,
      note: note?.text ?? null,
    })),
    rangesHeld: { held: held.held, of: held.of, claimed: held.claimed },
    schedules: schedules.map((each) => ({ id: each.id, name: each.name, ...leanJson(each) })),
    months: time.months.map((each) => ({ month: each.name, ...leanJson(each) })),
    lastPieces: time.last === null ? null : leanJson(time.last),
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
      pieces: went.pieces,
      workingMinutes: went.working,
      setupMinutes: went.setup,
      about: went.about,
      otherMinutes: went.other,
      waitingMinutes: went.waiting,
    },
    costliest: review.costliest.map(({ stepClass, over, pieces: count, mostly }) => ({
      stepClass,
      overMinutes: over,
      pieces: count,
      mostly: mostly === null ? null : pieceName(mostly),
    })),
  };
}

export const backTestJson = ({ of, whole, first, classes }: BackTest): BackTestJson => ({
  steps: of,
  whole: whole === null ? null : testedJson(whole),
  first: first === null ? null : testedJson(first),
  classes: classes.map((each) => ({ stepClass: each.stepClass, ...testedJson(each) })),
});

const testedJson = (row: BackTestRow): BackTestRowJson => ({
  steps: row.steps,
  held: row.held,
  claimed: row.claimed,
  missed: row.missed,
  scheduleMissed: row.scheduleMissed,
  judged: judgedRow(row),
});

const leanJson = ({ pieces, ratio, range }: BriefLean) => ({
  pieces,
  ratio,
  low: range?.low ?? null,
  high: range?.high ?? null,
});
