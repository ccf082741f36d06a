import type { Instant } from '../../tracker/time/index.ts';
import type { Intent } from '../../tracker/bench/index.ts';
import type { ActReply } from '../port.ts';
import type { WhichToPutDownState } from '../screens.ts';

/** The screen that asks, where an intent was refused only because no hand is free; null for anything else. */
export function askWhich(
  intent: Intent,
  reply: ActReply,
  now: Instant,
): WhichToPutDownState | null {
  if (reply.ok || reply.couldPutDown === undefined || !picksUp(intent)) return null;
  return { is: 'which to put down', intent, sessions: reply.couldPutDown, openedAt: now };
}

const picksUp = (intent: Intent): intent is WhichToPutDownState['intent'] =>
  intent.do === 'pick up' ||
  intent.do === 'next stamp' ||
  intent.do === 'first stroke' ||
  intent.do === 'next section';
