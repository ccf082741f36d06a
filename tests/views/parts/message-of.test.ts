import { expect, test } from 'vitest';
import { messageOf } from '../../../src/views/parts/message-lines.ts';

test('what is wrong stands before what was done, each as a sentence', () => {
  const reply = { ok: true, says: 'first wash on', piece: null } as const;
  expect(messageOf(reply).text).toBe('first wash on');
  expect(messageOf({ ...reply, warns: 'Not rinsed out' }).text).toBe(
    'Not rinsed out. First wash on',
  );
});
