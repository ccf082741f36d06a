import type { Press } from '../keys/press.ts';
import { messageOf } from '../parts/message-lines.ts';
import type { BenchPort } from '../port.ts';
import type { Step } from '../screen.ts';

/** 0 or Backspace takes back and g brings back, here as on the bench; null for any other key. */
export function takeBackOrForth({ name }: Press, port: BenchPort): Step<never> | null {
  if (name === '0' || name === 'backspace')
    return { message: messageOf(port.act({ do: 'take back' })) };
  return name === 'g' ? { message: messageOf(port.act({ do: 'bring back' })) } : null;
}
