import { woods, type PieceDescription, type Wood } from '../../tracker/bench/index.ts';
import { readDay } from '../../tracker/time/index.ts';
import { counted, nearest, readProfile, shapes, type Counted } from '../../tracker/trade/index.ts';
import { shopDay } from '../../views/format/zone.ts';
import {
  failure,
  isFailure,
  type CommandOption,
  type Failure,
  type Given,
} from '../line/command.ts';
import type { Look } from '../line/look.ts';
import { readSize } from './read-size.ts';

/** What can be told of a piece; `none` takes it away. */
export const descriptionOptions: readonly CommandOption[] = [
  ['--kind <words>', 'what it is: chest, chair'],
  ['--wood <soft|hard>', 'soft or hard: some windows differ'],
  ['--size <surface>', 'show surface: 0.9 m2, 10 sq ft'],
  ['--profile <shape>', 'flat, panels, turned or carved; turned 30% where that much is'],
  ['--fittings <count>', 'pulls, hinges, locks: 8; 0 leaves steps with them out'],
  ['--joints <count>', 'joints to be glued'],
  ['--drawers <count>', 'how many drawers'],
  ['--year <year>', 'when it was made'],
  ['--promised <day>', 'the day it is promised for: Sat, 28 Nov'],
];

/** Reads the options above. */
export function descriptionGiven(
  given: Given,
  { now, shop }: Look,
  not: string,
): PieceDescription | Failure {
  const wrong = (says: string, near: readonly string[] = []): Failure =>
    failure('usage', `${not}: ${says}`, near);
  const read = <Value>(
    name: string,
    how: (typed: string) => { readonly value: Value } | Failure,
  ): { readonly value?: Value | null } | Failure => {
    const typed = given.maybe(name);
    if (typed === null) return {};
    return typed.trim().toLowerCase() === 'none' ? { value: null } : how(typed);
  };

  const kind = read('kind', (typed) => ({ value: typed.trim() }));
  if (isFailure(kind)) return kind;
  const wood = read<Wood>('wood', (typed) => {
    const found = woods.find((each) => typed.trim().toLowerCase().startsWith(each));
    return found === undefined
      ? wrong(`"${typed}" is no kind of wood here. Write soft or hard.`, nearest(typed, woods))
      : { value: found };
  });
  if (isFailure(wood)) return wood;
  const size = read('size', (typed) => {
    const surface = readSize(typed, shop.lengths);
    return surface.ok ? { value: surface.m2 } : wrong(surface.says);
  });
  if (isFailure(size)) return size;
  const profile = read('profile', (typed) => {
    const shape = readProfile(typed);
    return shape === null
      ? wrong(
          `"${typed}" is no profile. Write flat, panels, turned or carved, or turned 30%.`,
          nearest(typed, shapes),
        )
      : { value: shape };
  });
  if (isFailure(profile)) return profile;
  const counts: Partial<Record<Counted, number | null>> = {};
  for (const what of counted) {
    const count = read(what, (typed) =>
      /^\d{1,6}$/.test(typed.trim())
        ? { value: Number(typed) }
        : wrong(`"${typed}" is no number of ${what}. Write 8.`),
    );
    if (isFailure(count)) return count;
    if (count.value !== undefined) counts[what] = count.value;
  }
  const year = read('year', (typed) =>
    /^\d{4}$/.test(typed.trim())
      ? { value: Number(typed) }
      : wrong(`"${typed}" is no year. Write 1950.`),
  );
  if (isFailure(year)) return year;
  const promised = read('promised', (typed) => {
    const day = readDay(typed, shopDay(now, shop.zone));
    return day.ok ? { value: day.day } : wrong(day.says);
  });
  if (isFailure(promised)) return promised;
  return {
    ...(kind.value === undefined ? {} : { kind: kind.value }),
    ...(wood.value === undefined ? {} : { wood: wood.value }),
    ...(size.value === undefined ? {} : { areaM2: size.value }),
    ...(profile.value === undefined ? {} : { profile: profile.value }),
    ...counts,
    ...(year.value === undefined ? {} : { yearMade: year.value }),
    ...(promised.value === undefined ? {} : { promised: promised.value }),
  };
}
