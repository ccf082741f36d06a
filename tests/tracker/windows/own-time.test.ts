import { expect, test } from 'vitest';
import { mayTeachSooner } from '../../../src/tracker/windows/index.ts';

// Two-part and acid-cured coats can feel hard before they are (common practice, no source).
test.each(['waterborne', 'evaporative', 'oxidative'] as const)(
  'checks may bring scuffing and recoating of a %s coat forward, and nothing else of it',
  (chemistry) => {
    expect(mayTeachSooner('scuff', chemistry, false)).toBe(true);
    expect(mayTeachSooner('recoat', chemistry, false)).toBe(true);
    for (const later of ['turn over', 'refit', 'wrap', 'light use', 'full cure'] as const)
      expect(mayTeachSooner(later, chemistry, false)).toBe(false);
    // Where a gap is forbidden the surface tells nothing of what is beneath.
    expect(mayTeachSooner('recoat', chemistry, true)).toBe(false);
  },
);

test.each(['two-part', 'moisture-cure', 'glue', 'reaction'] as const)(
  'nothing of a %s product is ever brought forward by trying it',
  (chemistry) => {
    expect(mayTeachSooner('scuff', chemistry, false)).toBe(false);
    expect(mayTeachSooner('recoat', chemistry, false)).toBe(false);
  },
);
