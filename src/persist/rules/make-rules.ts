import {
  theSame,
  type OverRow,
  type OverTable,
  type TradeRules,
} from '../../tracker/trade/index.ts';
import type { CautionsFile } from './cautions-form.ts';
import type { OverFile } from './over-form.ts';

type Groups = Readonly<Record<string, readonly string[]>>;

/** The classes of groups, with the groups that stand in them opened up. A group that holds itself adds nothing more. */
export function openedGroups(written: Groups): Groups {
  const opened = (name: string, above: readonly string[]): readonly string[] =>
    (written[name] ?? []).flatMap((each) =>
      each in written ? (above.includes(each) ? [] : opened(each, [...above, each])) : [each],
    );
  return Object.fromEntries(
    Object.keys(written).map((name) => [name, [...new Set(opened(name, [name]))]]),
  );
}

/** Product classes in place of the groups among some names. */
const classesIn = (names: readonly string[], groups: Groups): readonly string[] => [
  ...new Set(names.flatMap((name) => groups[name] ?? [name])),
];

export const asList = (one: string | readonly string[]): readonly string[] =>
  typeof one === 'string' ? [one] : one;

export function makeOverTable(form: OverFile): OverTable {
  const groups = openedGroups(form.groups);
  const rows = form.rows.map(({ below, above, source, ...row }): OverRow => ({
    ...withoutAbsent(row),
    verdict: row.verdict,
    why: row.why,
    below: classesIn(asList(below), groups),
    above: classesIn(asList(above), groups),
    called: { below: asList(below).join(', '), above: asList(above).join(', ') },
    source: form.sources[source] ?? source,
  }));
  return { rows, groups, usual: withoutAbsent(form.usual) };
}

/** What may be left out is left out, so that it reads the same from JSON. */
const withoutAbsent = <Fields extends object>(fields: Fields) =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    [Name in keyof Fields]: Exclude<Fields[Name], undefined>;
  };

export function makeRules(over: OverTable, form: CautionsFile): TradeRules {
  const sourced = (source: string): string => form.sources[source] ?? source;
  return {
    over,
    leadBefore: form['lead before'],
    chemicals: Object.entries(form.chemicals).map(([name, each]) => ({
      name,
      products: classesIn(each.products, over.groups),
      words: each.words,
      endedBy: each['ended by'],
      goneWhenDry: each['gone when dry'] === true,
    })),
    pairs: form.pairs.map((pair) => ({ ...pair, source: sourced(pair.source) })),
    neutralisers: form.neutralisers.map(({ takes, ...each }) => ({
      ...each,
      ...(takes === undefined ? {} : { takes }),
      source: sourced(each.source),
    })),
    cautions: form.cautions.map((each) => ({
      id: each.id,
      steps: each.steps ?? [],
      products: classesIn(each.products ?? [], over.groups),
      words: each.words ?? [],
      fumes: each.fumes === true,
      lead: each.lead ?? null,
      unlessSaid: each['unless said'] ?? [],
      says: each.says,
      deadly: each.deadly === true,
      source: sourced(each.source),
    })),
  };
}

/** Names that are neither a group nor a class of any, with where they stand. */
export function unknownClasses(
  names: readonly string[],
  groups: Groups,
): readonly { readonly name: string; readonly index: number }[] {
  const classes = new Set(Object.values(openedGroups(groups)).flat());
  return names
    .map((name, index) => ({ name, index }))
    .filter(({ name }) => name !== theSame && !(name in groups) && !classes.has(name));
}
