import { readdir, readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { readRules } from '../rules/index.ts';
import type { ScheduleSourceFile } from './library.ts';
import type { ScheduleLibrary, ShippedTemplates } from './library-types.ts';
import type { Problem } from './problem.ts';

/** Where finishing schedules and products lie. */
export type ScheduleFolders = {
  /** The JSON that the build made of `templates`; null, or a file that is not there, means reading the YAML. */
  readonly built: string | null;
  /** The program's folder of templates. */
  readonly templates: string;
  /** The user's folder of schedules; it need not exist. */
  readonly own: string | null;
};

/** Folders below `templates/` that hold the program's own files. */
const shippedFolders = ['products', 'schedules'];

/**
 * Reads the program's finishing schedules and products, and the user's beside them. With built templates and no file of
 * the user's this is one file of JSON; the YAML parser is loaded only where there is YAML to read.
 */
export async function readScheduleFolders(folders: ScheduleFolders): Promise<ScheduleLibrary> {
  const [built, own] = await Promise.all([
    readBuilt(folders.built),
    folders.own === null ? nothing : readFolder(folders.own, true),
  ]);
  if (built !== null && own.files.length === 0) {
    return { ...built, problems: own.problems, replacements: [], remarks: [] };
  }
  const shipped = built === null ? await readTemplates(folders.templates) : nothing;
  const { loadSchedules } = await import('./parsing.ts');
  const { rules, problems } = await readRules(rulesBeside(folders));
  const library = loadSchedules([...shipped.files, ...own.files], built ?? undefined, rules.over);
  return {
    ...library,
    problems: [...problems, ...shipped.problems, ...own.problems, ...library.problems],
  };
}

/** The rules of the trade lie beside the schedules, in what was built as in the templates. */
export const rulesBeside = ({
  built,
  templates,
}: Omit<ScheduleFolders, 'own'>): Parameters<typeof readRules>[0] => ({
  built: built === null ? null : join(dirname(built), 'rules.json'),
  templates,
});

/** The build writes it whole, so it is taken as it is; anything unreadable falls back to the YAML it was made from. */
async function readBuilt(path: string | null): Promise<ShippedTemplates | null> {
  if (path === null) return null;
  try {
    return JSON.parse(await readFile(path, 'utf8')) as ShippedTemplates;
  } catch {
    return null;
  }
}

type FolderReading = {
  readonly files: readonly ScheduleSourceFile[];
  readonly problems: readonly Problem[];
};
const nothing: FolderReading = { files: [], problems: [] };

async function readTemplates(folder: string): Promise<FolderReading> {
  return together(
    await Promise.all(shippedFolders.map((name) => readFolder(join(folder, name), false))),
  );
}

async function readFolder(folder: string, isOwn: boolean): Promise<FolderReading> {
  let names: readonly string[];
  try {
    names = await readdir(folder);
  } catch (thrown) {
    if (isOwn && codeOf(thrown) === 'ENOENT') return nothing;
    return { files: [], problems: [unreadable(folder, thrown)] };
  }
  const wanted = names.filter((name) => /\.ya?ml$/.test(name)).sort();
  return together(await Promise.all(wanted.map((name) => readOne(join(folder, name), isOwn))));
}

async function readOne(path: string, isOwn: boolean): Promise<FolderReading> {
  try {
    return { files: [{ path, text: await readFile(path, 'utf8'), own: isOwn }], problems: [] };
  } catch (thrown) {
    return { files: [], problems: [unreadable(path, thrown)] };
  }
}

const together = (readings: readonly FolderReading[]): FolderReading => ({
  files: readings.flatMap((each) => each.files),
  problems: readings.flatMap((each) => each.problems),
});

function unreadable(path: string, thrown: unknown): Problem {
  const reason = codeOf(thrown) ?? String(thrown);
  return {
    file: path,
    line: 1,
    column: 1,
    field: '',
    found: reason,
    expected: 'a file or folder that can be read',
    says: `It can't be read (${reason}).`,
    todo: 'Check that it is there and that you may read it.',
  };
}

const codeOf = (thrown: unknown): string | undefined =>
  thrown instanceof Error && 'code' in thrown && typeof thrown.code === 'string'
    ? thrown.code
    : undefined;
