import { existsSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import type { Finding } from '../persist/checkup/finding.ts';
import { readScheduleFolders, tellProblems } from '../persist/schedules/index.ts';
import { scheduleFolders } from '../shell/port.ts';
import { pingsOfBench } from '../tracker/bench/index.ts';
import { whenInWords } from '../views/format/index.ts';
import type { CheckupJson } from './json-shapes/index.ts';
import type { CommandFile } from './line/command.ts';
import { exitCodes } from './line/exit-codes.ts';
import { lookAt, missingStore } from './line/look.ts';
import type { Room } from './line/room.ts';
import { checkupLines } from './text/checkup-lines.ts';

export const checkup: CommandFile = {
  options: [['--ping', 'really send a desktop notification, and a ping to your hook']],
  help: 'Store, lock, backups, folder, keeper, notifier, keeping awake, terminal, clock, and your own schedules and products: what is in order, what is wrong, and what to do. Changes nothing. Ends with 1 where something is wrong.',
  run: async (room, given) => {
    const missing = missingStore(room);
    if (missing !== null) return missing;
    const findings = await allFindings(room, given.has('ping'));
    const wrong = findings.filter(({ state }) => state === 'wrong').length;
    return {
      ...(wrong === 0 ? {} : { code: exitCodes.refused }),
      lines: () => checkupLines(findings),
      json: (): CheckupJson => ({ wrong, findings }),
    };
  },
};

async function allFindings(room: Room, sends: boolean): Promise<readonly Finding[]> {
  const { folder, now, world } = room;
  // Loaded only here: they bring the schemas, the lock and the notifier along.
  const persist = await import('../persist/checkup/index.ts');
  const shell = await import('../shell/checkup/index.ts');
  const { findings, contents, settings } = persist.examineFiles(folder);
  const { shop, bench, sense } = lookAt(room, { ...contents, settings });
  const tell = (at: number): string => whenInWords(at, now, shop);
  const next = pingsOfBench(bench, now, sense)
    .map(({ at }) => at)
    .filter((at) => at > now)
    .reduce<number | null>((first, at) => (first === null ? at : Math.min(first, at)), null);
  const check = { world, settings, sends };
  const isThere = existsSync(folder);
  const lastTold = contents.bench.reduce<number | null>(
    (last, { told }) => (last === null ? told : Math.max(last, told)),
    null,
  );
  return [
    ...(isThere ? findings : [nothingYet(folder)]),
    ...(isThere ? persist.examineLock(folder) : []),
    ...persist.examineBackups(folder, lastTold),
    ...(isThere ? persist.examineFolder(folder) : []),
    shell.checkKeeper(folder, settings, next, tell),
    await shell.checkNotifier(check),
    ...(await shell.checkHook(check)),
    await shell.checkAwake({ world, settings, wait }),
    ...shell.checkTerminal({ size: sizeOf(room), env: world.env }, settings),
    ...shell.checkClock({
      clock: world.clock,
      now,
      facts: contents.bench,
      zone: shop.zone,
      machineZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
      tell,
    }),
    ...(await schedulesFindings(room)),
  ];
}

const nothingYet = (folder: string): Finding => ({
  about: 'store',
  state: 'note',
  says: `There is no ${folder} yet: nothing was recorded.`,
  todo: 'It is made with the first piece.',
});

const sizeOf = ({ world }: Room): { columns: number; rows: number } | null =>
  world.interactive ? { columns: process.stdout.columns, rows: process.stdout.rows } : null;

async function schedulesFindings({ world, folder }: Room): Promise<readonly Finding[]> {
  const { problems, replacements, remarks, schedules } = await readScheduleFolders(
    scheduleFolders(world, folder),
  );
  const found = (state: Finding['state'], says: string, todo: string | null): Finding => ({
    about: 'schedules',
    state,
    says,
    todo,
  });
  return [
    ...tellProblems(problems).map((says) =>
      found('wrong', says, 'Mend the file, then: recoat schedules check'),
    ),
    ...[...replacements.map(({ says }) => says), ...tellProblems(remarks)].map((says) =>
      found('note', says, null),
    ),
    ...(problems.length > 0
      ? []
      : [found('in order', `${schedules.length} finishing schedules, all of which read.`, null)]),
  ];
}
