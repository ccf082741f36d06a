import type { FinishedHours, PieceHours } from '../../tracker/estimate/index.ts';
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

export const finishedHoursJson = (
  { pieces, since, until, classes, held }: FinishedHours,
  zone: Zone,
): FinishedHoursJson => ({
  pieces: pieces.length,
  since: isoOrNull(since, zone),
  until: isoOrNull(until, zone),
  classes: classes.map(({ stepClass, pieces: count, ratio, range }) => ({
    stepClass,
    pieces: count,
    ratio,
    low: range?.low ?? null,
    high: range?.high ?? null,
  })),
  rangesHeld: { held: held.held, of: held.of, claimed: held.claimed },
});
