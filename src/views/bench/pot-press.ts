import type { Pot } from '../../tracker/bench/index.ts';
import type { Act } from '../keys/key-map.ts';
import type { ActReply, BenchPort } from '../port.ts';

/** What a key does on a pot's row: washing it out, and when it was mixed; null for all others. */
export function actOnPot(act: Act, { id }: Pot, port: BenchPort): ActReply | null {
  switch (act) {
    case 'done':
    case 'next stamp':
      return port.act({ do: 'wash out pot', pot: id });
    case 'earlier':
    case 'later':
      return port.act({ do: 'move pot', pot: id, earlier: act === 'earlier' });
    default:
      return null;
  }
}
