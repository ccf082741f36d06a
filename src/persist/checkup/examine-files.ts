import { existsSync, readdirSync } from 'node:fs';
import { presentForm } from '../file/form.ts';
import {
  filePath,
  historyFile,
  liveFiles,
  previousPath,
  settingsFile,
  type Contents,
  type ContentsName,
  type StoreFile,
} from '../folder/names.ts';
import { historyYears } from '../reading/history-years.ts';
import { inspect } from '../reading/inspect.ts';
import { leftovers } from '../reading/leftovers.ts';
import { emptyContents } from '../reading/mend.ts';
import { checkContents } from '../schemas/check.ts';
import { readSettings, type SettingsReading } from '../settings/read-settings.ts';
import { findingsAbout, type Finding } from './finding.ts';

const { fine, note, wrong } = findingsAbout('store');

export type Examined = {
  readonly findings: readonly Finding[];
  /** What could be read, for what else is looked at. Nothing was mended. */
  readonly contents: Omit<Contents, 'settings'>;
  readonly settings: SettingsReading['settings'];
};

/** Reads every file of the store with everything checked, and changes nothing. */
export function examineFiles(folder: string): Examined {
  const findings: Finding[] = [];
  const contents: Contents = { bench: [], conditions: [], pings: [], settings: {} };
  for (const file of liveFiles) {
    const looked = examine(folder, file);
    findings.push(...looked.findings);
    Object.assign(contents, { [file.holds]: looked.contents });
  }
  for (const year of historyYears(folder))
    findings.push(...examine(folder, historyFile(year)).findings);
  const { settings, notices } = readSettings(contents.settings, filePath(folder, settingsFile));
  findings.push(...notices.map(({ says, todo }) => wrong(says, todo)), ...setAside(folder));
  return { findings, contents, settings };
}

function examine<Name extends ContentsName>(
  folder: string,
  file: StoreFile<Name>,
): { readonly findings: readonly Finding[]; readonly contents: Contents[Name] } {
  const called = `${file.name}.json`;
  const found = inspect(filePath(folder, file), file.holds, presentForm, checkContents);
  const nothing = emptyContents(file.holds);
  if (!found.ok)
    return { findings: [wrong(found.problem.says, found.problem.todo)], contents: nothing };
  switch (found.value.is) {
    case 'absent':
      return { findings: missing(folder, file), contents: nothing };
    case 'damaged': {
      const { says, line } = found.value.damage;
      const where = line === null ? '' : `line ${line}: `;
      return {
        findings: [wrong(`${called} is damaged: ${where}${says}.`, earlierCopy(folder, file))],
        contents: nothing,
      };
    }
    case 'unchecked':
      return { findings: [], contents: nothing };
    case 'fine': {
      const { contents } = found.value;
      const count = Array.isArray(contents) ? `${contents.length} facts` : 'read';
      return {
        findings: [
          isVouched(folder, file)
            ? fine(`${called}: ${count}, and its sum is right.`)
            : note(`${called}: ${count}. Another hand wrote it, so it has no sum; all of it fits.`),
          ...generation(folder, file),
        ],
        contents,
      };
    }
  }
}

/** Read without the schemas, which takes only what has a right sum. */
function isVouched(folder: string, file: StoreFile): boolean {
  const quick = inspect(filePath(folder, file), file.holds, presentForm, null);
  return quick.ok && quick.value.is === 'fine';
}

const missing = (folder: string, file: StoreFile): readonly Finding[] =>
  leftovers(folder, file).length === 0
    ? []
    : [wrong(`${file.name}.json is missing, although there was one.`, earlierCopy(folder, file))];

const earlierCopy = (folder: string, file: StoreFile): string => {
  const [copy] = leftovers(folder, file);
  return copy === undefined
    ? 'There is no earlier copy of it here. If you have one elsewhere, put it there with recoat closed.'
    : `Any other command of recoat sets it aside and puts ${copy.told} in its place.`;
};

/** The generation before is what a damaged file is mended from. */
function generation(folder: string, file: StoreFile): readonly Finding[] {
  const path = previousPath(folder, file);
  if (!existsSync(path)) return [];
  const found = inspect(path, file.holds, presentForm, checkContents);
  if (found.ok && found.value.is === 'fine') return [];
  return [
    wrong(
      `${file.name}.prev.json, the generation before, can't be read.`,
      'The next change replaces it. Until then a damaged file can be mended from a backup only.',
    ),
  ];
}

function setAside(folder: string): readonly Finding[] {
  let names: readonly string[] = [];
  try {
    names = readdirSync(folder).filter((name) => /\.damaged-.*\.json$/.test(name));
  } catch {
    // Whoever reads the folder itself tells it.
  }
  return names.length === 0
    ? []
    : [
        note(
          `${names.length === 1 ? 'One damaged file was' : `${names.length} damaged files were`} set aside: ${names.join(', ')}.`,
          'Take away what you need no more.',
        ),
      ];
}
