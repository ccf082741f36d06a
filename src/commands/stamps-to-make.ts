import { offeredStamps } from '../tracker/bench/index.ts';
import { stampEffect, stampName } from '../views/format/index.ts';
import { stepName } from './json/names.ts';
import type { StampsToMakeJson } from './json-shapes/index.ts';
import { isFailure, type Answer, type Failure, type Given } from './line/command.ts';
import { look } from './line/look.ts';
import type { Room } from './line/room.ts';
import { targetGiven } from './names/target.ts';
import { inColumns } from './text/columns.ts';

/** The stamps outside the sequence that would change what runs on a piece, as the screen's list offers them. */
export async function stampsToMake(room: Room, given: Given): Promise<Answer | Failure> {
  const seen = await look(room);
  if (isFailure(seen)) return seen;
  const target = targetGiven(given, seen, 'Not stamped');
  if (isFailure(target)) return target;
  const { piece, part } = target;
  const { bench, now, sense, shop } = seen;
  const stamps = offeredStamps(bench, piece, part, { now, sense });
  return {
    lines: () =>
      stamps.length === 0
        ? ['Nothing runs that another stamp would change.']
        : inColumns(
            stamps.map((each) => [stampName(each), stampEffect(each, now, shop), each.step.name]),
          ),
    json: (): StampsToMakeJson => ({
      stamps: stamps.map((each) => ({
        event: each.event,
        agent: each.agent,
        step: stepName(piece, each.step.id),
        window: each.after.key,
        does: stampEffect(each, now, shop),
      })),
    }),
  };
}
