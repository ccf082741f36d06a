import type { PlannedStamp } from '../trade/schedule.ts';
import type { StampEvent } from '../windows/model.ts';
import { byStep } from './by-step.ts';
import type { Piece, PlannedStep, Stamp } from './piece.ts';

/** Whether a record made for `recorded` counts for `part`: what was done to the whole piece counts for each part. */
export const countsFor = (recorded: string | null, part: string | null): boolean =>
  recorded === null || recorded === part;

/** Whether a step is finished for one part, or (part null) for the whole piece. */
export function isDone(piece: Piece, stepId: string, part: string | null): boolean {
  const finishes = byStep(piece.finishes).get(stepId);
  if (finishes === undefined) return false;
  if (finishes.some((finish) => countsFor(finish.part, part))) return true;
  if (part !== null || piece.parts.length === 0) return false;
  return piece.parts.every((each) => finishes.some((finish) => finish.part === each.id));
}

/** The first step that is neither skipped nor done; null when there is none left. */
export const currentStep = (piece: Piece, part: string | null): PlannedStep | null =>
  piece.steps.find((step) => !step.skipped && !isDone(piece, step.id, part)) ?? null;

/** Place of a step among those that are not skipped, for "step 4 of 9". */
export function stepPlace(
  piece: Piece,
  stepId: string,
): { readonly place: number; readonly of: number } {
  const planned = piece.steps.filter((step) => !step.skipped);
  return { place: planned.findIndex((step) => step.id === stepId) + 1, of: planned.length };
}

/** Everything stamped on one step that counts for a part. The whole piece (null) has what each of its parts has. */
export function stampsOf(piece: Piece, stepId: string, part: string | null): readonly Stamp[] {
  const made = everyStampOf(piece, stepId);
  const own = made.filter((stamp) => countsFor(stamp.part, part));
  if (part !== null || own.length === made.length) return own;
  return made.filter((stamp) =>
    piece.parts.every(({ id }) =>
      made.some((other) => countsFor(other.part, id) && isSameEvent(other, stamp)),
    ),
  );
}

/** Everything stamped on one step, of the whole piece and of each of its parts. */
export const everyStampOf = (piece: Piece, stepId: string): readonly Stamp[] =>
  byStep(piece.stamps).get(stepId) ?? [];

const isSameEvent = (a: Stamp, b: Stamp): boolean =>
  a.event === b.event && a.agent === b.agent && a.pass === b.pass && a.section === b.section;

/** What the sequence of a step expects next. */
export type NextStamp =
  | {
      readonly kind: 'stamp';
      readonly event: StampEvent;
      readonly agent: string | null;
      readonly pass: number;
      readonly section: number | null;
      readonly says: string;
    }
  | { readonly kind: 'done'; readonly pass: number; readonly says: string };

/** The pass now under way; 1 before anything was stamped. */
export const passUnderWay = (stamps: readonly Stamp[]): number =>
  stamps.reduce((latest, stamp) => Math.max(latest, stamp.pass), 1);

/** The next stamp of a step: through its planned stamps, section by section, pass by pass, and then "done". */
export function nextStamp(step: PlannedStep, made: readonly Stamp[]): NextStamp {
  const pass = passUnderWay(made);
  const inPass = made.filter((stamp) => stamp.pass === pass);
  const isMade = ({ event, agent }: PlannedStamp): boolean =>
    inPass.some((stamp) => stamp.event === event && (agent === undefined || agent === stamp.agent));
  // What goes on in sections goes on with the next one until "done" is pressed.
  const planned = step.stamps.find((each) => each.perSection === true || !isMade(each));
  if (planned?.perSection === true) {
    const sectional = step.stamps.filter((each) => each.perSection === true);
    return { kind: 'stamp', pass, ...nextOfSection(sectional, inPass) };
  }
  if (planned !== undefined) return inOneGo(step, planned, pass);
  const [first] = step.stamps;
  if (pass < (step.passes ?? 1)) {
    const lastStroke: PlannedStamp = { event: 'last-stroke', says: 'last stroke' };
    if (!isMade(lastStroke)) return inOneGo(step, lastStroke, pass);
    if (first !== undefined) return inOneGo(step, first, pass + 1);
  }
  return { kind: 'done', pass, says: `${step.name} done` };
}

/** A stamp of a pass that is not worked in sections. */
const inOneGo = (
  step: PlannedStep,
  { event, agent, says }: PlannedStamp,
  pass: number,
): NextStamp => ({
  kind: 'stamp',
  event,
  agent: agent ?? null,
  pass,
  section: null,
  says: passName(step, pass, says),
});

/** A stamp as the key that makes it calls it: `coat 2 of 4, first stroke on`, `section 3 wiped`, `A, first stroke on`. */
export function stampSays(
  step: PlannedStep,
  { event, agent, pass, section }: Pick<Stamp, 'event' | 'agent' | 'pass' | 'section'>,
): string {
  const planned = step.stamps.find(
    (each) => each.event === event && (each.agent ?? null) === agent,
  );
  const bare = section === null ? event : event.replace(/^section-/, '');
  const says = planned?.says ?? `${agent === null ? '' : `${agent} `}${bare.replace('-', ' ')}`;
  return section === null ? passName(step, pass, says) : `section ${section} ${says}`;
}

/** What a step is worked in: coats that are laid on, passes that are sprayed, rounds until it is right. */
type InPasses = Pick<PlannedStep, 'stepClass' | 'passes' | 'untilRight'>;

const laidOn: ReadonlySet<PlannedStep['stepClass']> = new Set(['coat, brushed', 'coat, wiped']);

/** `coat 2 of 4`, `pass 2 of 3`; of a step that is repeated until it is right `round 2`. */
export function passCalled({ stepClass, passes = 1, untilRight }: InPasses, pass: number): string {
  if (untilRight === true && pass > passes) return `round ${pass}`;
  const word = laidOn.has(stepClass) ? 'coat' : 'pass';
  return passes > 1 ? `${word} ${pass} of ${Math.max(pass, passes)}` : `${word} ${pass}`;
}

const passName = (step: PlannedStep, pass: number, says: string): string =>
  (step.passes ?? 1) > 1 || (step.untilRight === true && pass > 1)
    ? `${passCalled(step, pass)}, ${says}`
    : says;

/** Section 1 on, section 1 off, section 2 on ... : the first planned stamp that the last section still lacks, or the next section. */
function nextOfSection(
  sectional: PlannedStep['stamps'],
  inPass: readonly Stamp[],
): { event: StampEvent; agent: string | null; section: number; says: string } {
  const section = inPass.reduce((latest, stamp) => Math.max(latest, stamp.section ?? 0), 0);
  const missing = sectional.find(
    (planned) =>
      !inPass.some((stamp) => stamp.section === section && stamp.event === planned.event),
  );
  const planned = section === 0 || missing === undefined ? sectional[0] : missing;
  if (planned === undefined) throw new Error('a step with sections has a stamp for them');
  const number = section === 0 || missing === undefined ? section + 1 : section;
  return {
    event: planned.event,
    agent: planned.agent ?? null,
    section: number,
    says: `section ${number} ${planned.says}`,
  };
}

/** How many stamps of a step's sequence are still to come before "done"; sections count as one on and one off. */
export function expectedAhead(step: PlannedStep, made: readonly Stamp[]): number {
  const passes = step.passes ?? 1;
  const perPass = step.stamps.length + (passes > 1 ? 1 : 0);
  const all = passes * perPass - (passes > 1 ? 1 : 0);
  return Math.max(0, all - made.length);
}
