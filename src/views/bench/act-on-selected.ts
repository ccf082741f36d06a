import { sessionHolding, type Intent, type Standing } from '../../tracker/bench/index.ts';
import type { RowAct } from '../keys/key-map.ts';
import type { BenchPort } from '../port.ts';
import type { Step, View } from '../screen.ts';
import type { BenchRows } from './bench-rows.ts';
import type { BenchState } from './bench-state.ts';
import { actOnPot } from './pot-press.ts';
import { nextPart } from './selection.ts';
import { sendIntent } from './send-intent.ts';
import { told } from './told.ts';
import { workOnStep } from './work-on-step.ts';

/** What an act is done with: the bench as the screen shows it, and the way to the core. */
export type Acting = {
  readonly state: BenchState;
  readonly rows: BenchRows;
  readonly view: View;
  readonly port: BenchPort;
};

/** Acts on the selected piece; on an odd timer only its closing. */
export function actOnSelected(
  act: RowAct,
  selected: Standing | null,
  { state, view, port }: Acting,
): Step<BenchState> {
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
  const send = (intent: Intent): Step<BenchState> => sendIntent(kept, intent, view, port);
  const work = (intent: Intent): Step<BenchState> =>
    workOnStep({ kept, piece, part, view, port, act: () => send(intent) });
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
        : send({ do: 'lift hold', piece: piece.id });
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
        ? work({ do: 'pick up', targets: [{ piece: piece.id, part }] })
        : send({ do: 'put down', piece: piece.id });
    case 'take along':
      return send({ do: 'take along', piece: piece.id, part });
    case 'next stamp':
      return work({ do: 'next stamp', piece: piece.id, part });
    case 'first stroke':
      return work({ do: 'first stroke', piece: piece.id, part });
    case 'next section':
      return work({ do: 'next section', piece: piece.id, part });
    case 'done':
      return work({ do: 'done', piece: piece.id, part });
    case 'ready':
    case 'not yet':
      return send({ do: 'check', piece: piece.id, part, finding: act });
    case 'earlier':
    case 'later':
      return send({ do: 'move stamp', piece: piece.id, earlier: act === 'earlier' });
  }
}
