import type { Intent } from '../bench/intents.ts';
import type { Bench, Estimator, Session } from '../bench/bench.ts';
import type { Piece, PlannedStep } from '../bench/piece.ts';
import { expectedMinutes } from '../estimate/expected.ts';
import type { StepClass } from '../trade/schedule.ts';

/** What can be asked of minutes that were recorded: it changes what they teach. */
export type MinutesIntent = Extract<Intent, { do: 'correct session' | 'leave out of learning' }>;

/** How many times the finishing schedule's minutes a class of work is expected to take, now and after the change. */
export type ClassChange = {
  readonly stepClass: StepClass;
  readonly before: number;
  readonly after: number;
};

/**
 * What a change would make of expected minutes, before it is made: the classes of work that it touches, those that move
 * furthest first. Null where nothing was learned, or nobody can tell.
 */
export function whatIf(bench: Bench, intent: MinutesIntent): readonly ClassChange[] | null {
  const { estimator } = bench;
  const changed = estimator?.afterwards?.(changedBench(bench, intent));
  if (estimator === undefined || changed === undefined) return null;
  const firsts = new Map<StepClass, { readonly step: PlannedStep; readonly piece: Piece }>();
  for (const touched of stepsTouched(bench, intent)) {
    if (!firsts.has(touched.step.stepClass)) firsts.set(touched.step.stepClass, touched);
  }
  return [...firsts]
    .flatMap(([stepClass, { step, piece }]): ClassChange[] => {
      const scheduled = expectedMinutes(step, piece).minutes;
      if (!(scheduled > 0)) return [];
      const times = (by: Estimator): number => by.expects(step, piece).minutes / scheduled;
      return [{ stepClass, before: times(estimator), after: times(changed) }];
    })
    .sort((a, b) => far(b) - far(a));
}

const far = ({ before, after }: ClassChange): number => Math.abs(Math.log(after / before));

/** The bench as the change would leave it, as far as minutes go. Whether it may be made is decided elsewhere. */
function changedBench(bench: Bench, intent: MinutesIntent): Bench {
  if (intent.do === 'leave out of learning' && intent.session === null) {
    const piece = bench.pieces.get(intent.piece);
    if (piece === undefined) return bench;
    const pieces = new Map(bench.pieces).set(piece.id, marked(piece, intent.leave));
    return { ...bench, pieces };
  }
  const how = (session: Session): Session =>
    intent.do === 'leave out of learning'
      ? marked(session, intent.leave)
      : {
          ...session,
          start: intent.start ?? session.start,
          end: intent.end ?? session.end,
          targets: intent.targets ?? session.targets,
          dropped: intent.dropped ?? session.dropped,
        };
  return {
    ...bench,
    sessions: bench.sessions.map((each) => (each.id === intent.session ? how(each) : each)),
  };
}

function marked<Thing extends { readonly keptFromLearning?: true }>(
  thing: Thing,
  isKept: boolean,
): Thing {
  const { keptFromLearning: _, ...rest } = thing;
  return (isKept ? { ...rest, keptFromLearning: true } : rest) as Thing;
}

/** The steps whose minutes it is about: of the whole piece those that are finished, of a session those it was and will be for. */
function stepsTouched(
  bench: Bench,
  intent: MinutesIntent,
): readonly { readonly step: PlannedStep; readonly piece: Piece }[] {
  if (intent.do === 'leave out of learning' && intent.session === null) {
    const piece = bench.pieces.get(intent.piece);
    return piece === undefined
      ? []
      : piece.steps
          .filter(({ id }) => piece.finishes.some(({ step }) => step === id))
          .map((step) => ({ step, piece }));
  }
  const session = bench.sessions.find(({ id }) => id === intent.session);
  const targets = [
    ...(session?.targets ?? []),
    ...(intent.do === 'correct session' ? (intent.targets ?? []) : []),
  ];
  return targets.flatMap((target) => {
    const piece = bench.pieces.get(target.piece);
    const step = piece?.steps.find(({ id }) => id === target.step);
    return piece === undefined || step === undefined ? [] : [{ step, piece }];
  });
}
