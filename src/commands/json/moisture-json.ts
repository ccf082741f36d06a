import { moistureFindings, type MoistureFinding, type Piece } from '../../tracker/bench/index.ts';
import { latestAir } from '../../views/format/moisture-words.ts';
import type { Zone } from '../../views/format/zone.ts';
import type { MoistureJson } from '../json-shapes/index.ts';
import type { Look } from '../line/look.ts';
import { iso, isoOrNull } from './iso.ts';
import { partName, stepName } from './names.ts';

export const moistureJson = (piece: Piece, { shop, readings }: Look): readonly MoistureJson[] =>
  moistureFindings(piece, piece.place === 'bench' ? latestAir(readings) : null).map((finding) =>
    oneFinding(piece, finding, shop.zone),
  );

function oneFinding(piece: Piece, finding: MoistureFinding, zone: Zone): MoistureJson {
  const { part, wood, reference, over, isDryEnough, saltsFrom, wettedBy, trend } = finding;
  const readAt = reference?.by === 'air' ? reference.air.readAt : reference?.reading.at;
  return {
    part: partName(piece, part),
    wood: { at: iso(wood.at, zone), percent: wood.percent },
    against:
      reference === null || readAt === undefined
        ? null
        : { by: reference.by, percent: reference.percent, at: iso(readAt, zone) },
    over,
    dryEnough: isDryEnough,
    saltsFrom: stepName(piece, saltsFrom?.id ?? null),
    wettedBy: stepName(piece, wettedBy?.id ?? null),
    falls: trend === null ? null : trend.is === 'falling',
    dryBy:
      trend?.is === 'falling'
        ? {
            at: iso(trend.at, zone),
            earliest: iso(trend.earliest, zone),
            latest: isoOrNull(trend.latest, zone),
          }
        : null,
  };
}
