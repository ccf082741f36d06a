import type { Air, Hold, Piece } from '../../tracker/bench/index.ts';
import type { Reading } from '../../tracker/trade/index.ts';
import type { Zone } from '../../views/format/zone.ts';
import type {
  AirJson,
  HoldJson,
  MeteredJson,
  PartNameJson,
  PieceNameJson,
  StepNameJson,
} from '../json-shapes/index.ts';
import { iso } from './iso.ts';

export const pieceName = ({
  id,
  number,
  name,
}: Pick<Piece, 'id' | 'number' | 'name'>): PieceNameJson => ({ id, number, name });

export function stepName(piece: Piece | null, id: string | null): StepNameJson | null {
  const step = piece?.steps.find((each) => each.id === id);
  return step === undefined ? null : { id: step.id, name: step.name };
}

export function partName(piece: Piece | null, id: string | null): PartNameJson | null {
  const part = piece?.parts.find((each) => each.id === id);
  return part === undefined ? null : { id: part.id, name: part.name };
}

export const holdJson = (hold: Hold | null, zone: Zone): HoldJson | null =>
  hold === null
    ? null
    : { reason: hold.reason, since: iso(hold.since, zone), askAgain: hold.askAgain };

export const airJson = (air: Air | null, zone: Zone): AirJson | null =>
  air === null ? null : { tempC: air.tempC, rh: air.rh, readAt: iso(air.readAt, zone) };

export const readingJson = ({ tempC, rh, at, surfaceC }: Reading, zone: Zone): MeteredJson => ({
  tempC,
  rh,
  readAt: iso(at, zone),
  surfaceC: surfaceC ?? null,
});
