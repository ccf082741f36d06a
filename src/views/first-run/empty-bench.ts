import { lineOf, type Line } from '../drawing/index.ts';
import { dateLine } from '../bench/head.ts';
import { refusalLine } from '../bench/foot.ts';
import type { Frame, View } from '../screen.ts';

/** The bench with nothing on it: what to do, in three lines. */
export function emptyBench(view: View): Frame {
  const { message, snapshot } = view;
  const { obstacle } = snapshot;
  const body: readonly Line[] = [
    dateLine(view),
    lineOf(''),
    lineOf('The bench is empty.', 'strong'),
    lineOf(''),
    lineOf('Add a piece: a name and a finishing schedule will do.'),
    lineOf('Pick it up and its minutes run; put a coat on and its window shows here.'),
    lineOf('It pings when a window opens or is about to close.'),
    lineOf(''),
    lineOf('  a  add a piece'),
    lineOf('  z  past pieces'),
    lineOf(''),
    lineOf('To look around first, leave with q and open the demo: npx recoat demo', 'quiet'),
    lineOf('(an invented shop; nothing in it is kept)', 'quiet'),
  ];
  const foot: readonly Line[] = [
    lineOf(snapshot.notices.at(-1) ?? 'While recoat is closed nothing pings.', 'quiet'),
    obstacle !== null
      ? refusalLine(`${obstacle.says} ${obstacle.todo}`)
      : message === null
        ? lineOf('')
        : message.refused
          ? refusalLine(message.text)
          : lineOf(message.text, 'strong'),
    lineOf('a add a piece  c conditions  u settings  k all keys  q leave', 'quiet'),
  ];
  const gap = Array.from({ length: Math.max(0, view.rows - body.length - foot.length) }, () =>
    lineOf(''),
  );
  return { lines: [...body.slice(0, view.rows - foot.length), ...gap, ...foot] };
}
