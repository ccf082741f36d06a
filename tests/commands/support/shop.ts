import { mkdirSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { runCommandLine, type LineOptions } from '../../../src/commands/index.ts';
import type {
  BenchJson,
  CalendarJson,
  CautionsJson,
  CheckedJson,
  CheckupJson,
  ConditionsJson,
  CopiedJson,
  DryingJson,
  FinishedHoursJson,
  JobCardJson,
  KeysJson,
  PotsJson,
  ProductsJson,
  OverJson,
  OvernightJson,
  PastJson,
  PieceHoursJson,
  PingsJson,
  RagsJson,
  RecordedJson,
  SchedulesJson,
  SeenJson,
  SessionsJson,
  SetJson,
  SettingsJson,
  StepsJson,
  TransferJson,
  WindowsJson,
} from '../../../src/commands/json-shapes/index.ts';
import type { World } from '../../../src/shell/world.ts';
import { minute, type Instant, type Milliseconds } from '../../../src/tracker/time/index.ts';

const packageFolder = join(import.meta.dirname, '..', '..', '..');

/** What one command line did. */
export type Done = { readonly code: number; readonly out: string; readonly err: string };

/** The shape of each command's answer. Where a command has several, what they have is there; tests look at their own. */
type Answers = {
  bench: BenchJson;
  windows: WindowsJson;
  drying: DryingJson;
  steps: StepsJson;
  hours: PieceHoursJson & FinishedHoursJson;
  'job-card': JobCardJson;
  sessions: SessionsJson;
  past: PastJson;
  pings: PingsJson;
  calendar: CalendarJson;
  seen: SeenJson;
  over: OverJson;
  rags: RagsJson;
  cautions: CautionsJson;
  overnight: OvernightJson & RecordedJson;
  conditions: ConditionsJson;
  settings: SettingsJson & SetJson;
  schedules: SchedulesJson & CheckedJson & CopiedJson;
  keys: KeysJson;
  checkup: CheckupJson;
  export: TransferJson;
  import: TransferJson;
  pot: PotsJson;
  product: ProductsJson;
};
type AnswerTo<Name extends string> = Name extends keyof Answers ? Answers[Name] : RecordedJson;

export type ShopOptions = {
  /** What its clock shows at first; Tuesday 24 November 2026, 14:29 in New York, as long as nothing is said. */
  readonly now?: string;
  readonly zone?: string;
  readonly locale?: string;
  readonly columns?: number | null;
  readonly interactive?: boolean;
  /** What its environment holds beside the folder of the store. */
  readonly env?: Readonly<Record<string, string>>;
};

/** A shop of its own for the test at hand: a store in a temporary folder, and a clock that is moved by hand. */
export function openShop({
  now = '2026-11-24T14:29:00-05:00',
  zone = 'America/New_York',
  locale = 'en-GB',
  interactive = false,
  columns = null,
  env = {},
}: ShopOptions = {}) {
  const root = mkdtempSync(join(tmpdir(), 'recoat-commands-'));
  onTestFinished(() => rmSync(root, { recursive: true, force: true, maxRetries: 3 }));
  // Only templates, as a built file of them may be older than they are.
  const ownPackage = join(root, 'package');
  mkdirSync(ownPackage);
  symlinkSync(join(packageFolder, 'templates'), join(ownPackage, 'templates'), 'junction');
  const folder = join(root, 'store');
  let at: Instant = Date.parse(now);
  let ids = 0;
  const world = (out: string[], err: string[]): World => ({
    clock: { now: () => at, uptime: () => at - Date.parse('2026-01-01T00:00Z'), bootId: 'boot' },
    newId: () => `id${String((ids += 1)).padStart(4, '0')}`,
    env: { RECOAT_FOLDER: folder, ...env },
    platform: process.platform,
    home: root,
    cwd: root,
    here: { zone, locale },
    packageFolder: ownPackage,
    version: '1.2.3',
    interactive,
    columns,
    print: (text) => void out.push(text.endsWith('\n') ? text : `${text}\n`),
    printError: (text) => void err.push(text.endsWith('\n') ? text : `${text}\n`),
  });
  const run = async (line: readonly string[], options: LineOptions = {}): Promise<Done> => {
    const [out, err]: [string[], string[]] = [[], []];
    const code = await runCommandLine(line, world(out, err), options);
    return { code, out: out.join(''), err: err.join('') };
  };
  const shop = {
    root,
    folder,
    run,
    /** Runs a line that must do what it says; gives back what it printed. */
    does: async (...line: readonly string[]): Promise<string> => {
      const { code, out, err } = await run(line);
      if (code !== 0) throw new Error(`recoat ${line.join(' ')}: ${code}: ${err}`);
      return out;
    },
    /** The answer as JSON of a line that must do what it says. */
    json: async <const Name extends string>(
      name: Name,
      ...words: readonly string[]
    ): Promise<AnswerTo<Name>> =>
      JSON.parse(await shop.does(name, ...words, '--json')) as AnswerTo<Name>,
    /** Runs a line that must not do it; gives back the sentence and the exit code. */
    refuses: async (...line: readonly string[]): Promise<{ code: number; says: string }> => {
      const { code, out, err } = await run(line);
      if (code === 0) throw new Error(`recoat ${line.join(' ')} was not refused: ${out}`);
      return { code, says: err.trimEnd() };
    },
    later: (by: Milliseconds) => {
      at += by;
    },
    minutesLater: (minutes: number) => {
      at += minutes * minute;
    },
    now: () => at,
  };
  return shop;
}

export type Shop = ReturnType<typeof openShop>;
