import { chanceFrom } from '../../src/commands/demo/chance.ts';
import { inventPiece } from '../../src/commands/demo/invented-piece.ts';
import { handsOf } from '../../src/commands/demo/working-hours.ts';
import { senseOf } from '../../src/shell/shop.ts';
import { foldBench, openPots, windowsOfPiece } from '../../src/tracker/bench/index.ts';
import { opensAt } from '../../src/tracker/windows/index.ts';

/**
 * @typedef {import('../../src/tracker/bench/index.ts').BenchFact} BenchFact
 * @typedef {import('../../src/tracker/trade/index.ts').FinishingSchedule} FinishingSchedule
 * @typedef {import('../../src/commands/demo/invented-piece.ts').InventedRecord} InventedRecord
 */

export const minute = 60_000;
export const hour = 60 * minute;
export const day = 24 * hour;
/** No invented piece takes longer from its first step to its last. */
const longestWork = 120 * day;

export const zone = 'UTC';
export const sense = senseOf({ zone, hours: '24', temperature: 'C', lengths: 'mm' });

const kinds = [
  'chair',
  'stool',
  'table',
  'chest',
  'shelf',
  'bench',
  'box',
  'stand',
  'rack',
  'desk',
];
const woods = ['Oak', 'Pine', 'Beech', 'Walnut', 'Ash', 'Elm', 'Cherry', 'Birch'];

/**
 * Invents pieces one after another, each with hands of its own, so that none waits for another.
 *
 * @param {readonly FinishingSchedule[]} schedules
 */
export function inventor(schedules) {
  let number = 1000;
  /**
   * @param {number} from when it is added
   * @param {string} [scheduleId] default: each schedule in turn
   * @returns {InventedRecord}
   */
  return (from, scheduleId) => {
    number += 1;
    const schedule =
      schedules.find(({ id }) => id === scheduleId) ?? schedules[number % schedules.length];
    if (schedule === undefined) throw new Error('no finishing schedule was found');
    const kind = kinds[number % kinds.length] ?? '';
    const name = `${woods[number % woods.length]} ${kind} ${number}`;
    const wood = number % 3 === 0 ? 'soft' : 'hard';
    const describe = /** @type {const} */ ({ kind, wood, areaM2: 0.4 + (number % 7) * 0.3 });
    // Coats that were tried would teach the bench other times than these pieces are made to open at.
    const [chance, hands, slowness] = [chanceFrom(number), handsOf(zone), {}];
    const invention = { sense, zone, chance, hands, slowness };
    return inventPiece({ name, schedule, describe, addedAt: from }, number, invention);
  };
}

/**
 * The bench at `now`: of ten pieces seven have a coat drying, and these open one after another; one has a coat that may be
 * tried, one is on hold, and one has every step done.
 *
 * @param {ReturnType<typeof inventor>} invent
 * @param {{pieces: number, now: number, firstOpensIn: number, apart: number}} wanted
 * @returns {readonly BenchFact[]}
 */
export function inventBench(invent, { pieces, now, firstOpensIn, apart }) {
  let drying = 0;
  const makers = [
    ...Array.from({ length: 7 }, () => () => {
      drying += 1;
      return withCoat(invent, now + firstOpensIn + (drying - 1) * apart);
    }),
    () => withCoat(invent, now - 20 * minute),
    () => onHold(invent, now),
    () => worked(invent, now, () => null),
  ];
  return Array.from({ length: pieces }, (_, index) => {
    const make = makers[index % makers.length];
    return make === undefined ? [] : make().facts(index + 1);
  }).flat();
}

/**
 * A piece whose coat of varnish, put on earlier, opens at that instant.
 *
 * @param {ReturnType<typeof inventor>} invent
 * @param {number} opens
 */
function withCoat(invent, opens) {
  /** @param {number} coated */
  const coat = (coated) => {
    const record = invent(coated - longestWork, 'strip-stain-varnish');
    record.workUntil('varnish-2', coated - longestWork);
    record.act({ do: 'first stroke', piece: record.id, part: null }, coated - 20 * minute);
    record.act({ do: 'done', piece: record.id, part: null }, coated);
    record.act({ do: 'put down', piece: record.id }, coated + 3 * minute);
    washOutPots(record, coated + 3 * minute);
    return record;
  };
  const guess = opens - day;
  return coat(guess + (opens - opening(coat(guess))));
}

/**
 * A pot that was mixed months ago and never washed out would stand above all rows, and nobody could see one count down.
 *
 * @param {InventedRecord} record
 * @param {number} at
 */
function washOutPots(record, at) {
  for (const { id } of openPots(foldBench(record.facts(1))))
    record.act({ do: 'wash out pot', pot: id }, at);
}

/** @param {InventedRecord} record */
function opening(record) {
  const state = record.state();
  const needed = state.steps.find((step) => step.id === 'scuff-2')?.needs ?? [];
  const live = windowsOfPiece(state, [], sense).filter(
    ({ rule, closedAt, subject }) =>
      closedAt === null &&
      subject.stepId === 'varnish-2' &&
      rule.milestone !== undefined &&
      needed.includes(rule.milestone),
  );
  const opens = live.map((window) => opensAt(window)).find((at) => at !== null);
  if (opens === undefined) throw new Error('the coat of varnish opened no window');
  return opens;
}

/**
 * @param {ReturnType<typeof inventor>} invent
 * @param {number} now
 * @param {(record: InventedRecord) => string | null} until the step to stop before
 */
function worked(invent, now, until) {
  const record = invent(now - longestWork);
  const ended = record.workUntil(until(record), now - longestWork);
  washOutPots(record, ended);
  if (ended > now) throw new Error(`an invented piece took longer than ${longestWork / day} days`);
  return record;
}

/** @param {InventedRecord} record */
const stepInMiddle = (record) => {
  const { steps } = record.state();
  return steps[Math.floor(steps.length / 2)]?.id ?? null;
};

/** @param {ReturnType<typeof inventor>} invent @param {number} now */
function onHold(invent, now) {
  const record = worked(invent, now, stepInMiddle);
  record.act(
    { do: 'place hold', piece: record.id, reason: 'hinge plates', askAgain: null },
    now - day,
  );
  return record;
}
