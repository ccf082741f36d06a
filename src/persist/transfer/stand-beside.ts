import { isDeepStrictEqual } from 'node:util';
import type { BenchFact } from '../../tracker/bench/index.ts';
import { standardSettings, type Settings } from '../../tracker/settings/index.ts';
import type { Loaded } from '../store.ts';
import type { Exported } from './exported.ts';

/** What is in the place that an exported store shall go into. */
export type Here = {
  readonly loaded: Omit<Loaded, 'fingerprint'>;
  readonly years: ReadonlyMap<number, readonly BenchFact[]>;
  readonly own: ReadonlyMap<string, string>;
};

/** Whether it fits in: all of it is there already, it can be put in, or why not. */
export type Fit =
  | { readonly fits: 'is there' }
  | { readonly fits: 'goes in' }
  | { readonly fits: 'not'; readonly why: string };

/**
 * Two records of two shops don't add up to one: a bench has one piece 1 and one pair of hands. So an export goes into an
 * empty store, or into one that holds the beginning of the very same record, as an import that was cut off leaves it.
 */
export function standBeside(here: Here, coming: Exported, settings: Settings): Fit {
  const facts = [here.loaded.bench, ...here.years.values()].flat();
  const comingFacts = [coming.bench, ...coming.years.values()].flat();
  const known = new Map(comingFacts.map((fact) => [fact.id, fact]));
  const ids = new Set(facts.map(({ id }) => id));
  const other = differing(here, coming, known);
  if (other !== null) return no(`fact ${other} is there already and says something else`);
  if (comingFacts.length > 0 && comingFacts.every(({ id }) => ids.has(id)))
    return { fits: 'is there' };
  if (facts.some(({ id }) => !known.has(id))) return no('the store holds another record already');
  if (here.loaded.bench.some(({ id }, at) => coming.bench[at]?.id !== id))
    return no('the store holds an older state of the same record');
  const chosen = (Object.keys(standardSettings) as (keyof Settings)[]).find(
    (name) =>
      !isDeepStrictEqual(here.loaded.settings[name], standardSettings[name]) &&
      !isDeepStrictEqual(here.loaded.settings[name], settings[name]),
  );
  if (chosen !== undefined) return no(`the setting ${chosen} was chosen otherwise here`);
  const file = [...here.own].find(([name, text]) => (coming.own.get(name) ?? text) !== text);
  if (file !== undefined) return no(`schedules/${file[0]} is there already and differs`);
  return { fits: 'goes in' };
}

const no = (why: string): Fit => ({ fits: 'not', why });

/** The id of a fact that both have, and not alike. */
function differing(
  { loaded, years }: Here,
  coming: Exported,
  known: ReadonlyMap<string, BenchFact>,
): string | null {
  const pairs: readonly (readonly [readonly { id: string }[], ReadonlyMap<string, object>])[] = [
    [[loaded.bench, ...years.values()].flat(), known],
    [loaded.conditions, byId(coming.conditions)],
    [loaded.pings, byId(coming.pings)],
  ];
  for (const [facts, others] of pairs)
    for (const fact of facts) {
      const twin = others.get(fact.id);
      if (twin !== undefined && !isDeepStrictEqual(twin, fact)) return fact.id;
    }
  return null;
}

const byId = <Fact extends { readonly id: string }>(facts: readonly Fact[]) =>
  new Map(facts.map((fact) => [fact.id, fact]));
