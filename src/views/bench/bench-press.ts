import {
  inHand,
  lanesOf,
  sessionHolding,
  type Intent,
  type Piece,
  type Standing,
} from '../../tracker/bench/index.ts';
import { pressEmptyBench } from '../first-run/offers.ts';
import { isLookedAfter, isSomethingRunning } from '../leave/leave-page.ts';
import { twoDigits, judge, listClosed } from '../keys/guard.ts';
import { actOf, keyMapWith, keyOf, type Act } from '../keys/key-map.ts';
import type { Press } from '../keys/press.ts';
import type { BenchPort } from '../port.ts';
import { refused, said, type Step, type View } from '../screen.ts';
import { actOnPot } from './pot-press.ts';
import { told } from './told.ts';
import { benchRows, isFar, type BenchRows } from './bench-rows.ts';
import { claimsOf, silencedNow, silencedPressAgain } from '../silence.ts';
import { askWhyLate } from './ask-why-late.ts';
import { askWhich } from '../which-to-put-down/ask-which.ts';
import type { BenchState } from './bench-state.ts';
import { listedAct, moreActs } from './pad-list.ts';
import { workOnStep } from './work-on-step.ts';

type BenchStep = Step<BenchState>;

/** What one key does on the bench: first the guards, then a loud ping, then the key map. */
export function pressBench(
  state: BenchState,
  press: Press,
  view: View,
  port: BenchPort,
): BenchStep {
  const keys = keyMapWith(view.snapshot.settings.keys);
  const guardBefore =
    state.returnedAt === null ? state.guard : listClosed(state.guard, state.returnedAt);
  const doneKey = keys.find(({ act }) => act === 'done')?.keys.includes(press.name) === true;
  const verdict = judge(guardBefore, doneKey ? 'd' : press.name, view.now);
  const settled: BenchState = { ...state, guard: verdict.guard, returnedAt: null };
  if (verdict.revert) return { state: { ...settled, selected: state.before } };
  if (!verdict.take) return { state: settled };
  // A digit chooses a piece from across the shop, and the large letters stay.
  const wasFar = isFar(state, view);
  const staysFar = wasFar && /^[1-9]$/.test(press.name);
  const { notices } = view.snapshot;
  // The large letters leave no room for a notice: the key that brings the bench back brings it up.
  const noticesSeen = Math.min(notices.length, settled.noticesSeen + (wasFar ? 0 : 1));
  const awake: BenchState = staysFar ? settled : { ...settled, touchedAt: view.now, noticesSeen };
  const loud = silencedNow(view);
  const worst = loud[0];
  if (worst !== undefined) {
    port.acknowledge(claimsOf(loud));
    return {
      state: { ...awake, selected: worst.piece ?? awake.selected, part: null },
      message: said(silencedPressAgain),
    };
  }
  const rows = benchRows(awake, view);
  if (awake.list !== 'closed') return pressInList(awake, press, rows, view, port);
  const offered = rows.all.length === 0 ? pressEmptyBench(awake, press, view, port) : null;
  if (offered !== null) return offered;
  if (/^[1-9]$/.test(press.name)) return selectNumber(awake, Number(press.name), rows);
  const act = actOf(keys, press.name);
  return act === null ? { state: awake } : perform(act, awake, rows, view, port);
}

function pressInList(
  state: BenchState,
  press: Press,
  rows: BenchRows,
  view: View,
  port: BenchPort,
): BenchStep {
  const keys = keyMapWith(view.snapshot.settings.keys);
  const closed: BenchState = { ...state, list: 'closed', guard: listClosed(state.guard, view.now) };
  if (!/^[0-9]$/.test(press.name)) return { state: closed };
  const number = Number(press.name);
  if (state.list === 'first' && number === 9) return { state: { ...state, list: 'more' } };
  const act = state.list === 'first' ? listedAct(keys, number) : moreActs[number - 1];
  return act === null || act === undefined
    ? { state: closed }
    : perform(act, closed, rows, view, port);
}

/** Selects by number; the same digit again goes to the next part. */
function selectNumber(state: BenchState, number: number, rows: BenchRows): BenchStep {
  const chosen = rows.all.find(({ piece }) => piece?.number === number);
  if (chosen === undefined)
    return { state, message: refused(`Not selected: no piece has number ${number}.`) };
  if (chosen.key === rows.selected?.key && state.selected !== null) {
    return { state: { ...state, part: nextPart(chosen.piece, state.part) } };
  }
  return { state: { ...state, before: state.selected, selected: chosen.key, part: null } };
}

const nextPart = (piece: Piece | null, part: string | null): string | null => {
  if (piece === null || piece.parts.length === 0) return null;
  const ids = [null, ...lanesOf(piece)];
  return ids[(ids.indexOf(part) + 1) % ids.length] ?? null;
};

/** What an act does: an intent, another screen, or a move of the selection. */
export function perform(
  act: Act,
  state: BenchState,
  rows: BenchRows,
  view: View,
  port: BenchPort,
): BenchStep {
  const { selected } = rows;
  switch (act) {
    case 'all keys':
      return { state, open: { is: 'keys' } };
    case 'list':
      return { state: { ...state, list: 'first' } };
    case 'add':
      return { state, open: { is: 'add piece', name: '', schedules: null } };
    case 'conditions':
      return { state, open: { is: 'conditions', text: '' } };
    case 'odd timer':
      return { state, open: { is: 'odd timer', text: '', piece: selected?.piece?.id ?? null } };
    case 'pots':
      return { state, open: { is: 'pots', products: null } };
    case 'settings':
      return { state, open: { is: 'settings', at: 0 } };
    case 'past pieces':
      return { state, open: { is: 'past pieces', find: '', at: 0, past: null } };
    case 'pings':
      return { state, open: { is: 'pings', from: 0 } };
    case 'overnight':
      return { state, open: { is: 'shut up shop', answers: {}, at: 0 } };
    case 'minutes':
      return {
        state,
        open: { is: 'hours', piece: selected?.piece?.id ?? null, at: 0, past: null },
      };
    case 'leave': {
      const { bench, sense } = view.snapshot;
      return isSomethingRunning(bench, view.now, sense) && !isLookedAfter(view)
        ? { state, open: { is: 'leave', openedAt: view.now } }
        : { state, leave: true };
    }
    case 'take back':
      return told(
        state,
        port.act({ do: 'take back' }),
        keyOf(keyMapWith(view.snapshot.settings.keys), 'bring back'),
      );
    case 'bring back':
      return told(state, port.act({ do: 'bring back' }));
    case 'back to':
      return backTo(state, view, port);
    case 'up':
    case 'down':
      return { state: move(state, rows, act === 'up' ? -1 : 1) };
    default:
      return onSelected(act, state, selected, view, port);
  }
}

type OnPiece = Exclude<
  Act,
  | 'all keys'
  | 'list'
  | 'add'
  | 'conditions'
  | 'odd timer'
  | 'pots'
  | 'settings'
  | 'past pieces'
  | 'pings'
  | 'overnight'
  | 'minutes'
  | 'leave'
  | 'take back'
  | 'bring back'
  | 'back to'
  | 'up'
  | 'down'
>;

/** Acts on the selected piece; on an odd timer only its closing. */
function onSelected(
  act: OnPiece,
  state: BenchState,
  selected: Standing | null,
  view: View,
  port: BenchPort,
): BenchStep {
  if (selected === null) return { state };
  const { piece, timer, pot, key } = selected;
  if (pot !== null) {
    const reply = actOnPot(act, pot, port);
    return reply === null ? { state } : told({ ...state, selected: key }, reply);
  }
  if (piece === null) {
    const closes = timer !== null && (act === 'done' || act === 'next stamp');
    return closes ? told(state, port.act({ do: 'close timer', timer: timer.id })) : { state };
  }
  const part = piece.parts.some(({ id }) => id === state.part) ? state.part : null;
  // Selection stays with the piece when its row moves.
  const kept: BenchState = { ...state, selected: key, part };
  const act1 = (intent: Intent): BenchStep => asked(kept, intent, view, port);
  const begin = (intent: Intent): BenchStep =>
    workOnStep({ kept, piece, part, view, port, act: () => act1(intent) });
  switch (act) {
    case 'next part':
      return { state: { ...kept, part: nextPart(piece, part) } };
    case 'open piece':
      return { state: kept, open: { is: 'piece', piece: piece.id, at: null } };
    case 'job card':
      return { state: kept, open: { is: 'job card', piece: piece.id, from: 0, past: null } };
    case 'hold':
      return piece.hold === null
        ? { state: kept, open: { is: 'hold', piece: piece.id, reason: '', day: null } }
        : act1({ do: 'lift hold', piece: piece.id });
    case 'note':
      return { state: kept, open: { is: 'note', piece: piece.id, step: null, text: '' } };
    case 'trouble':
      return { state: kept, open: { is: 'trouble', piece: piece.id, part } };
    case 'other stamp':
      return { state: kept, open: { is: 'other stamp', piece: piece.id, part } };
    case 'off the bench':
      return { state: kept, open: { is: 'confirm', asks: 'take off bench', piece: piece.id } };
    case 'remove':
      return { state: kept, open: { is: 'confirm', asks: 'remove piece', piece: piece.id } };
    case 'pick up':
      return sessionHolding(view.snapshot.bench, piece.id) === null
        ? begin({ do: 'pick up', targets: [{ piece: piece.id, part }] })
        : act1({ do: 'put down', piece: piece.id });
    case 'take along':
      return act1({ do: 'take along', piece: piece.id, part });
    case 'next stamp':
      return begin({ do: 'next stamp', piece: piece.id, part });
    case 'first stroke':
      return begin({ do: 'first stroke', piece: piece.id, part });
    case 'next section':
      return begin({ do: 'next section', piece: piece.id, part });
    case 'done':
      return begin({ do: 'done', piece: piece.id, part });
    case 'ready':
    case 'not yet':
      return act1({ do: 'check', piece: piece.id, part, finding: act });
    case 'earlier':
    case 'later':
      return act1({ do: 'move stamp', piece: piece.id, earlier: act === 'earlier' });
  }
}

/** Picks up again what was in hand before: the last session's piece that is not in hand now. */
function backTo(state: BenchState, view: View, port: BenchPort): BenchStep {
  const { bench } = view.snapshot;
  const held = new Set(
    inHand(bench).flatMap((session) => session.targets.map(({ piece }) => piece)),
  );
  const last = bench.sessions
    .filter((session) => session.end !== null && !session.dropped)
    .toSorted((a, b) => (b.end ?? 0) - (a.end ?? 0))
    .flatMap((session) => session.targets.slice(0, 1))
    .find(({ piece }) => !held.has(piece) && bench.pieces.get(piece)?.place === 'bench');
  if (last === undefined)
    return { state, message: refused('Not picked up: nothing was in hand before.') };
  const next: BenchState = { ...state, selected: last.piece, part: last.part };
  const targets = [{ piece: last.piece, part: last.part }];
  return asked(next, { do: 'pick up', targets }, view, port);
}

function move(state: BenchState, rows: BenchRows, by: number): BenchState {
  const order = [...rows.rows, ...rows.hold, ...rows.curing];
  const at = order.findIndex(({ key }) => key === rows.selected?.key);
  const from = at < 0 && by < 0 ? 0 : at;
  const next = order[(from + by + order.length) % order.length];
  return next === undefined
    ? state
    : { ...state, before: state.selected, selected: next.key, part: null };
}

/** Asks for something, and where no hand is free for it, asks which piece to put down. */
function asked(state: BenchState, intent: Intent, view: View, port: BenchPort): BenchStep {
  const reply = port.act(intent);
  const open = askWhich(intent, reply, view.now);
  if (open !== null) return { state, open };
  const why = reply.ok ? askWhyLate(intent, port) : null;
  return { ...told(state, reply), ...(why === null ? {} : { open: why }) };
}

/** Several keys at once are a glove or a paste: nothing happens, and two digits undo what the first one selected. */
export function manyOnBench(state: BenchState, presses: readonly Press[], view: View): BenchStep {
  const last = state.guard.lastTaken;
  const digitJustTaken =
    last !== null && /^[1-9]$/.test(last.name) && view.now - last.at < twoDigits;
  const isDigits = presses.some(({ name }) => /^[1-9]$/.test(name));
  const guard = { ...state.guard, lastArrival: view.now, held: true };
  return {
    state: { ...state, guard, ...(digitJustTaken && isDigits ? { selected: state.before } : {}) },
  };
}
