import { refusalLine } from '../bench/foot.ts';
import { lineOf, type Line } from '../drawing/index.ts';
import { wrapFigures, wrapWords } from '../drawing/wrap.ts';
import { capital } from '../format/index.ts';
import type { ActReply } from '../port.ts';
import { refused, said, warned, type Message, type View } from '../screen.ts';

/** More than this would push away what the message is about. */
const most = 4;

/**
 * What stands in the way of recording, and why the last key did nothing; else what it did: broken into lines, none if there
 * is nothing. What could not be stored was undone, so nothing is said to be done beside it.
 */
export function messageLines({ message, snapshot, columns }: View): readonly Line[] {
  const { obstacle } = snapshot;
  const hindered =
    obstacle === null
      ? []
      : wrapWords(`${obstacle.says} ${obstacle.todo}`, columns).map(refusalLine);
  const told =
    message === null || (obstacle !== null && !message.refused)
      ? []
      : wrapFigures(message.text, columns).map((text) =>
          message.refused
            ? refusalLine(text)
            : lineOf(text, message.warns === true ? 'loud' : 'strong'),
        );
  return [...hindered, ...told].slice(0, most);
}

/** What an intent did, or why it did nothing and what was meant perhaps. */
export function messageOf(reply: ActReply): Message {
  if (reply.ok)
    return reply.warns === undefined
      ? said(reply.says)
      : warned(`${reply.warns}. ${capital(reply.says)}`);
  const meant = reply.nearest.length > 0 ? ` Did you mean ${reply.nearest.join(', ')}?` : '';
  return refused(reply.says + meant);
}

/** Back to where the screen was opened from; where the intent was refused, it stays and says why. */
export const backWhenDone = (
  reply: ActReply,
): { readonly back?: true; readonly message: Message } => ({
  ...(reply.ok ? { back: true } : {}),
  message: messageOf(reply),
});
