import { windowsOf } from '../bench/piece-windows.ts';
import type { Piece, PlannedStep } from '../bench/piece.ts';
import { layersAfter, putOn, type SurfaceWork, type Top } from '../trade/layers.ts';
import { bareWood, isInGroup, notInTable, over, type OverRow } from '../trade/over.ts';
import { stateAt } from '../windows/evaluate.ts';
import type { Caution } from './caution.ts';
import type { Moment } from './chemicals.ts';
import { capital } from './capital.ts';
import { surfaceWork, worksOf, type Work } from './works.ts';

type Laid = SurfaceWork & { readonly done: Work | null };

/**
 * What lies on a piece when a step's turn comes: what was done, by its time, and for a step that is not under way also
 * what is planned between that and it. What was passed over is not waited for.
 */
export function layersUnder(piece: Piece, step: PlannedStep, moment: Moment): readonly Top<Laid>[] {
  const works = worksOf(moment.bench, piece);
  const own = works.find((work) => work.step.id === step.id);
  const before = works
    .filter((work) => work !== own && (own === undefined || work.from <= own.from))
    .map((work): Laid => ({ ...surfaceWork(piece, work.step), done: work }));
  const placeOf = (id: string): number => piece.steps.findIndex((each) => each.id === id);
  const reached = Math.max(-1, ...works.map((work) => placeOf(work.step.id)));
  const planned =
    own === undefined
      ? piece.steps
          .slice(reached + 1, Math.max(reached + 1, placeOf(step.id)))
          .filter(({ skipped }) => !skipped)
          .map((each): Laid => ({ ...surfaceWork(piece, each), done: null }))
      : [];
  return layersAfter([...before, ...planned], moment.rules.over);
}

/** What the table says of this step's product over what lies there now; nothing where it goes. */
export function overCautions(piece: Piece, step: PlannedStep, moment: Moment): readonly Caution[] {
  const { over: table } = moment.rules;
  if (table.rows.length === 0) return [];
  const above = putOn(surfaceWork(piece, step), table);
  const top = layersUnder(piece, step, moment).at(-1);
  if (above === null || top === undefined) return [];
  const { row } = over(table, top.productClass, above);
  const id = `over: ${above} over ${top.productClass}`;
  // A sentence among others, behind a full stop.
  const pair = `${capital(above)} over ${top.productClass}`;
  const same = { id, deadly: false };
  if (row === null)
    return [{ ...same, says: `${pair}: ${notInTable}.`, ofTheMoment: false, source: null }];
  if (isMet(row, top, piece, moment)) return [];
  const head = row.verdict === 'no' ? 'no' : 'not yet';
  const says =
    row.first === 'judgement'
      ? `${pair}: ${row.why}. Look first: ${row.instead ?? ''}.`
      : `${pair}: ${head}, ${row.why}. ${row.verdict === 'no' ? 'Instead' : 'First'}: ${row.instead ?? ''}.`;
  return [{ ...same, says, ofTheMoment: row.first !== 'judgement', source: row.source }];
}

function isMet(row: OverRow, top: Top<Laid>, piece: Piece, moment: Moment): boolean {
  if (row.verdict === 'yes') return true;
  if (row.verdict === 'no') return false;
  const work = top.work?.done ?? null;
  // What is only planned to lie there is waited for by its windows when the time comes.
  const waits = work !== null && row.wait !== undefined && moment.now - work.at < row.wait;
  if (row.first === 'dry') return !waits && (work === null || !isDrying(piece, work, moment));
  return row.first === 'scuffed' && top.scuffed && !waits;
}

const isDrying = (piece: Piece, { step }: Work, { bench, now, sense }: Moment): boolean =>
  windowsOf(bench, piece, sense).some(
    (window) =>
      window.subject.stepId === step.id &&
      (window.rule.milestone === 'recoat' || window.rule.milestone === 'dry') &&
      stateAt({ ...window, closedAt: null }, now) === 'before',
  );

/** Whether only what was put on here can be reached: the piece was bare, and a coat of ours lies on it. */
export function isOursOnBare(piece: Piece, step: PlannedStep, moment: Moment): boolean {
  const layers = layersUnder(piece, step, moment);
  const top = layers.at(-1);
  return (
    layers[0]?.productClass === bareWood &&
    ['films', 'oils', 'waxes', 'fillers'].some(
      (group) => top !== undefined && isInGroup(moment.rules.over, group, top.productClass),
    )
  );
}
