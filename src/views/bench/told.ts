import { messageOf } from '../parts/message-lines.ts';
import type { ActReply } from '../port.ts';
import { refused, said, type Step } from '../screen.ts';
import type { BenchState } from './bench-state.ts';

/** Shows what an intent did, or why it did nothing. `bringBackKey` is named after taking back. */
export function told(state: BenchState, reply: ActReply, bringBackKey?: string): Step<BenchState> {
  if (!reply.ok) {
    const nearest = reply.nearest.length > 0 ? ` Did you mean ${reply.nearest.join(', ')}?` : '';
    return { state, message: refused(reply.says + nearest) };
  }
  if (reply.warns !== undefined) return { state, message: messageOf(reply) };
  return {
    state,
    message: said(
      bringBackKey === undefined ? reply.says : `${reply.says}.  ${bringBackKey}: bring back`,
    ),
  };
}
