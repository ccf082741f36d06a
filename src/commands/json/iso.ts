import { minute, type Instant } from '../../tracker/time/index.ts';
import { zoneOffset, type Zone } from '../../views/format/zone.ts';
import type { IsoInstant } from '../json-shapes/index.ts';

/** `2026-11-24T14:29:00.000-05:00`. Offsets are told in whole minutes, which every zone has had for a century. */
export function iso(instant: Instant, zone: Zone): IsoInstant {
  const offset = Math.round(zoneOffset(instant, zone) / minute);
  const local = new Date(instant + offset * minute).toISOString().slice(0, -1);
  const ahead = Math.abs(offset);
  const hours = String(Math.floor(ahead / 60)).padStart(2, '0');
  return `${local}${offset < 0 ? '-' : '+'}${hours}:${String(ahead % 60).padStart(2, '0')}`;
}

export const isoOrNull = (instant: Instant | null, zone: Zone): IsoInstant | null =>
  instant === null ? null : iso(instant, zone);
