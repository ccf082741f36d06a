import type {
  BenchFact,
  ConditionsFact,
  PieceDescription,
  PingSense,
} from '../../tracker/bench/index.ts';
import { day, hour, minute, second, type Instant } from '../../tracker/time/index.ts';
import type { FinishingSchedule } from '../../tracker/trade/index.ts';
import { airSense, movableOpening, usualNightLowC } from '../../tracker/windows/index.ts';
import { addDays, shopDay, type Zone } from '../../views/format/index.ts';
import { chanceFrom } from './chance.ts';
import { pastPlans } from './past-plans.ts';
import { inventPiece, type InventedRecord, type Invention } from './invented-piece.ts';
import { handsOf } from './working-hours.ts';

/** An invented shop: what stands on its bench, what has left it, and readings of its air. */
export type InventedShop = {
  readonly bench: readonly BenchFact[];
  readonly past: readonly { readonly year: number; readonly facts: readonly BenchFact[] }[];
  readonly conditions: readonly ConditionsFact[];
};

/**
 * Makes up the shop as it stands at `now`: half a year of finished pieces, and a bench with a piece in every stage, on
 * which a bleach is to be followed in a minute and a half and a coat opens two minutes later.
 */
export function inventShop(
  schedules: readonly FinishingSchedule[],
  now: Instant,
  zone: Zone,
  sense: PingSense,
): InventedShop {
  const find = (id: string): FinishingSchedule => {
    const found = schedules.find((schedule) => schedule.id === id);
    if (found === undefined) throw new Error(`the demo needs the finishing schedule ${id}`);
    return found;
  };
  const invention: Invention = { sense, zone, chance: chanceFrom(20), hands: handsOf(zone) };
  let number = 100;
  const invent = (
    name: string,
    schedule: string,
    describe: PieceDescription,
    addedAt: Instant,
  ): InventedRecord => {
    number += 1;
    return inventPiece({ name, schedule: find(schedule), describe, addedAt }, number, invention);
  };

  const past = pastPlans.flatMap((plan, index) => {
    const addedAt = now - (185 - index * 11) * day;
    const piece = invent(plan.name, plan.schedule, plan.describe, addedAt);
    if (plan.note !== undefined)
      piece.act(
        { do: 'write note', piece: piece.id, step: 'strip', text: plan.note },
        addedAt + hour,
      );
    const finished = piece.workUntil(null, addedAt + hour);
    piece.act({ do: 'take off bench', piece: piece.id }, finished + hour);
    return [
      {
        year: Number(shopDay(finished + hour, zone).slice(0, 4)),
        facts: piece.facts((index % 8) + 1),
      },
    ];
  });

  const conditions = conditionsAt(now);
  const readings = conditions.map(({ at, body }) => ({ at, ...body }));
  const nightLowC = usualNightLowC(readings, sense.nextClock);
  const inAir = { ...sense, ...airSense({ readings, nightLowC }) };
  const bench = [
    wallShelf,
    beechStool,
    hallBench,
    sideTable,
    gardenChair,
    caneRocker,
    walnutTray,
    hatRack,
  ].flatMap((make, index) => make(invent, now, zone, inAir).facts(index + 1));
  return { bench, past, conditions };
}

type Invent = (
  name: string,
  schedule: string,
  describe: PieceDescription,
  addedAt: Instant,
) => InventedRecord;
type MakePiece = (invent: Invent, now: Instant, zone: Zone, sense: PingSense) => InventedRecord;

/** A is on softwood: B is wanted in a minute and a half. */
const wallShelf: MakePiece = (invent, now) => {
  const piece = invent(
    'Wall shelf',
    'bleach-and-clear',
    { kind: 'shelf', wood: 'soft', areaM2: 0.7 },
    now - 22 * day,
  );
  piece.workUntil('bleach', now - 21 * day);
  piece.act({ do: 'first stroke', piece: piece.id, part: null }, now - 3.5 * minute);
  return piece;
};

/** A clear coat that may be tried in three and a half minutes, in the air that was read. */
const beechStool: MakePiece = (invent, now, zone, sense) => {
  const piece = invent(
    'Beech stool',
    'bleach-and-clear',
    {
      kind: 'stool',
      wood: 'hard',
      areaM2: 0.9,
      yearMade: 1950,
      promised: addDays(shopDay(now, zone), 5),
    },
    now - 24 * day,
  );
  piece.workUntil('clear-2', now - 23 * day);
  const coated = coatedFor(now + 3.5 * minute, piece, 'clear-2', sense);
  piece.act({ do: 'first stroke', piece: piece.id, part: null }, coated - 22 * minute);
  piece.act({ do: 'done', piece: piece.id, part: null }, coated);
  piece.act({ do: 'put down', piece: piece.id }, coated + 4 * minute);
  return piece;
};

/** Half sanded, and waiting for hands. */
const hallBench: MakePiece = (invent, now) => {
  const piece = invent(
    'Hall bench',
    'strip-stain-varnish',
    { kind: 'bench', wood: 'hard', areaM2: 2.1, fittings: 4 },
    now - 13 * day,
  );
  piece.workUntil('sand-150', now - 12 * day);
  piece.act({ do: 'pick up', targets: [{ piece: piece.id, part: null }] }, now - 80 * minute);
  piece.act({ do: 'put down', piece: piece.id }, now - 53 * minute);
  return piece;
};

/** In clamps for another twelve minutes. */
const sideTable: MakePiece = (invent, now) => {
  const piece = invent(
    'Side table',
    'glue-up-repair',
    { kind: 'table', wood: 'hard', areaM2: 0.8, joints: 4, drawers: 1 },
    now - 5 * day,
  );
  piece.workUntil('glue-up', now - 4 * day);
  const inClamps = now - 18 * minute;
  piece.act({ do: 'first stroke', piece: piece.id, part: null }, inClamps - 4 * minute);
  piece.act({ do: 'next stamp', piece: piece.id, part: null }, inClamps);
  piece.act({ do: 'done', piece: piece.id, part: null }, inClamps + minute);
  piece.act({ do: 'put down', piece: piece.id }, inClamps + 3 * minute);
  return piece;
};

/** Two passes of three went on; the hour is over, and for two days it is to be kept off. */
const gardenChair: MakePiece = (invent, now) => {
  const piece = invent(
    'Garden chair',
    'aerosol-enamel',
    { kind: 'chair', wood: 'hard', areaM2: 0.9 },
    now - 16 * day,
  );
  piece.workUntil('enamel-1', now - 15 * day);
  const sprayed = now - 5 * hour;
  piece.act({ do: 'pick up', targets: [{ piece: piece.id, part: null }] }, sprayed - 30 * minute);
  for (const ago of [20, 16, 9, 5])
    piece.act({ do: 'next stamp', piece: piece.id, part: null }, sprayed - ago * minute);
  piece.act({ do: 'put down', piece: piece.id }, sprayed);
  return piece;
};

/** Just come in. */
const caneRocker: MakePiece = (invent, now) =>
  invent('Cane rocker', 'strip-stain-varnish', { kind: 'chair', wood: 'hard' }, now - 26 * hour);

/** Every step done but the wrapping: it cures. */
const walnutTray: MakePiece = (invent, now) => {
  const piece = invent(
    'Walnut tray',
    'strip-stain-varnish',
    { kind: 'tray', wood: 'hard', areaM2: 0.35, fittings: 2 },
    now - 34 * day,
  );
  piece.workUntil('varnish-3', now - 33 * day);
  const coated = now - 58 * hour;
  piece.act({ do: 'first stroke', piece: piece.id, part: null }, coated - 12 * minute);
  piece.act({ do: 'done', piece: piece.id, part: null }, coated);
  piece.act({ do: 'put down', piece: piece.id }, coated + 5 * minute);
  const fitted = now - 4.5 * hour;
  for (const after of [0, 12]) {
    piece.act(
      { do: 'pick up', targets: [{ piece: piece.id, part: null }] },
      fitted + after * minute,
    );
    piece.act({ do: 'done', piece: piece.id, part: null }, fitted + (after + 11) * minute);
    piece.act({ do: 'put down', piece: piece.id }, fitted + (after + 11) * minute);
  }
  return piece;
};

/** Waits for something that has no clock. */
const hatRack: MakePiece = (invent, now, zone) => {
  const piece = invent(
    'Hat rack',
    'paint-and-wax',
    { kind: 'rack', wood: 'soft', areaM2: 0.6 },
    now - 7 * day,
  );
  piece.workUntil('fill', now - 6 * day);
  const askAgain = addDays(shopDay(now, zone), 2);
  piece.act({ do: 'place hold', piece: piece.id, reason: 'hinge plates', askAgain }, now - 3 * day);
  return piece;
};

/** When the last stroke of a step must have been for its coat to be tried from then on. */
function coatedFor(
  opens: Instant,
  { state }: InventedRecord,
  stepId: string,
  sense: PingSense,
): Instant {
  const { steps, products } = state();
  const product = products[steps.find(({ id }) => id === stepId)?.product ?? ''];
  const scuff = product?.windows.find(({ milestone }) => milestone === 'scuff');
  const span = scuff && movableOpening(scuff)?.span;
  if (span === undefined) throw new Error(`the demo needs a coat to be scuffed on ${stepId}`);
  // It opens the later, the later it was put on.
  let [early, late] = [opens - 3 * day, opens];
  while (late - early > second) {
    const middle = (early + late) / 2;
    if (sense.spanEnd(span, middle) < opens) early = middle;
    else late = middle;
  }
  return Math.round(late);
}

/** The air as read twice a day over the last week. */
const conditionsAt = (now: Instant): readonly ConditionsFact[] =>
  Array.from({ length: 14 }, (_, index) => {
    const at = now - 50 * minute - (13 - index) * 12 * hour;
    const group = `demo-air-${index}`;
    return {
      id: `${group}.1`,
      group,
      at,
      told: at,
      by: 'person',
      uptimeMs: null,
      bootId: null,
      kind: 'reading-taken',
      body: { tempC: 16 + (index % 3), rh: 55 + ((index * 5) % 14) },
    };
  });
