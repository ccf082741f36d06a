import { day, minute, type Milliseconds } from '../../time/index.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import { anywhere, called, factAt, isOutcome } from './context.ts';

type Asked<Do extends Intent['do']> = Extract<Intent, { do: Do }>;

const longest: Milliseconds = 366 * day;

/** An odd timer of up to a year, with what it is for. */
export function startTimer(
  bench: Bench,
  intent: Asked<'start timer'>,
  context: IntentContext,
): Outcome {
  const label = intent.label.trim();
  if (label === '') return refuse('Not started: say what it is for: "clamps, 35 min".');
  if (!(intent.ms > 0 && intent.ms <= longest))
    return refuse('Not started: a timer needs a length of time: "clamps, 35 min".');
  const piece = intent.piece === null ? null : anywhere(bench, intent.piece, 'Not started');
  if (piece !== null && isOutcome(piece)) return piece;
  const onWhat = piece === null ? '' : ` on ${called(piece)}`;
  return accept(
    [
      factAt(context, {
        kind: 'timer-started',
        body: { timer: context.group, piece: intent.piece, label, ms: intent.ms },
      }),
    ],
    `${label}, ${Math.round(intent.ms / minute)} min${onWhat}`,
    intent.piece,
  );
}

/** Closes an odd timer, whether it has run out or not; refused where it is closed, or wasn't started by then. */
export function closeTimer(
  bench: Bench,
  intent: Asked<'close timer'>,
  context: IntentContext,
): Outcome {
  const timer = bench.timers.find((each) => each.id === intent.timer);
  if (timer === undefined) return refuse(`Not closed: there is no timer "${intent.timer}".`);
  if (timer.closedAt !== null) return refuse(`Not closed: ${timer.label} is closed already.`);
  if (context.at !== undefined && context.at < timer.start)
    return refuse(`Not closed: ${timer.label} was started after that. Give a later time.`);
  return accept(
    [factAt(context, { kind: 'timer-closed', body: { timer: timer.id } })],
    `${timer.label} closed`,
    timer.piece,
  );
}
