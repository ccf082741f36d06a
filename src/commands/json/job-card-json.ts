import { pieceMinutes, sessionsOf, type Piece } from '../../tracker/bench/index.ts';
import type { Zone } from '../../views/format/zone.ts';
import type { JobCardEntryJson, JobCardJson } from '../json-shapes.ts';
import type { Look } from '../line/look.ts';
import { iso, isoOrNull } from './iso.ts';
import { airJson, partName, stepName } from './names.ts';
import { stepsJson } from './steps-json.ts';

/** All that was done to a piece and put on it, with what is known of it. */
export function jobCardJson(piece: Piece, look: Look): JobCardJson {
  const { bench, now, shop } = look;
  return {
    ...stepsJson(piece, look),
    added: iso(piece.addedAt, shop.zone),
    left: isoOrNull(piece.leftAt, shop.zone),
    record: recordOf(piece, shop.zone),
    minutes: pieceMinutes(bench, piece, now),
    sessions: sessionsOf(bench, piece.id).length,
  };
}

function recordOf(piece: Piece, zone: Zone): readonly JobCardEntryJson[] {
  const nothing = {
    part: null,
    pass: null,
    section: null,
    agent: null,
    product: null,
    air: null,
  };
  const entries = [
    ...piece.stamps.map((stamp) => ({
      ...nothing,
      at: stamp.at,
      kind: 'stamped',
      step: stepName(piece, stamp.step),
      part: partName(piece, stamp.part),
      pass: stamp.pass,
      section: stamp.section,
      what: stamp.event,
      agent: stamp.agent,
      product: productOf(piece, stamp.step),
      air: airJson(stamp.air, zone),
    })),
    ...piece.finishes.map((finish) => ({
      ...nothing,
      at: finish.at,
      kind: 'done',
      step: stepName(piece, finish.step),
      part: partName(piece, finish.part),
      pass: finish.pass,
      what: 'done',
      product: productOf(piece, finish.step),
      air: airJson(finish.air, zone),
    })),
    ...piece.checks.map((check) => ({
      ...nothing,
      at: check.at,
      kind: 'checked',
      step: stepName(piece, check.step),
      part: partName(piece, check.part),
      what: check.shown === null ? check.finding : `${check.finding}: ${check.shown}`,
      air: airJson(check.air, zone),
    })),
    ...piece.notes.map((note) => ({
      ...nothing,
      at: note.at,
      kind: 'note',
      step: stepName(piece, note.step),
      what: note.text,
    })),
  ];
  return entries
    .toSorted((a, b) => a.at - b.at)
    .map(({ at, ...entry }) => ({ at: iso(at, zone), ...entry }));
}

function productOf(piece: Piece, step: string): string | null {
  const key = piece.steps.find(({ id }) => id === step)?.product;
  return key === undefined ? null : (piece.products[key]?.name ?? null);
}
