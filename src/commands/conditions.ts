import { factHead } from '../shell/head-facts.ts';
import { madeNeedless, type ConditionsFact } from '../tracker/bench/index.ts';
import { readClimate, type Reading } from '../tracker/trade/index.ts';
import { clock, day, metered } from '../views/format/index.ts';
import { readingJson } from './json/names.ts';
import type { ConditionsJson } from './json-shapes/index.ts';
import { failure, isFailure, type Answer, type CommandFile } from './line/command.ts';
import { look, lookAt, storeFailure, type Look } from './line/look.ts';
import { withStore } from './line/record.ts';
import type { Room } from './line/room.ts';

export const conditions: CommandFile = {
  takes: '[reading...]',
  options: [['--all', 'all readings there are, not only the last ten']],
  help: 'With a reading (66F 55%, 19 C 55 %, 66F 55% surface 60F) it is noted; without one the last ten are shown. From a script it counts as told by a script.',
  run: async (room, given) => {
    const typed = given.sentence('reading');
    if (typed !== '') return noteReading(room, typed);
    const shop = await look(room);
    if (isFailure(shop)) return shop;
    return shown(given.has('all') ? shop.readings : shop.readings.slice(-lastFew), shop);
  },
};

const lastFew = 10;

function noteReading(room: Room, typed: string) {
  return withStore(room, (store) => {
    const result = store.change<Answer | ReturnType<typeof failure>>((current) => {
      const shop = lookAt(room, current);
      const read = readClimate(typed, shop.shop.temperature);
      if (!read.ok) return { append: {}, result: failure('usage', `Not noted: ${read.says}`) };
      const { world, clock } = room;
      const by = world.interactive ? 'person' : 'script';
      const head = factHead(world.newId(), clock, by);
      const reading: ConditionsFact = { ...head, kind: 'reading-taken', body: read.climate };
      return {
        append: {
          conditions: [reading],
          needless: madeNeedless(current.conditions, reading),
        },
        result: shown([{ ...read.climate, at: clock.told }], shop),
      };
    });
    return result.ok ? result.value : storeFailure(result.problem);
  });
}

const shown = (readings: readonly Reading[], { shop }: Look): Answer => ({
  lines: () =>
    readings.length === 0
      ? ['No reading yet. Note one: recoat conditions 66F 55%']
      : readings.map(
          (reading) =>
            `${day(reading.at, shop)} ${clock(reading.at, shop)}  ${metered(reading, shop.temperature)}`,
        ),
  json: (): ConditionsJson => ({
    readings: readings.map((reading) => readingJson(reading, shop.zone)),
  }),
});
