import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { withPlainExports } from '../../scripts/build-chunks.mjs';

/** What a chunk gives to whoever requires it. */
function given(code: string): Record<string, unknown> {
  const module = { exports: {} };
  runInNewContext(withPlainExports(code), { module });
  return module.exports;
}

describe('the names that a chunk gives to others', () => {
  it('are fields of one plain object, under the names they are asked for by', () => {
    const chunk = given(
      'var one = 1; function two() { return one + 1; }\nexport {\n  one as a,\n  two\n};\n',
    );
    expect(Object.getOwnPropertyDescriptor(chunk, 'a')).toMatchObject({ value: 1 });
    expect((chunk['two'] as () => number)()).toBe(2);
    expect(Object.keys(chunk)).toEqual(['a', 'two']);
    expect(chunk['__esModule']).toBe(true);
  });

  it.each([
    ['an assignment', 'count = 7;'],
    ['a step', 'count++;'],
    ['an assignment where it is unset', 'count ??= 7;'],
    ['taking a list apart', '[count] = [7];'],
    ['taking an object apart', '({ count } = { count: 7 });'],
    ['a loop over values', 'for (count of [7]);'],
    ['a loop over names', 'for (count in { seven: 7 });'],
  ])('show a value that came later, by %s', (_how, later) => {
    const chunk = given(`var count; function change() { ${later} }\nexport { count, change };`);
    const before = chunk['count'];
    (chunk['change'] as () => void)();
    expect(before).toBeUndefined();
    expect(chunk['count']).not.toBe(before);
  });

  it('are none where there is nothing to give', () => {
    expect(withPlainExports('var one = 1;')).toBe('var one = 1;');
  });
});
