import { rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it, vi } from 'vitest';
import { openLock } from '../../src/persist/lock/lock.ts';
import { loadSqlite } from '../../src/persist/lock/sqlite.ts';
import { good } from '../../src/persist/result.ts';
import { conversation, outputOf, start } from './children/child.ts';
import { programs } from './children/programs.ts';
import { note } from './facts.ts';
import {
  appendBench,
  idsOf,
  newFolder,
  openReader,
  openWriter,
  problemOf,
  put,
  valueOf,
} from './places.ts';

it('goes on within a tenth of a second when the holder of the lock is killed', async () => {
  const folder = newFolder();
  const store = await openWriter(folder);
  const delays: number[] = [];
  for (let round = 0; round < 5; round++) {
    const child = start(programs.workOnRequest, [folder]);
    const { hear, ask } = conversation(child);
    await hear();
    expect(await ask('hold 60000')).toEqual({ ok: true, value: 'holding' });
    // Killed by a process of its own, since this one waits for the lock without listening.
    const killing = start(programs.killLater, [String(child.pid), '300']);
    const died = outputOf(killing);
    valueOf(appendBench(store, note(`n${round}`)));
    const goneOn = performance.timeOrigin + performance.now();
    delays.push(goneOn - Number(await died));
  }
  expect(idsOf((await openReader(folder)).bench)).toEqual(['n0', 'n1', 'n2', 'n3', 'n4']);
  const [fastest = Infinity, , median = Infinity] = delays.sort((one, other) => one - other);
  expect(fastest).toBeGreaterThan(0);
  expect(median).toBeLessThan(100);
}, 30_000);

it('says who waits for whom when the lock can not be had in five seconds', async () => {
  const folder = newFolder();
  const child = start(programs.workOnRequest, [folder]);
  const { hear, ask } = conversation(child);
  await hear();
  await ask('hold 60000');
  const lock = openLock(folder);
  const work = vi.fn(() => good('done'));
  const began = performance.now();
  expect(problemOf(lock.hold(work))).toMatchObject({
    kind: 'busy',
    file: folder,
    says: `Not stored: another recoat kept ${folder} locked for 5 seconds.`,
  });
  const waited = performance.now() - began;
  expect(waited).toBeGreaterThan(4_500);
  expect(waited).toBeLessThan(10_000);
  expect(work).not.toHaveBeenCalled();
  lock.close();
}, 30_000);

it('reads while another process holds the lock', async () => {
  const folder = newFolder();
  valueOf(appendBench(await openWriter(folder), note('a')));
  const child = start(programs.workOnRequest, [folder]);
  const { hear, ask } = conversation(child);
  await hear();
  await ask('hold 60000');
  expect(idsOf((await openReader(folder)).bench)).toEqual(['a']);
});

it("shows a damaged file's earlier copy, without mending, while another process holds the lock", async () => {
  const folder = newFolder();
  const store = await openWriter(folder);
  for (const id of ['a', 'b']) valueOf(appendBench(store, note(id)));
  const child = start(programs.workOnRequest, [folder]);
  const { hear, ask } = conversation(child);
  await hear();
  await ask('hold 60000');
  put(folder, 'bench.json', 'damaged');
  const opened = await openReader(folder);
  expect(idsOf(opened.bench)).toEqual(['a']);
  expect(opened.notices[0]?.says).toContain('nothing was put right');
}, 20_000);

it('frees the lock when the work fails', () => {
  const folder = newFolder();
  const [one, other] = [openLock(folder), openLock(folder)];
  const fail = () => {
    throw new Error('a mistake');
  };
  expect(() => one.hold(fail)).toThrow('a mistake');
  expect(other.hold(() => good('mine'), 0)).toEqual(good('mine'));
  expect(one.hold(() => other.hold(() => good('both'), 0)).ok).toBe(false);
  one.close();
  other.close();
});

it('keeps out a process that opened the lock before its file was taken away', () => {
  const folder = newFolder();
  const [one, other] = [openLock(folder), openLock(folder)];
  valueOf(one.hold(() => good(null)));
  rmSync(join(folder, 'lock.sqlite'));
  const inner = other.hold(() => one.hold(() => good('both'), 1));
  expect(problemOf(inner).kind).toBe('busy');
  one.close();
  other.close();
});

it('is a file that only the owner can read, with nothing in it', () => {
  const folder = newFolder();
  const lock = openLock(folder);
  valueOf(lock.hold(() => good(null)));
  const { mode, size } = statSync(join(folder, 'lock.sqlite'));
  expect([mode & 0o777, size]).toEqual([0o600, 0]);
  lock.close();
});

it("names the lock's file if that is damaged, and does not touch it", () => {
  const folder = newFolder();
  writeFileSync(join(folder, 'lock.sqlite'), 'no database at all '.repeat(100));
  const problem = problemOf(openLock(folder).hold(() => good(null)));
  expect(problem).toMatchObject({ kind: 'damaged', file: join(folder, 'lock.sqlite') });
  expect(problem.todo).toBe('Close every recoat and remove that file; nothing is kept in it.');
});

it('keeps the warning that SQLite is experimental off the screen, and no other warning', () => {
  const warned = vi.spyOn(process, 'emitWarning').mockImplementation(() => {});
  const getBuiltinModule = vi.spyOn(process, 'getBuiltinModule').mockImplementation(() => {
    process.emitWarning('SQLite is an experimental feature', 'ExperimentalWarning');
    process.emitWarning('something else', 'DeprecationWarning');
    return {};
  });
  try {
    loadSqlite();
    expect(warned.mock.calls).toEqual([['something else', 'DeprecationWarning']]);
    expect(Object.getOwnPropertyDescriptor(process, 'emitWarning')?.value).toBe(warned);
  } finally {
    getBuiltinModule.mockRestore();
    warned.mockRestore();
  }
});
