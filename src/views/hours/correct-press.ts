import type { Session } from '../../tracker/bench/index.ts';
import { leftRunning } from '../../tracker/estimate/index.ts';
import type { Press } from '../keys/press.ts';
import { messageOf } from '../parts/message-lines.ts';
import { editField } from '../parts/text-field.ts';
import { fieldIn, withCursor } from '../parts/writing.ts';
import type { FoundPiece } from '../past-pieces/find-piece.ts';
import type { BenchPort } from '../port.ts';
import { refused, type Step, type View } from '../screen.ts';
import type { Correcting, HoursState } from '../screens.ts';
import { correct, pickingSession, takeTime } from './correct-act.ts';
import { choicesOf, stepAt, type Changes } from './correct-lists.ts';
import { movedTargets } from './moved-targets.ts';
import { takeBackOrForth } from './take-back.ts';

/** What a key does while a session is being corrected. */
export function pressCorrecting(
  state: HoursState,
  correcting: Correcting,
  press: Press,
  found: FoundPiece,
  view: View,
  port: BenchPort,
): Step<HoursState> {
  const to = (next: Correcting | null): Step<HoursState> => ({
    state: { ...state, correcting: next },
  });
  if (press.name === 'escape') return to(before(correcting));
  const session = found.bench.sessions.find(({ id }) => id === correcting.session);
  if (correcting.asks === 'start' || correcting.asks === 'end') {
    if (session === undefined) return to(pickingSession);
    if (press.name === 'enter')
      return takeTime(state, correcting, correcting.asks, session, view, port);
    const edited = editField(fieldIn(correcting.text, correcting), press);
    return edited === null ? {} : to(withCursor({ ...correcting, text: edited.text }, edited));
  }
  const back = takeBackOrForth(press, port);
  if (back !== null) return back;
  const { bench, piece } = found;
  const choices = choicesOf(correcting, bench, piece, view.now, view.snapshot.shop);
  const last = choices.length - 1;
  if (press.name === 'up') return to({ ...correcting, at: Math.max(0, correcting.at - 1) });
  if (press.name === 'down') return to({ ...correcting, at: Math.min(last, correcting.at + 1) });
  const isDigit = /^[1-9]$/.test(press.name);
  if (!isDigit && press.name !== 'enter') return {};
  const choice = choices[isDigit ? Number(press.name) - 1 : correcting.at];
  return choice === undefined
    ? { message: refused('Not picked: no line of the list has that number.') }
    : picked(state, correcting, choice.value, session, found, view, port);
}

/** Where Esc leads: one question back. */
function before(correcting: Correcting): Correcting | null {
  switch (correcting.asks) {
    case 'session':
      return null;
    case 'change':
      return pickingSession;
    case 'start':
    case 'end':
    case 'piece':
      return { ...correcting, asks: 'change', at: 0 };
    case 'step':
      return { ...correcting, asks: 'piece', at: 0 };
  }
}

function picked(
  state: HoursState,
  correcting: Correcting,
  value: string,
  session: Session | undefined,
  found: FoundPiece,
  view: View,
  port: BenchPort,
): Step<HoursState> {
  const ask = (next: Partial<Correcting>): Step<HoursState> => ({
    state: { ...state, correcting: { ...correcting, at: 0, text: '', ...next } },
  });
  if (correcting.asks === 'session') return ask({ asks: 'change', session: value });
  if (session === undefined) return ask(pickingSession);
  switch (correcting.asks) {
    case 'piece': {
      const other = found.bench.pieces.get(value);
      const at = other?.steps.findIndex(({ id }) => id === stepAt(other, session.start)) ?? 0;
      return ask({ asks: 'step', piece: value, at: at < 0 ? (other?.steps.length ?? 0) : at });
    }
    case 'step': {
      const targets = movedTargets(session, {
        from: found.piece.id,
        to: correcting.piece ?? found.piece.id,
        step: value === '' ? null : value,
      });
      return correct(state, session, { targets }, port);
    }
    case 'change':
    case 'start':
    case 'end':
      return change(state, correcting, value as Changes, session, found, view, port);
  }
}

function change(
  state: HoursState,
  correcting: Correcting,
  asked: Changes,
  session: Session,
  { bench, piece }: FoundPiece,
  view: View,
  port: BenchPort,
): Step<HoursState> {
  const ask = (asks: Correcting['asks']): Step<HoursState> => ({
    state: {
      ...state,
      correcting: withCursor({ ...correcting, asks, at: 0, text: '' }, { text: '' }),
    },
  });
  switch (asked) {
    case 'end':
    case 'start':
      return ask(asked);
    case 'work':
      return ask('piece');
    case 'drop':
      return correct(state, session, { dropped: true }, port);
    case 'keep':
      return correct(state, session, { dropped: false }, port);
    case 'leave':
    case 'teach': {
      const leave = asked === 'leave';
      const reply = port.act({
        do: 'leave out of learning',
        piece: piece.id,
        session: session.id,
        leave,
      });
      return reply.ok
        ? { state: { ...state, correcting: pickingSession }, message: messageOf(reply) }
        : { message: messageOf(reply) };
    }
    case 'trim': {
      const trimTo = leftRunning(bench, piece, session, view.now)?.trimTo ?? null;
      return trimTo === null ? {} : correct(state, session, { end: trimTo }, port);
    }
  }
}
