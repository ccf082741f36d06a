import { factHead } from '../shell/head-facts.ts';
import { shownPings } from '../shell/shown-pings.ts';
import type { PingFact } from '../tracker/bench/index.ts';
import type { ShownPing } from '../views/port.ts';
import type { SeenJson } from './json-shapes/index.ts';
import { failure, type Answer, type CommandFile, type Failure } from './line/command.ts';
import { storeFailure } from './line/look.ts';
import { withStore } from './line/record.ts';

export const seen: CommandFile = {
  takes: '[id]',
  help: 'Takes note of all pings that nobody has seen, or of the one with that id ("pings --json" tells it). A loud one stops.',
  run: (room, given) =>
    withStore(room, (store): Answer | Failure => {
      const id = given.maybe('id');
      const result = store.change<readonly ShownPing[]>((current) => {
        const unseen = shownPings(current.pings).filter(
          ({ seenAt, claim }) => seenAt === null && (id === null || claim === id),
        );
        const { world, clock } = room;
        const facts = unseen.map(({ claim }): PingFact => ({
          ...factHead(world.newId(), clock),
          kind: 'ping-acknowledged',
          body: { claim },
        }));
        return { append: { pings: facts }, result: unseen };
      });
      if (!result.ok) return storeFailure(result.problem);
      const noted = result.value;
      if (id !== null && noted.length === 0)
        return failure('unknown', `Not noted: no ping "${id}" waits to be seen.`);
      return {
        lines: () =>
          noted.length === 0
            ? ['No ping waits to be seen.']
            : noted.map(({ text }) => `seen: ${text}`),
        json: (): SeenJson => ({ seen: noted.map(({ claim }) => claim) }),
      };
    }),
};
