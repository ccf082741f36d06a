import { readingsOf } from '../shell/intent-context.ts';
import { createLearning } from '../shell/learning.ts';
import { readHoursFile } from '../shell/read-hours-file.ts';
import { tellCell } from '../persist/hours-import/tell-cell.ts';
import type { HoursFile } from '../persist/hours-import/read-hours.ts';
import { foldBench, type ImportedHours } from '../tracker/bench/index.ts';
import { fullDay, shopDay } from '../views/format/index.ts';
import { importLines, importsLines } from './text/import-lines.ts';
import { importJson, importsJson } from './json/import-json.ts';
import { exitCodes } from './line/exit-codes.ts';
import {
  failure,
  isFailure,
  type Answer,
  type CommandFile,
  type Failure,
  type Given,
} from './line/command.ts';
import { look, type Look } from './line/look.ts';
import { record, withStore } from './line/record.ts';
import type { Room } from './line/room.ts';

const not = 'Not taken';

export const importHoursFile: CommandFile = {
  takes: '[file]',
  options: [
    ['--take', 'take them, once the preview is right'],
    ['--without-refused', 'take the other lines, where some are refused'],
    ['--take-out <number>', 'take one import out again, as a whole'],
  ],
  help: 'A file of comma-separated values whose first line names the columns date, piece, step class, minutes, estimate, in any order: one step on one day a line, 2026-03-14,Oak chest,strip,95,60. Without --take it shows what would be taken. Without a file it lists what was taken in.',
  run: async (room, given) => {
    if (given.maybe('take-out') !== null) return takeOut(given.maybe('take-out') ?? '', room);
    const file = given.maybe('file');
    const shop = await look(room);
    if (isFailure(shop)) return shop;
    if (file === null) {
      const imports = shop.bench.imports ?? [];
      return { lines: () => importsLines(imports, shop), json: () => importsJson(imports, shop) };
    }
    const read = await readFrom(file, room, shop);
    if (isFailure(read)) return read;
    return answerFor(file, read, given, room, shop);
  },
};

async function readFrom(
  file: string,
  { world }: Room,
  { now, shop }: Look,
): Promise<HoursFile | Failure> {
  const read = await readHoursFile(file, world, { now, zone: shop.zone });
  return 'refused' in read ? failure('refused', read.refused) : read;
}

async function answerFor(
  file: string,
  read: HoursFile,
  given: Given,
  room: Room,
  shop: Look,
): Promise<Answer | Failure> {
  const { rows, fingerprint, problems } = read;
  const before = shop.bench.imports?.find((each) => each.fingerprint === fingerprint);
  if (before !== undefined && rows.length > 0) return alreadyIn(file, before, shop);
  const isBlocked = rows.length === 0 || (problems.length > 0 && !given.has('without-refused'));
  const preview = (): readonly string[] => importLines(file, read, shop);
  if (given.has('take') && isBlocked) return blocked(file, read, room);
  const wanted =
    given.has('take') || (!isBlocked && room.ask !== null && (await asked(preview(), room)));
  if (!wanted)
    return {
      ...(problems.length === 0 ? {} : { code: exitCodes.refused }),
      lines: preview,
      json: () => importJson(read),
    };
  const done = await record(room, () => ({
    intents: [{ do: 'import hours', file, fingerprint, rows }],
  }));
  if (!isFailure(done)) await learnAnew(room);
  return done;
}

async function asked(preview: readonly string[], room: Room): Promise<boolean> {
  for (const line of preview) room.tell(line);
  return (await room.ask?.('Take them?')) ?? false;
}

const alreadyIn = (
  file: string,
  { file: known, takenAt }: ImportedHours,
  { shop }: Look,
): Failure =>
  failure(
    'refused',
    `${not}: the hours in ${file} are in already, from ${known} on ${fullDay(shopDay(takenAt, shop.zone))}. To take those out: recoat import-hours --take-out NUMBER`,
  );

/** Every refused line is told: they can be mended at one go. */
function blocked(file: string, { rows, problems }: HoursFile, room: Room): Failure {
  for (const each of problems) room.tell(tellCell(each));
  if (problems.length === 0) return failure('refused', `${not}: ${file} has no line with hours.`);
  const more =
    rows.length === 0 ? '' : ` To take the other ${rows.length} all the same: --without-refused`;
  return failure('refused', `${not}: ${file} has lines that are refused.${more}`);
}

async function takeOut(number: string, room: Room): Promise<Answer | Failure> {
  const done = await record(room, ({ bench }) => {
    const imports = bench.imports ?? [];
    const found = imports.find(({ id }, index) => String(index + 1) === number || id === number);
    return found === undefined
      ? failure(
          'unknown',
          imports.length === 0
            ? 'Not taken out: no hours were imported.'
            : `Not taken out: there is no import "${number}". To see which there are: recoat import-hours`,
        )
      : { intents: [{ do: 'take out import', import: found.id }] };
  });
  if (!isFailure(done)) await learnAnew(room);
  return done;
}

/** What the history taught stands on top of imported hours: both are learned anew. */
async function learnAnew(room: Room): Promise<void> {
  await withStore(room, (store) => {
    const loaded = store.load();
    if (!loaded.ok) return null;
    const { bench, conditions } = loaded.value;
    createLearning(room.folder).refresh(store, foldBench(bench), readingsOf(conditions));
    return null;
  });
}
