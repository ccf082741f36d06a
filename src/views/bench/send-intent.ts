import type { Intent } from '../../tracker/bench/index.ts';
import type { BenchPort } from '../port.ts';
import type { Step, View } from '../screen.ts';
import { askWhich } from '../which-to-put-down/ask-which.ts';
import { askWhyLate } from './ask-why-late.ts';
import type { BenchState } from './bench-state.ts';
import { told } from './told.ts';

/** Asks the core for something and shows what came of it; asks which piece to put down where no hand is free for it. */
export function sendIntent(
  state: BenchState,
  intent: Intent,
  view: View,
  port: BenchPort,
): Step<BenchState> {
  const reply = port.act(intent);
  const open = askWhich(intent, reply, view.now);
  if (open !== null) return { state, open };
  const why = reply.ok ? askWhyLate(intent, port) : null;
  return { ...told(state, reply), ...(why === null ? {} : { open: why }) };
}
