import { unknownName } from '../schedules/explain-issue.ts';
import type { Problem } from '../schedules/problem.ts';
import { problemAt } from '../schedules/raw-fields.ts';
import type { Path, YamlSource } from '../schedules/yaml-source.ts';
import type { CautionsFile } from './cautions-form.ts';
import { asList, openedGroups, unknownClasses } from './make-rules.ts';
import type { OverFile } from './over-form.ts';

/** What a form can't see in the table of what may go over what: names without a meaning, and verdicts half said. */
export function overChecks(source: YamlSource, form: OverFile): readonly Problem[] {
  const groups = form.groups;
  const known = [
    ...new Set([...Object.keys(groups), ...Object.values(openedGroups(groups)).flat()]),
  ];
  return form.rows.flatMap((row, index) => {
    const path: Path = ['rows', index];
    const names = (['below', 'above'] as const).flatMap((side) =>
      unknownClasses(asList(row[side]), groups).map(({ name, index: at }) =>
        unknownName(
          source,
          typeof row[side] === 'string' ? [...path, side] : [...path, side, at],
          name,
          'a product class or group',
          known,
        ),
      ),
    );
    const says =
      row.verdict === 'after' && row.first === undefined
        ? 'It says "after" and not after what.'
        : row.verdict !== 'after' && row.first !== undefined
          ? `It says "${row.verdict}" and also what must come first.`
          : row.verdict !== 'yes' && row.instead === undefined
            ? 'It does not say what to do instead.'
            : null;
    const half =
      says === null
        ? []
        : [
            problemAt(source, path, row.verdict, 'a whole row', {
              says,
              todo: 'Give "first" with "after" only, and "instead" with "after" and "no".',
            }),
          ];
    return [...names, ...half, ...sourceOf(source, path, row.source, form.sources)];
  });
}

/** The same for the file of cautions. */
export function cautionChecks(
  source: YamlSource,
  form: CautionsFile,
  groups: Readonly<Record<string, readonly string[]>>,
): readonly Problem[] {
  const chemicals = Object.keys(form.chemicals);
  const unknownIn = (path: Path, names: readonly string[]): readonly Problem[] =>
    names.flatMap((name, index) =>
      chemicals.includes(name)
        ? []
        : [unknownName(source, [...path, index], name, 'a chemical', chemicals)],
    );
  const classes = [...Object.keys(groups), ...Object.values(groups).flat()];
  const products = (path: Path, names: readonly string[] = []): readonly Problem[] =>
    unknownClasses(names, groups).map(({ name, index }) =>
      unknownName(source, [...path, 'products', index], name, 'a product class or group', classes),
    );
  return [
    ...Object.entries(form.chemicals).flatMap(([name, each]) => [
      ...products(['chemicals', name], each.products),
      ...unknownIn(['chemicals', name, 'ended by'], each['ended by']),
    ]),
    ...form.pairs.flatMap(({ of, source: named }, index) => [
      ...unknownIn(['pairs', index, 'of'], of),
      ...sourceOf(source, ['pairs', index], named, form.sources),
    ]),
    ...form.neutralisers.flatMap(({ left, wrong, source: named }, index) => [
      ...(chemicals.includes(left)
        ? []
        : [unknownName(source, ['neutralisers', index, 'left'], left, 'a chemical', chemicals)]),
      ...unknownIn(['neutralisers', index, 'wrong'], wrong),
      ...sourceOf(source, ['neutralisers', index], named, form.sources),
    ]),
    ...form.cautions.flatMap((each, index) => [
      ...products(['cautions', index], each.products),
      ...sourceOf(source, ['cautions', index], each.source, form.sources),
    ]),
  ];
}

function sourceOf(
  source: YamlSource,
  path: Path,
  named: string,
  sources: Readonly<Record<string, string>>,
): readonly Problem[] {
  const known = Object.keys(sources);
  return known.includes(named)
    ? []
    : [unknownName(source, [...path, 'source'], named, 'a source listed here', known)];
}
