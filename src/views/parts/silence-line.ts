import { nextAct } from '../../tracker/bench/index.ts';
import { lineOf, type Line } from '../drawing/index.ts';
import { keyMapWith, keyOf } from '../keys/key-map.ts';
import type { ShownPing } from '../port.ts';
import type { View } from '../screen.ts';

/** What a key does while a ping calls, and what the one after it would do. */
export function silenceLine({ piece }: ShownPing, { columns, now, snapshot }: View): Line {
  const { bench, settings, sense } = snapshot;
  const called = piece === null ? undefined : bench.pieces.get(piece);
  if (called === undefined || called.number === null)
    return lineOf('Any key silences, no more.', 'strong');
  if (columns < 80) return lineOf(`Any key silences, selects ${called.number}`, 'strong');
  const next = keyOf(keyMapWith(settings.keys), 'next stamp');
  const then = `Then ${next}: ${called.number} ${nextAct(bench, called, null, { now, sense }).says}`;
  return lineOf(`Any key silences and selects ${called.number}, no more.  ${then}`, 'strong');
}
