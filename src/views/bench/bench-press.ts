import { pressEmptyBench } from '../first-run/offers.ts';
import { isDigit, judge, listClosed, twoDigits } from '../keys/guard.ts';
import { actOf, keyMapWith } from '../keys/key-map.ts';
import type { Press } from '../keys/press.ts';
import type { BenchPort } from '../port.ts';
import { said, type Step, type View } from '../screen.ts';
import { claimsOf, silencedNow, silencedPressAgain } from '../silence.ts';
import type { Acting } from './act-on-selected.ts';
import { benchRows, isFar } from './bench-rows.ts';
import type { BenchState } from './bench-state.ts';
import { listedAct, moreActs } from './pad-list.ts';
import { perform } from './perform-act.ts';
import { selectNumber } from './selection.ts';

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
  const isDoneKey = keys.find(({ act }) => act === 'done')?.keys.includes(press.name) === true;
  const verdict = judge(guardBefore, isDoneKey ? 'd' : press.name, view.now);
  const settled: BenchState = { ...state, guard: verdict.guard, returnedAt: null };
  if (verdict.revert) return { state: { ...settled, selected: state.before } };
  if (!verdict.take) return { state: settled, heldBack: true };
  const awake = wokenBy(press, settled, state, view);
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
  if (awake.list !== 'closed') return pressInList(press, { state: awake, rows, view, port });
  const offered = rows.all.length === 0 ? pressEmptyBench(awake, press, view, port) : null;
  if (offered !== null) return offered;
  if (isDigit(press.name)) return selectNumber(awake, Number(press.name), rows);
  const act = actOf(keys, press.name);
  return act === null ? { state: awake } : perform(act, { state: awake, rows, view, port });
}

/** The bench as a key that counts leaves it: near again where it was shown large, and the notice on it answered. */
function wokenBy({ name }: Press, settled: BenchState, before: BenchState, view: View): BenchState {
  const wasFar = isFar(before, view);
  // A digit chooses a piece from across the shop, and the large letters stay.
  if (wasFar && isDigit(name)) return settled;
  // The large letters leave no room for a notice: the key that brings the bench back brings it up.
  const answered = settled.noticesSeen + (wasFar ? 0 : 1);
  const noticesSeen = Math.min(view.snapshot.notices.length, answered);
  return { ...settled, touchedAt: view.now, noticesSeen };
}

/** The numeric pad's list is open: a digit is an act, any other key closes it. */
function pressInList(press: Press, acting: Acting): BenchStep {
  const { state, view } = acting;
  const keys = keyMapWith(view.snapshot.settings.keys);
  const closed: BenchState = { ...state, list: 'closed', guard: listClosed(state.guard, view.now) };
  if (!/^[0-9]$/.test(press.name)) return { state: closed };
  const number = Number(press.name);
  if (state.list === 'first' && number === 9) return { state: { ...state, list: 'more' } };
  const act = state.list === 'first' ? listedAct(keys, number) : moreActs[number - 1];
  return act === null || act === undefined
    ? { state: closed }
    : perform(act, { ...acting, state: closed });
}

/** Several keys at once are a glove or a paste: nothing happens, and two digits undo what the first one selected. */
export function manyOnBench(state: BenchState, presses: readonly Press[], view: View): BenchStep {
  const last = state.guard.lastTaken;
  const isSoonAfterDigit = last !== null && isDigit(last.name) && view.now - last.at < twoDigits;
  const hasDigit = presses.some(({ name }) => isDigit(name));
  const guard = { ...state.guard, lastArrival: view.now, held: true };
  return {
    state: { ...state, guard, ...(isSoonAfterDigit && hasDigit ? { selected: state.before } : {}) },
  };
}
