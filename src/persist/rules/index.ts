import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { noRules, stepClasses, type TradeRules } from '../../tracker/trade/index.ts';
import type { Problem } from '../schedules/problem.ts';

/** Where the rules of the trade lie. */
export type RuleFolders = {
  /** The JSON that the build made of them; null, or a file that is not there, means reading the YAML. */
  readonly built: string | null;
  /** The program's folder of templates. */
  readonly templates: string;
};

export type RulesReading = { readonly rules: TradeRules; readonly problems: readonly Problem[] };

/** What may go over what, and what to be careful about. They are the program's own. */
export async function readRules({ built, templates }: RuleFolders): Promise<RulesReading> {
  const folder = join(templates, 'rules');
  const textOf = async (name: string) => {
    const path = join(folder, name);
    return { path, text: await readFile(path, 'utf8') };
  };
  const read = await readBuilt(built);
  if (read !== null) return { rules: read, problems: [] };
  try {
    const [over, cautions] = await Promise.all([textOf('over.yaml'), textOf('cautions.yaml')]);
    const { readRuleFiles } = await import('./read-rules.ts');
    const reading = readRuleFiles(over, cautions);
    return reading.ok
      ? { rules: reading.value, problems: [] }
      : { rules: unreadable, problems: reading.problems };
  } catch (thrown) {
    const found = thrown instanceof Error ? thrown.message : String(thrown);
    const problem: Problem = {
      file: folder,
      line: 1,
      column: 1,
      field: '',
      found,
      expected: 'over.yaml and cautions.yaml',
      says: `The rules of the trade can't be read (${found}).`,
      todo: 'Install the program again.',
    };
    return { rules: unreadable, problems: [problem] };
  }
}

/** The build writes it whole; anything unreadable falls back to the YAML it was made from. */
async function readBuilt(path: string | null): Promise<TradeRules | null> {
  if (path === null) return null;
  try {
    return JSON.parse(await readFile(path, 'utf8')) as TradeRules;
  } catch {
    return null;
  }
}

/** Said on every step rather than working on in silence. */
const unreadable: TradeRules = {
  ...noRules,
  cautions: [
    {
      id: 'rules-unreadable',
      steps: stepClasses,
      products: [],
      words: [],
      fumes: false,
      lead: null,
      unlessSaid: [],
      says: "The program's cautions can't be read: go by the label, and install the program again.",
      deadly: true,
      source: 'the program',
    },
  ],
};
