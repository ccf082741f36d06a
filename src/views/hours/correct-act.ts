import type { Bench, Intent, Session } from '../../tracker/bench/index.ts';
import { minute, type Instant } from '../../tracker/time/index.ts';
import { messageOf } from '../parts/message-lines.ts';
import type { BenchPort } from '../port.ts';
import { refused, type Step, type View } from '../screen.ts';
import type { Correcting, HoursState } from '../screens.ts';
import { readMoment, wholeMinute } from './read-moment.ts';

type Corrected = Omit<Extract<Intent, { do: 'correct session' }>, 'do' | 'session'>;

/** The first question of a correction. */
export const pickingSession: Correcting = {
  asks: 'session',
  at: 0,
  session: null,
  piece: null,
  text: '',
};

/** What a written time would change in a session, or why it is none. */
export function readChanges(
  text: string,
  which: 'start' | 'end',
  session: Session,
  { now, snapshot }: View,
):
  | { readonly ok: true; readonly changes: Corrected }
  | { readonly ok: false; readonly says: string } {
  const { start, end } = session;
  const read = readMoment(text, { which, start, end }, now, snapshot.shop);
  if (!read.ok) return read;
  const at = wholeMinute(read.at);
  return {
    ok: true,
    changes:
      which === 'start' ? { start: afterNeighbour(snapshot.bench, session, at) } : { end: at },
  };
}

/** A beginning or an end as it was written, if it is one. */
export function takeTime(
  state: HoursState,
  correcting: Correcting,
  which: 'start' | 'end',
  session: Session,
  view: View,
  port: BenchPort,
): Step<HoursState> {
  const read = readChanges(correcting.text, which, session, view);
  return read.ok
    ? correct(state, session, read.changes, port)
    : { message: refused(`Not corrected: ${read.says}`) };
}

/** A minute is written, sessions meet within one: a beginning in the minute in which the one before ended is that end. */
const afterNeighbour = (bench: Bench, session: Session, at: Instant): Instant =>
  bench.sessions.find(
    ({ id, hand, dropped, end }) =>
      id !== session.id &&
      hand === session.hand &&
      !dropped &&
      end !== null &&
      end > at &&
      end < at + minute,
  )?.end ?? at;

/** One door for all corrections; back to the list of sessions, with what was done. */
export function correct(
  state: HoursState,
  session: Session,
  changes: Corrected,
  port: BenchPort,
): Step<HoursState> {
  const reply = port.act({ do: 'correct session', session: session.id, ...changes });
  return reply.ok
    ? { state: { ...state, correcting: pickingSession }, message: messageOf(reply) }
    : { message: messageOf(reply) };
}
