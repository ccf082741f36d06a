import { hasRightSum, type Damage } from '../file/document.ts';
import { migrate, type FileForm } from '../file/form.ts';
import { isRecord } from '../file/is-record.ts';
import { withShared } from '../file/shared-values.ts';
import type { Contents, ContentsName, FactsName } from '../folder/names.ts';
import { joinFacts } from '../join-facts.ts';
import { bad, good, type Result } from '../result.ts';
import { checkContents } from '../schemas/check.ts';
import { ownField, ownName, yearField, type Exported } from './exported.ts';
import { lineOfBreak } from './line-of-break.ts';

/**
 * Reads an exported store and checks all of it; nothing of a damaged one is taken.
 *
 * @param path what the file is called in a problem
 */
export function readExport(path: string, bytes: Buffer, form: FileForm): Result<Exported> {
  const text = bytes.toString('utf8').replace(/^\uFEFF/, '');
  if (!Buffer.from(text).equals(bytes) && text.includes('\uFFFD'))
    return damaged(path, { says: 'it holds bytes that are no text', line: null });
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    return damaged(path, broken(text));
  }
  const version = isRecord(parsed) ? parsed['recoat'] : undefined;
  if (!isRecord(parsed) || typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return notOurs(path);
  if (version > form.current)
    return bad(
      'newer',
      path,
      `Not imported: ${path} was written by a newer recoat (form ${version}; this one knows up to ${form.current}).`,
      'Nothing was touched. Import it with the newer recoat.',
    );
  if (!isRecord(parsed['export'])) return notOurs(path);
  const other = Object.keys(parsed).find((name) => !['recoat', 'export', 'sum'].includes(name));
  if (other !== undefined)
    return damaged(path, { says: `${JSON.stringify(other)} has no place in it`, line: null });
  const read = readParts(parsed['export'], text, form, version);
  if ('says' in read) return damaged(path, read);
  if ('sum' in parsed && !hasRightSum(bytes))
    return bad(
      'damaged',
      path,
      `Not imported: ${path} was changed since it was exported; its sum doesn't fit.`,
      'Export it again. If the change was meant, take ,"sum":"..." out of its end; all else in it fits.',
    );
  return good(read);
}

function readParts(
  parts: Readonly<Record<string, unknown>>,
  text: string,
  form: FileForm,
  from: number,
): Exported | Damage {
  const years = new Map<number, Contents['bench']>();
  const own = new Map<string, string>();
  const lists: { [Name in FactsName]?: Contents[Name] } = {};
  let settings: Exported['settings'] | null = null;
  /** Brought up to the present form and checked. */
  const checked = <Name extends ContentsName>(
    name: string,
    holds: Name,
    contents: unknown,
  ): { readonly contents: Contents[Name] } | { readonly damage: Damage } => {
    const raised = broughtUp(form, from, holds, contents);
    const damage = checkContents(raised, holds, text);
    if (damage !== null) return { damage: { ...damage, says: `${name}: ${damage.says}` } };
    const once = Array.isArray(raised) ? joinFacts([], raised as Contents['bench']) : raised;
    return { contents: once as Contents[Name] };
  };

  for (const [name, part] of Object.entries(parts)) {
    const year = yearField.exec(name)?.[1];
    if (name === ownField) {
      const wrong = takeOwn(part, own);
      if (wrong !== null) return { says: wrong, line: null };
    } else if (name === 'settings') {
      const read = checked(name, 'settings', part);
      if ('damage' in read) return read.damage;
      settings = read.contents;
    } else if (year !== undefined || isFactsName(name)) {
      const facts = isRecord(part) ? withShared(part['facts'], part['shared']) : undefined;
      const read = checked(name, isFactsName(name) ? name : 'bench', facts);
      if ('damage' in read) return read.damage;
      if (year !== undefined) years.set(Number(year), read.contents as Contents['bench']);
      else Object.assign(lists, { [name]: read.contents });
    } else return { says: `"${name}" is no part of a store`, line: null };
  }
  const { bench, conditions, pings } = lists;
  for (const [name, part] of Object.entries({ bench, conditions, pings, settings }))
    if (part === undefined || part === null) return { says: `"${name}" is missing`, line: null };
  return {
    bench: bench ?? [],
    conditions: conditions ?? [],
    pings: pings ?? [],
    settings: settings ?? {},
    years,
    own,
  };
}

const isFactsName = (name: string): name is FactsName =>
  name === 'bench' || name === 'conditions' || name === 'pings';

/** A migration takes what was checked when it was written; of anything else the schemas then say what is wrong. */
function broughtUp(form: FileForm, from: number, holds: ContentsName, contents: unknown): unknown {
  try {
    return migrate(form, from, holds, contents);
  } catch {
    return contents;
  }
}

function takeOwn(part: unknown, own: Map<string, string>): string | null {
  if (!isRecord(part)) return `"${ownField}" is no object`;
  for (const [name, text] of Object.entries(part)) {
    const shown = JSON.stringify(name.slice(0, 60));
    if (!ownName.test(name)) return `${ownField}: ${shown} is no name of a YAML file`;
    if (typeof text !== 'string') return `${ownField}: ${shown} is no text`;
    own.set(name, text);
  }
  return null;
}

function broken(text: string): Damage {
  if (text.trim() === '') return { says: 'it is empty', line: null };
  const line = lineOfBreak(text);
  return line === null
    ? { says: 'it is cut short', line: text.trimEnd().split('\n').length }
    : { says: 'it is not JSON', line };
}

const damaged = (path: string, { says, line }: Damage) =>
  bad(
    'damaged',
    path,
    `Not imported: ${path} is damaged: ${line === null ? '' : `line ${line}: `}${says}.`,
    'Nothing of it was taken. Export it again, or take an earlier export.',
  );

const notOurs = (path: string) =>
  bad(
    'damaged',
    path,
    `Not imported: ${path} is no exported store.`,
    'Name a file that was made by: recoat export FILE',
  );
