import { expect, it } from 'vitest';
import { outputOf, start } from './children/child.ts';
import { programs } from './children/programs.ts';
import { idsOf, newFolder, openReader } from './places.ts';

it('loses nothing when three processes append at once', { timeout: 60_000 }, async () => {
  const folder = newFolder();
  const writers = ['a', 'b', 'c'].map((prefix) =>
    start(programs.appendMany, [folder, prefix, '100']),
  );
  const confirmed = (await Promise.all(writers.map(outputOf))).flatMap((said) =>
    said.trim().split('\n'),
  );

  const { bench, notices } = await openReader(folder);
  expect(notices).toEqual([]);
  expect(confirmed).toHaveLength(300);
  expect([...idsOf(bench)].sort()).toEqual(confirmed.sort());
  // Each decided on all that was there: none saw the same state as another.
  expect(bench.map((fact) => (fact.kind === 'note-written' ? fact.body.text : ''))).toEqual(
    bench.map((_, index) => String(index)),
  );
  const ofA = idsOf(bench).filter((id) => id.startsWith('a'));
  expect(ofA).toEqual(Array.from({ length: 100 }, (_, index) => `a${index}`));
});
