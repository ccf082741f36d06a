import {
  bringBackName,
  takeBackName,
  type Bench,
  type BenchFact,
} from '../../tracker/bench/index.ts';
import { cut, type GlyphSet } from '../drawing/index.ts';
import type { Press } from '../keys/press.ts';
import { messageOf } from '../parts/message-lines.ts';
import type { BenchPort } from '../port.ts';
import { refused, type Step } from '../screen.ts';

type Way = 'take back' | 'bring back';

/** Deeds of these pages. Any other is one of the bench, which they don't show. */
const ownKinds: readonly BenchFact['kind'][] = [
  'session-corrected',
  'kept-from-learning',
  'hours-imported',
  'import-taken-out',
];

/** Whether what would be taken or brought back was done to hours. */
function isOwn({ trail, groups }: Bench, way: Way): boolean {
  const group = (way === 'take back' ? trail.done : trail.takenBack).at(-1);
  const facts = groups.get(group ?? '') ?? [];
  return facts.length > 0 && facts.every(({ kind }) => ownKinds.includes(kind));
}

/** 0 or Backspace takes back and g brings back what was done to hours; null for any other key. */
export function takeBackOrForth({ name }: Press, port: BenchPort): Step<never> | null {
  if (name !== '0' && name !== 'backspace' && name !== 'g') return null;
  const way = name === 'g' ? 'bring back' : 'take back';
  const { bench } = port.snapshot();
  const named = way === 'take back' ? takeBackName(bench) : bringBackName(bench);
  // Where there is nothing at all, the bench's own refusal says so.
  if (named !== null && !isOwn(bench, way))
    return {
      message: refused(
        way === 'take back'
          ? `Not taken back: the last deed was on the bench: ${named}. Esc, and 0 there takes it back.`
          : `Not brought back: that was on the bench: ${named}. Esc, and g there brings it back.`,
      ),
    };
  return { message: messageOf(port.act({ do: way })) };
}

const mostNamed = 48;

/** `0 take back: leave 1 Oak chest out of learning`, where that is what 0 does; on a narrow terminal without its name. */
export function takeBackHints(
  bench: Bench,
  columns: number,
  glyphs: GlyphSet,
  behindKey: ' ' | ': ' = ' ',
): readonly string[] {
  if (!isOwn(bench, 'take back')) return [];
  return columns < 80
    ? [`0${behindKey}take back`]
    : [`0${behindKey}take back: ${cut(takeBackName(bench) ?? '', mostNamed, glyphs)}`];
}
