import type { Pot } from '../../tracker/bench/index.ts';
import type { Zone } from '../../views/format/zone.ts';
import type { PotJson } from '../json-shapes/index.ts';
import { iso, isoOrNull } from './iso.ts';

export const potJson = ({ id, letter, product, mixedAt, washedAt }: Pot, zone: Zone): PotJson => ({
  id,
  letter,
  product: product.name,
  mixed: iso(mixedAt, zone),
  washedOut: isoOrNull(washedAt, zone),
});
