import type { OpenedStore } from '../../persist/index.ts';
import type { BenchFact } from '../../tracker/bench/index.ts';
import { isFailure, type Failure } from './command.ts';
import { lookAt, noticeText, openToRead, type Look } from './look.ts';
import type { Room } from './room.ts';

/** All facts of the years gone by. A year that can't be read is told and left out. */
async function readYears(opened: OpenedStore, room: Room): Promise<readonly BenchFact[]> {
  const facts: BenchFact[] = [];
  const { progress } = room.world;
  const years = opened.historyYears();
  for (const [index, year] of years.entries()) {
    progress?.(`reading past years, ${index + 1} of ${years.length}`);
    const history = await opened.readHistory(year);
    if (!history.ok) {
      room.tell(noticeText(history.problem));
      continue;
    }
    history.value.notices.forEach((notice) => room.tell(noticeText(notice)));
    // Pushed one by one: as arguments a year's facts may be more than the stack holds.
    for (const fact of history.value.facts) facts.push(fact);
  }
  progress?.('');
  return facts;
}

/** The shop with every piece there ever was: those of years gone by, and what is in the bench file. */
export async function lookBack(room: Room): Promise<Look | Failure> {
  const opened = await openToRead(room);
  if (isFailure(opened)) return opened;
  return withYears(opened, room);
}

export const withYears = async (opened: OpenedStore, room: Room): Promise<Look> =>
  lookAt(room, opened, together(await readYears(opened, room), opened.bench));

/** A piece that came back and left again stands in several files; each fact counts once. */
export const together = (...files: readonly (readonly BenchFact[])[]): readonly BenchFact[] => [
  ...new Map(files.flat().map((fact) => [fact.id, fact])).values(),
];
