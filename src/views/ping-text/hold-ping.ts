import type { BenchPing } from '../../tracker/bench/index.ts';
import type { Call } from './window-ping.ts';

/** A hold asks whether what it waits for has come. */
export const holdCall = ({ piece }: Extract<BenchPing, { about: 'hold' }>): Call => ({
  verb: 'ask about',
  says: `ask about ${piece.hold?.reason ?? 'the hold'}`,
  more: [],
});
