import {
  chmodSync,
  chownSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  unlinkSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openForWriting, openStore } from '../../src/persist/index.ts';
import {
  readLearned,
  writeLearned,
  type LearnedFile,
} from '../../src/persist/learned/learned-file.ts';
import {
  leaveKeeperMark,
  presentAsKeeper,
  presentAsScreen,
  readKeeperMark,
} from '../../src/persist/presence/index.ts';
import { createDiagnostics } from '../../src/shell/ping/diagnostics.ts';
import type { BenchFact } from '../../src/tracker/bench/index.ts';
import { notTaught } from '../../src/tracker/learning/index.ts';
import { conversation, start } from './children/child.ts';
import { programs } from './children/programs.ts';
import { note } from './facts.ts';
import { mountingFails, newDisk } from './mounted.ts';
import {
  appendBench,
  contentsOf,
  fixedClock,
  idsOf,
  newFolder,
  openReader,
  openWriter,
  problemOf,
  put,
  textOf,
  valueOf,
} from './places.ts';

const modeOf = (...path: string[]) => statSync(join(...path)).mode & 0o777;

describe.skipIf(process.platform === 'win32')('rights', () => {
  it("are the owner's alone, for folders and files, whatever the umask", async () => {
    const before = process.umask(0);
    try {
      const folder = join(newFolder(), 'new', 'store');
      const store = await openWriter(folder);
      for (const id of ['a', 'b']) valueOf(appendBench(store, note(id)));
      valueOf(store.moveToHistory([{ year: 2026, facts: [note('a')] }]));
      const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
      const modes = entries.map((entry) => [
        entry.name,
        modeOf(entry.parentPath, entry.name),
        entry.isFile(),
      ]);
      expect(modes).toHaveLength(7);
      for (const [name, mode, isFile] of modes)
        expect([name, mode]).toEqual([name, isFile ? 0o600 : 0o700]);
      expect(modeOf(folder)).toBe(0o700);
      expect(modeOf(folder, '..')).toBe(0o700);
    } finally {
      process.umask(before);
    }
  });

  it('of a file that others could read are narrowed when it is written', async () => {
    const folder = newFolder();
    const store = await openWriter(folder);
    valueOf(appendBench(store, note('a')));
    chmodSync(join(folder, 'bench.json'), 0o644);
    valueOf(appendBench(store, note('b')));
    expect(modeOf(folder, 'bench.json')).toBe(0o600);
  });
});

describe('a link in place of a file', () => {
  it.each(['bench.json', 'conditions.json', 'pings.json', 'settings.json'])(
    'is refused: %s',
    async (name) => {
      const folder = newFolder();
      const elsewhere = newFolder();
      put(elsewhere, 'target.json', '{"recoat":1,"facts":[]}');
      symlinkSync(join(elsewhere, 'target.json'), join(folder, name));
      const problem = problemOf(await openStore(folder, { clock: fixedClock }));
      expect(problem).toMatchObject({ kind: 'unsafe link', file: join(folder, name) });
      expect(problem.says).toContain('is a link to somewhere else');
      expect(problemOf(await openForWriting(folder, { clock: fixedClock })).kind).toBe(
        'unsafe link',
      );
      expect(textOf(elsewhere, 'target.json')).toBe('{"recoat":1,"facts":[]}');
    },
  );

  it('is refused when it leads nowhere, and when it comes while the program runs', async () => {
    const folder = newFolder();
    const store = await openWriter(folder);
    valueOf(appendBench(store, note('a')));
    unlinkSync(join(folder, 'bench.json'));
    symlinkSync(join(folder, 'nowhere.json'), join(folder, 'bench.json'));
    expect(problemOf(appendBench(store, note('b'))).kind).toBe('unsafe link');
    expect(existsSync(join(folder, 'nowhere.json'))).toBe(false);
  });

  it('is refused for the lock', async () => {
    const folder = newFolder();
    symlinkSync(join(folder, 'nowhere.sqlite'), join(folder, 'lock.sqlite'));
    expect(problemOf(await openForWriting(folder, { clock: fixedClock })).kind).toBe('unsafe link');
    expect(existsSync(join(folder, 'nowhere.sqlite'))).toBe(false);
  });

  it('is not followed for the generation before: it is replaced', async () => {
    const folder = newFolder();
    const store = await openWriter(folder);
    valueOf(appendBench(store, note('a')));
    put(folder, 'elsewhere', 'not ours');
    symlinkSync(join(folder, 'elsewhere'), join(folder, 'bench.prev.json'));
    valueOf(appendBench(store, note('b')));
    expect(textOf(folder, 'elsewhere')).toBe('not ours');
    expect(JSON.parse(textOf(folder, 'bench.prev.json')).facts).toEqual([note('a')]);
  });

  it('is not followed for what is thrown away again, nor for the backup of a day', async () => {
    const folder = newFolder();
    const elsewhere = newFolder();
    const store = await openWriter(folder);
    valueOf(appendBench(store, note('a')));
    const names = ['keeper.json', 'learned.json', 'learned.json.part', 'bench.prev.json.part'];
    mkdirSync(join(folder, 'backups'), { recursive: true });
    const backup = `backups/bench-${fixedClock.today()}.json`;
    rmSync(join(folder, backup), { force: true });
    for (const name of [...names, 'ping-diagnostics.log', backup]) {
      const target = name.replaceAll('/', '-');
      put(elsewhere, target, 'not ours');
      symlinkSync(join(elsewhere, target), join(folder, name));
    }
    leaveKeeperMark(folder, { pid: 1, began: 0 });
    const nothing = { ...notTaught, dried: [] };
    const taught: LearnedFile = {
      years: [],
      except: [],
      earlier: nothing,
      whole: nothing,
      imports: [],
      onImports: nothing,
    };
    writeLearned(folder, taught);
    createDiagnostics({ folder }).record({ at: 0, what: 'began', by: 'screen', pid: 1 });
    valueOf(appendBench(store, note('b')));
    for (const name of readdirSync(elsewhere))
      expect([name, textOf(elsewhere, name)]).toEqual([name, 'not ours']);
    expect(readKeeperMark(folder)).toEqual({ pid: 1, began: 0 });
    expect(readLearned(folder)).toEqual(taught);
    expect(textOf(folder, 'ping-diagnostics.log')).toContain('began');
    expect(
      idsOf((JSON.parse(textOf(folder, backup)) as { facts: readonly BenchFact[] }).facts),
    ).toEqual(['a']);
    for (const name of ['keeper.json', 'learned.json', 'ping-diagnostics.log', backup])
      expect([name, lstatSync(join(folder, name)).isFile(), modeOf(folder, name)]).toEqual([
        name,
        true,
        0o600,
      ]);
  });

  it('is refused for a year of history, whose pieces stay on the bench', async () => {
    const folder = newFolder();
    const elsewhere = newFolder();
    const store = await openWriter(folder);
    valueOf(appendBench(store, note('a')));
    mkdirSync(join(folder, 'history'));
    put(elsewhere, 'year', 'not ours');
    symlinkSync(join(elsewhere, 'year'), join(folder, 'history', '2026.json'));
    expect(problemOf(store.moveToHistory([{ year: 2026, facts: [note('a')] }])).kind).toBe(
      'unsafe link',
    );
    expect(textOf(elsewhere, 'year')).toBe('not ours');
    expect(idsOf((await openReader(folder)).bench)).toEqual(['a']);
  });

  it('is refused for what tells of screens and keepers: none is there then', () => {
    const folder = newFolder();
    for (const name of ['screens.sqlite', 'keeper.sqlite'])
      symlinkSync(join(folder, 'nowhere'), join(folder, name));
    expect([presentAsScreen(folder), presentAsKeeper(folder)]).toEqual([null, null]);
    expect(existsSync(join(folder, 'nowhere'))).toBe(false);
  });

  it("may stand for the folder of backups or of history, as it may for the whole: that is the user's choice", async () => {
    const folder = newFolder();
    const elsewhere = newFolder();
    const store = await openWriter(folder);
    valueOf(appendBench(store, note('a')));
    rmSync(join(folder, 'backups'), { recursive: true, force: true });
    for (const name of ['backups', 'history']) {
      mkdirSync(join(elsewhere, name));
      symlinkSync(join(elsewhere, name), join(folder, name));
    }
    valueOf(appendBench(store, note('b')));
    valueOf(store.moveToHistory([{ year: 2026, facts: [note('a')] }]));
    expect(readdirSync(elsewhere, { recursive: true }).map(String).sort()).toContain(
      join('history', '2026.json'),
    );
    expect(readdirSync(join(elsewhere, 'backups'))).toHaveLength(1);
  });

  it("may stand for the whole folder, which is the user's choice", async () => {
    const folder = newFolder();
    mkdirSync(join(folder, 'real'));
    symlinkSync(join(folder, 'real'), join(folder, 'linked'));
    valueOf(appendBench(await openWriter(join(folder, 'linked')), note('a')));
    expect(idsOf((await openReader(join(folder, 'real'))).bench)).toEqual(['a']);
  });
});

it('refuses a folder in place of a file', async () => {
  const folder = newFolder();
  mkdirSync(join(folder, 'bench.json'));
  expect(problemOf(await openStore(folder, { clock: fixedClock }))).toMatchObject({
    kind: 'unsafe link',
    says: `Not opened: ${join(folder, 'bench.json')} is no plain file.`,
  });
});

it('refuses to write where a file stands for the folder', async () => {
  const folder = newFolder();
  put(folder, 'store', 'a file');
  expect(problemOf(await openForWriting(join(folder, 'store'), { clock: fixedClock })).kind).toBe(
    'unwritable',
  );
});

it('says that the folder is gone, and makes none in its place', async () => {
  const folder = join(newFolder(), 'store');
  const store = await openWriter(folder);
  valueOf(appendBench(store, note('a')));
  renameSync(folder, `${folder} moved`);
  const problem = problemOf(appendBench(store, note('b')));
  expect(problem).toMatchObject({ kind: 'gone', file: folder });
  expect(existsSync(folder)).toBe(false);
  renameSync(`${folder} moved`, folder);
  valueOf(appendBench(store, note('b')));
  expect(idsOf((await openReader(folder)).bench)).toEqual(['a', 'b']);
});

describe.skipIf(mountingFails)(
  `a disk that can only be read${mountingFails ? `: ${mountingFails}` : ''}`,
  () => {
    const readOnlyStore = async (spoil: (folder: string) => void = () => {}) => {
      const disk = newDisk(1024 * 1024);
      const store = await openWriter(disk.folder);
      for (const id of ['a', 'b']) valueOf(appendBench(store, note(id)));
      store.close();
      spoil(disk.folder);
      disk.makeReadOnly();
      return disk.folder;
    };

    it('is read, and refused for writing', async () => {
      const folder = await readOnlyStore();
      expect(idsOf((await openReader(folder)).bench)).toEqual(['a', 'b']);
      const problem = problemOf(await openForWriting(folder, { clock: fixedClock }));
      expect(problem).toMatchObject({ kind: 'unwritable', file: folder });
      expect(problem.todo).toContain('Looking works all the same.');
    });

    it('shows the generation before in place of a damaged file, and says that nothing was put right', async () => {
      const folder = await readOnlyStore((at) => put(at, 'bench.json', 'damaged'));
      const before = contentsOf(folder);
      const opened = await openReader(folder);
      expect(idsOf(opened.bench)).toEqual(['a']);
      expect(opened.notices[0]?.says).toContain(
        "bench.prev.json is shown instead; nothing was put right, since the folder can't be written now.",
      );
      expect(contentsOf(folder)).toEqual(before);
    });
  },
);

describe.skipIf(process.platform === 'win32')(
  'a folder that came to be closed to its owner',
  () => {
    // Rights don't bind root, so root tries it as somebody else.
    const uid = process.getuid?.() === 0 ? 65_534 : (process.getuid?.() ?? 0);

    it('is said, and work goes on when it is open again', async () => {
      const folder = newFolder();
      chownSync(folder, uid, process.getgid?.() ?? 0);
      const { hear, ask } = conversation(start(programs.workOnRequest, [folder], { uid }));
      expect(await hear()).toEqual({ ok: true });
      expect(await ask('append a')).toEqual({ ok: true, value: 'a' });
      chmodSync(folder, 0o500);
      expect(await ask('append b')).toMatchObject({ ok: false, problem: { kind: 'unwritable' } });
      expect(idsOf((await openReader(folder)).bench)).toEqual(['a']);
      chmodSync(folder, 0o700);
      expect(await ask('append c')).toEqual({ ok: true, value: 'c' });
      expect(idsOf((await openReader(folder)).bench)).toEqual(['a', 'c']);
    });

    it('is said of a file that can not be read, and the file stays as it is', async () => {
      const folder = newFolder();
      chownSync(folder, uid, process.getgid?.() ?? 0);
      put(folder, 'bench.json', '{"recoat":1,"facts":[]}');
      chmodSync(join(folder, 'bench.json'), 0o000);
      const { hear } = conversation(start(programs.workOnRequest, [folder], { uid }));
      expect(await hear()).toMatchObject({
        ok: false,
        problem: { kind: 'unreadable', file: join(folder, 'bench.json') },
      });
      expect(readdirSync(folder).sort()).toEqual(['bench.json', 'lock.sqlite']);
    });
  },
);
