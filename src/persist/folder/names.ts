import { join } from 'node:path';
import type { BenchFact, ConditionsFact, PingFact } from '../../tracker/bench/index.ts';
import type { CalendarDay, Instant } from '../../tracker/time/index.ts';

/** What the inside of a file is. */
export type Contents = {
  bench: readonly BenchFact[];
  conditions: readonly ConditionsFact[];
  pings: readonly PingFact[];
  settings: Readonly<Record<string, unknown>>;
};
export type ContentsName = keyof Contents;
export type FactsName = Exclude<ContentsName, 'settings'>;

/** One file of the store: its name within the folder, without ending, and what it holds. */
export type StoreFile<Name extends ContentsName = ContentsName> = {
  readonly name: string;
  readonly holds: Name;
};

export const benchFile: StoreFile<'bench'> = { name: 'bench', holds: 'bench' };
export const conditionsFile: StoreFile<'conditions'> = { name: 'conditions', holds: 'conditions' };
export const pingsFile: StoreFile<'pings'> = { name: 'pings', holds: 'pings' };
export const settingsFile: StoreFile<'settings'> = { name: 'settings', holds: 'settings' };
/** The files read at every start. */
export const liveFiles = [benchFile, conditionsFile, pingsFile, settingsFile] as const;

export const historyFolder = 'history';
export const historyFile = (year: number): StoreFile<'bench'> => ({
  name: `${historyFolder}/${String(year).padStart(4, '0')}`,
  holds: 'bench',
});

export const backupFolder = 'backups';
export const backupPath = (folder: string, day: CalendarDay): string =>
  join(folder, backupFolder, `${benchFile.name}-${day}.json`);
export const backupName = new RegExp(`^${benchFile.name}-\\d{4}-\\d{2}-\\d{2}\\.json$`);

export const lockPath = (folder: string): string => join(folder, 'lock.sqlite');

export const filePath = (folder: string, { name }: StoreFile): string =>
  join(folder, `${name}.json`);
/** The generation before the one in use. */
export const previousPath = (folder: string, { name }: StoreFile): string =>
  join(folder, `${name}.prev.json`);
/** The file as it was in an older form, kept when it was brought up to the present one. */
export const olderFormPath = (folder: string, { name }: StoreFile, form: number): string =>
  join(folder, `${name}.form${form}.json`);
/** Where a damaged file is kept for whoever wants to look at it. The time in it is UTC. */
export const damagedPath = (
  folder: string,
  { name }: StoreFile,
  now: Instant,
  again: number,
): string => {
  const [day = '', time = ''] = new Date(now).toISOString().split('T');
  const stamp = `${day.replaceAll('-', '')}-${time.slice(0, 8).replaceAll(':', '')}`;
  return join(folder, `${name}.damaged-${stamp}${again === 0 ? '' : `-${again + 1}`}.json`);
};
