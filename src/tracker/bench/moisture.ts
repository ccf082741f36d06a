import type { Instant } from '../time/index.ts';
import { equilibriumMoisture } from '../trade/emc.ts';
import type { StepClass } from '../trade/schedule.ts';
import { dryBy, type DryBy } from '../trade/wood-drying.ts';
import type { Air, MoistureReading, Piece, PlannedStep } from './piece.ts';

/** What a reading is held against. A spot of the same piece knows its wood, its meter and its shop; the air only the rule. */
export type MoistureReference =
  | { readonly by: 'untouched'; readonly percent: number; readonly reading: MoistureReading }
  | { readonly by: 'air'; readonly percent: number; readonly air: Air };

/** Whether two readings fall, and when they are down to the target at that rate. */
export type MoistureTrend =
  | ({ readonly is: 'falling'; readonly since: MoistureReading } & DryBy)
  | { readonly is: 'not falling'; readonly since: MoistureReading };

/** What the meter says of one part, or (part null) of the whole piece. */
export type MoistureFinding = {
  readonly part: string | null;
  readonly wood: MoistureReading;
  readonly reference: MoistureReference | null;
  /** Percentage points above the reference. */
  readonly over: number | null;
  /** Null where there is nothing to hold it against, or where the wood was wetted since. */
  readonly isDryEnough: boolean | null;
  /** A bleach or rinse before the reading: what is left of it conducts, and the meter shows too much. */
  readonly saltsFrom: PlannedStep | null;
  /** The step that wetted the wood after the reading. */
  readonly wettedBy: PlannedStep | null;
  readonly trend: MoistureTrend | null;
};

/** Wood counts as dry enough within one percentage point of what is at rest (common practice, no source). */
export const dryWithin = 1;

const leavesSalts: ReadonlySet<StepClass> = new Set(['bleach', 'rinse, neutralise']);
const wets: ReadonlySet<StepClass> = new Set(['clean', 'strip', 'bleach', 'rinse, neutralise']);

/**
 * What the meter readings of a piece come to, one finding for each part that was read, and for the whole.
 * @param air the shop's air as last read, for want of an untouched spot and of a reading of the air when the meter was
 *   read
 */
export function moistureFindings(piece: Piece, air: Air | null): readonly MoistureFinding[] {
  const parts = new Set(
    piece.moisture.filter(({ spot }) => spot === 'wood').map(({ part }) => part),
  );
  return [...parts].flatMap((part) => findingOf(piece, part, air) ?? []);
}

function findingOf(piece: Piece, part: string | null, air: Air | null): MoistureFinding | null {
  const read = byTime(piece.moisture);
  const ofWood = read.filter((each) => each.spot === 'wood' && each.part === part);
  const wood = ofWood.at(-1);
  if (wood === undefined) return null;
  const untouched = read.filter(({ spot }) => spot === 'untouched');
  const reference = referenceFor(
    untouched.findLast((each) => each.part === part) ?? untouched.at(-1) ?? null,
    wood.air ?? air,
  );
  const wettings = happenedOn(piece, part, wets);
  const wettedBy = wettings.findLast(({ at }) => at > wood.at)?.step ?? null;
  const dryingSince = wettings.findLast(({ at }) => at <= wood.at)?.at ?? 0;
  const before = ofWood.findLast(({ at }) => at < wood.at && at >= dryingSince) ?? null;
  const over = reference === null ? null : wood.percent - reference.percent;
  const isDryEnough = over === null || wettedBy !== null ? null : over <= dryWithin + rounding;
  return {
    part,
    wood,
    reference,
    over,
    isDryEnough,
    saltsFrom:
      happenedOn(piece, part, leavesSalts).findLast(({ at }) => at <= wood.at)?.step ?? null,
    wettedBy,
    trend:
      reference === null || before === null || isDryEnough !== false
        ? null
        : trendOf(before, wood, reference.percent),
  };
}

/** Tenths of a percent don't add up exactly. */
const rounding = 1e-9;

const byTime = (readings: readonly MoistureReading[]): readonly MoistureReading[] =>
  readings.toSorted((a, b) => a.at - b.at);

function referenceFor(
  untouched: MoistureReading | null,
  air: Air | null,
): MoistureReference | null {
  if (untouched !== null)
    return { by: 'untouched', percent: untouched.percent, reading: untouched };
  return air === null ? null : { by: 'air', percent: equilibriumMoisture(air), air };
}

function trendOf(before: MoistureReading, wood: MoistureReading, rest: number): MoistureTrend {
  const by = dryBy(before, wood, rest, rest + dryWithin);
  return by === null
    ? { is: 'not falling', since: before }
    : { is: 'falling', since: before, ...by };
}

/** When steps of such classes were last worked on, in the order of time. */
function happenedOn(
  piece: Piece,
  part: string | null,
  classes: ReadonlySet<StepClass>,
): readonly { readonly step: PlannedStep; readonly at: Instant }[] {
  const steps = new Map(
    piece.steps.filter(({ stepClass }) => classes.has(stepClass)).map((step) => [step.id, step]),
  );
  return [...piece.stamps, ...piece.finishes]
    .filter((each) => part === null || each.part === null || each.part === part)
    .flatMap(({ step: id, at }) => {
      const step = steps.get(id);
      return step === undefined ? [] : [{ step, at }];
    })
    .toSorted((a, b) => a.at - b.at);
}
