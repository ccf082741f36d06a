import type { Piece, PieceDescription, Wood } from '../../tracker/bench/index.ts';
import { readDay, type CalendarDay } from '../../tracker/time/index.ts';
import {
  counted,
  countWords,
  nothingCounted,
  profileWords,
  readCount,
  readProfile,
  type Counts,
} from '../../tracker/trade/index.ts';
import { shortDay } from '../format/index.ts';

/** Square metres in a square foot: 0.3048 m squared (the international foot). */
const squareFoot = 0.09290304;

type Described = Pick<Piece, 'kind' | 'wood' | 'areaM2' | 'profile' | 'yearMade' | 'promised'> &
  Counts;
type Field = keyof Described;
type Lengths = 'mm' | 'in';

/** What `readDescription` makes of a line. */
export type DescriptionReading =
  | { readonly ok: true; readonly changes: PieceDescription }
  | { readonly ok: false; readonly says: string };

export const descriptionExample = (lengths: Lengths): string =>
  `hard, ${lengths === 'in' ? '10 sq ft' : '0.9 m2'}, turned 30 %, 8 fittings, made 1950, promised 28 Nov, kind stool`;

/** What is known of a piece, as a line that can be changed and read again: `hardwood, 0.9 m2, made 1950`. */
export function describe(piece: Described, lengths: Lengths): string {
  return fields.flatMap((field) => wordsOf(field, piece, lengths) ?? []).join(', ');
}

const fields: readonly Field[] = [
  'wood',
  'areaM2',
  'profile',
  ...counted,
  'yearMade',
  'promised',
  'kind',
];

function wordsOf(field: Field, piece: Described, lengths: Lengths): string | null {
  const { wood, areaM2, profile, yearMade, promised, kind } = piece;
  switch (field) {
    case 'wood':
      return wood === null ? null : `${wood}wood`;
    case 'areaM2':
      return areaM2 === null ? null : areaWords(areaM2, lengths);
    case 'profile':
      return profile === null ? null : profileWords(profile);
    case 'fittings':
    case 'joints':
    case 'drawers': {
      const count = piece[field];
      return count === null ? null : countWords(field, count);
    }
    case 'yearMade':
      return yearMade === null ? null : `made ${yearMade}`;
    case 'promised':
      return promised === null ? null : `promised ${shortDay(promised)} ${promised.slice(0, 4)}`;
    case 'kind':
      return kind === null ? null : `kind ${kind}`;
  }
}

/** `0.9 m2`, `9.7 sq ft` */
export const areaWords = (areaM2: number, lengths: Lengths): string =>
  lengths === 'in'
    ? `${Number((areaM2 / squareFoot).toFixed(1))} sq ft`
    : `${Number(areaM2.toFixed(2))} m2`;

/**
 * Reads the line as it stands after it was changed: what isn't in it any more is taken away, what reads as before is
 * left as it was. A `name` in it renames the piece.
 */
export function readDescription(
  text: string,
  piece: Described,
  lengths: Lengths,
  today: CalendarDay,
): DescriptionReading {
  const told: { -readonly [Name in keyof PieceDescription]: PieceDescription[Name] } = {};
  for (const item of itemsOf(text)) {
    const read = readItem(item, today);
    if (read === null)
      return {
        ok: false,
        says: `"${item}" is no wood, size, profile, count, year, date or kind. Write ${descriptionExample(lengths)}.`,
      };
    if ('says' in read) return { ok: false, says: read.says };
    const [field] = Object.keys(read);
    if (field !== undefined && field in told)
      return { ok: false, says: `"${item}" comes second: one of each will do.` };
    Object.assign(told, read);
  }
  const now: Described = {
    kind: null,
    wood: null,
    areaM2: null,
    profile: null,
    ...nothingCounted,
    yearMade: null,
    promised: null,
    ...known(told),
  };
  const changed = fields.filter(
    (field) => wordsOf(field, now, lengths) !== wordsOf(field, piece, lengths),
  );
  return {
    ok: true,
    changes: {
      ...(told.name === undefined ? {} : { name: told.name }),
      ...Object.fromEntries(changed.map((field) => [field, now[field]])),
    },
  };
}

function known({ name: _, ...described }: PieceDescription): Partial<Described> {
  return Object.fromEntries(Object.entries(described).filter(([, value]) => value !== undefined));
}

/** Between commas; one between digits belongs to the figure. */
const itemsOf = (text: string): readonly string[] =>
  text
    .split(/,(?!\d)|(?<!\d),/)
    .map((item) => item.trim())
    .filter((item) => item !== '');

type Item = PieceDescription | { readonly says: string };

function readItem(item: string, today: CalendarDay): Item | null {
  const wood = /^(soft|hard)(?:\s*wood)?$/i.exec(item)?.[1]?.toLowerCase();
  if (wood !== undefined) return { wood: wood as Wood };
  const area = /^(?:about\s+)?(\d+(?:[.,]\d+)?)\s*(m2|m²|sqm|sq m|sq ft|sqft|ft2|ft²)$/i.exec(item);
  if (area) return { areaM2: areaOf(area[1] ?? '', area[2] ?? '') };
  const profile = readProfile(item);
  if (profile !== null) return { profile };
  const count = readCount(item);
  if (count !== null) return count;
  const year = /^(?:(?:made|about|from)\s+)*(\d{4})$/i.exec(item)?.[1];
  if (year !== undefined) return { yearMade: Number(year) };
  const promise = /^(?:promised|by)\s+(.+)$/i.exec(item)?.[1];
  if (promise !== undefined) {
    const read = readDay(promise, today);
    return read.ok ? { promised: read.day } : { says: read.says };
  }
  const kind = /^kind\s+(.+)$/i.exec(item)?.[1];
  if (kind !== undefined) return { kind };
  const name = /^name\s+(.+)$/i.exec(item)?.[1];
  return name === undefined ? null : { name };
}

function areaOf(figure: string, unit: string): number {
  const area = Number(figure.replace(',', '.'));
  return /ft/i.test(unit) ? Number((area * squareFoot).toFixed(4)) : area;
}
