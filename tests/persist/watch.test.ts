import { rmSync } from 'node:fs';
import { expect, it, vi } from 'vitest';
import type { FactStore } from '../../src/persist/index.ts';
import { note } from './facts.ts';
import { appendBench, idsOf, newFolder, openWriter, put, valueOf } from './places.ts';

const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** A store that watches, and another on the same folder. */
async function two() {
  const folder = newFolder();
  const [watching, other] = [await openWriter(folder), await openWriter(folder)];
  const seen: (readonly string[])[] = [];
  const listener = vi.fn(() => {
    seen.push(idsOf(valueOf(watching.load()).bench));
  });
  return { folder, watching, other, listener, seen, stop: watching.watch(listener) };
}

const tell = (store: FactStore, ...ids: string[]) => {
  for (const id of ids) valueOf(appendBench(store, note(id)));
};

it('tells soon that another process wrote, once for changes in a row, with the news to be read', async () => {
  const { other, listener, seen } = await two();
  tell(other, 'a', 'b', 'c');
  await vi.waitFor(() => expect(listener).toHaveBeenCalled(), { timeout: 2_000 });
  await wait(150);
  expect(listener.mock.calls.length).toBeLessThanOrEqual(2);
  expect(seen.at(-1)).toEqual(['a', 'b', 'c']);
});

it("tells of another process's settings, too", async () => {
  const { other, listener } = await two();
  valueOf(other.changeSettings((now) => ({ settings: { ...now, bell: 'never' }, result: null })));
  await vi.waitFor(() => expect(listener).toHaveBeenCalledOnce(), { timeout: 2_000 });
});

it('says nothing of own changes, other files, or after it was stopped', async () => {
  const { folder, watching, other, listener, stop } = await two();
  tell(watching, 'a');
  put(folder, 'notes of my own.txt', 'x');
  await wait(200);
  expect(listener).not.toHaveBeenCalled();
  stop();
  tell(other, 'b');
  await wait(200);
  expect(listener).not.toHaveBeenCalled();
});

it('outlives the folder', async () => {
  const { folder, listener } = await two();
  rmSync(folder, { recursive: true });
  await wait(200);
  expect(listener.mock.calls.length).toBeLessThanOrEqual(1);
});
