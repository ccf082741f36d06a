import { describe, expect, it } from 'vitest';
import { factsText } from '../../src/persist/file/document.ts';
import { fileForm, migrate, presentForm, type Migration } from '../../src/persist/file/form.ts';
import { openStore } from '../../src/persist/index.ts';
import type { BenchFact } from '../../src/tracker/bench/index.ts';
import { note } from './facts.ts';
import {
  appendBench,
  contentsOf,
  fixedClock,
  idsOf,
  newFolder,
  openWriter,
  problemOf,
  put,
  textOf,
  valueOf,
} from './places.ts';

/** A made-up past: form 1 had `remark` where form 2 has `text`; form 3 signs groups. */
const renamesRemark: Migration = {
  to: 2,
  what: 'remark becomes text',
  facts: (facts, holds) =>
    holds !== 'bench'
      ? facts
      : (facts as { body: { remark?: string } }[]).map(
          ({ body: { remark, ...body }, ...fact }) => ({
            ...fact,
            body: { ...body, text: remark },
          }),
        ),
  settings: ({ remarks, ...settings }) => ({ ...settings, helper: remarks === 'two hands' }),
};
const signsGroups: Migration = {
  to: 3,
  what: 'groups are signed',
  facts: (facts) => (facts as BenchFact[]).map((fact) => ({ ...fact, group: `${fact.group}+` })),
  settings: (settings) => settings,
};
const form = fileForm([renamesRemark, signsGroups]);

const oldNote = (id: string) => {
  const { body, ...fact } = note(id) as BenchFact & { kind: 'note-written' };
  return { ...fact, body: { piece: body.piece, step: body.step, remark: body.text } };
};
const signed = (id: string) => ({ ...note(id), group: `group-${id}+` });
const oldText = JSON.stringify({ recoat: 1, facts: [oldNote('a'), oldNote('b')] });

describe('the list of migrations', () => {
  it('is numbered from 2 without gap or repeat', () => {
    expect(presentForm).toEqual({ current: 1, migrations: [] });
    expect(form.current).toBe(3);
    expect(() => fileForm([signsGroups])).toThrow('"groups are signed" is numbered 3, expected 2');
    expect(() => fileForm([renamesRemark, renamesRemark])).toThrow('is numbered 2, expected 3');
  });

  it('runs each step once, in order, from the form that the file has', () => {
    expect(migrate(form, 1, 'bench', [oldNote('a')])).toEqual([signed('a')]);
    expect(migrate(form, 2, 'bench', [note('a')])).toEqual([signed('a')]);
    expect(migrate(form, 3, 'bench', [note('a')])).toEqual([note('a')]);
    expect(migrate(form, 1, 'settings', { remarks: 'two hands' })).toEqual({ helper: true });
  });
});

describe('a file of an older form', () => {
  it('is read as the present form without being touched', async () => {
    const folder = newFolder();
    put(folder, 'bench.json', oldText);
    put(folder, 'settings.json', '{"recoat":1,"settings":{"remarks":"two hands"}}');
    const before = contentsOf(folder);
    const opened = valueOf(await openStore(folder, { clock: fixedClock, form }));
    expect(opened.bench).toEqual([signed('a'), signed('b')]);
    expect(opened.settings.helper).toBe(true);
    expect(opened.notices).toEqual([]);
    expect(contentsOf(folder)).toEqual(before);
  });

  it('is checked and brought up although the program that wrote it vouched for it', async () => {
    const folder = newFolder();
    put(folder, 'bench.json', factsText(1, [oldNote('a')]));
    const opened = valueOf(await openStore(folder, { clock: fixedClock, form }));
    expect(opened.bench).toEqual([signed('a')]);
  });

  it('is written in the present form at the next change, with the old file kept', async () => {
    const folder = newFolder();
    put(folder, 'bench.json', oldText);
    const store = await openWriter(folder, { form });
    valueOf(appendBench(store, note('c')));
    valueOf(appendBench(store, note('d')));
    expect(textOf(folder, 'bench.form1.json')).toBe(oldText);
    expect(JSON.parse(textOf(folder, 'bench.json'))).toMatchObject({
      recoat: 3,
      facts: [signed('a'), signed('b'), note('c'), note('d')],
    });
  });

  it('that comes again, from a backup, leaves the one that was kept first', async () => {
    const folder = newFolder();
    for (const text of [oldText, JSON.stringify({ recoat: 1, facts: [oldNote('b')] })]) {
      put(folder, 'bench.json', text);
      const store = await openWriter(folder, { form });
      valueOf(appendBench(store, note('c')));
    }
    expect(textOf(folder, 'bench.form1.json')).toBe(oldText);
  });

  it('is mended from a generation of an older form, too', async () => {
    const folder = newFolder();
    put(folder, 'bench.prev.json', oldText);
    put(folder, 'bench.json', '');
    const store = await openWriter(folder, { form });
    valueOf(appendBench(store, note('c')));
    expect(idsOf(valueOf(store.load()).bench)).toEqual(['a', 'b', 'c']);
    expect(textOf(folder, 'bench.form1.json')).toBe(oldText);
  });

  it('stays where it is if it can not be brought up', async () => {
    const folder = newFolder();
    put(folder, 'bench.json', JSON.stringify({ recoat: 1, facts: [note('a'), 7] }));
    const before = contentsOf(folder);
    const problem = problemOf(await openStore(folder, { clock: fixedClock, form }));
    expect(problem.kind).toBe('damaged');
    expect(problem.says).toContain("has form 1 and can't be brought up to form 3");
    expect(contentsOf(folder)).toEqual(before);
  });

  it('is refused by the program of before once it is written', async () => {
    const folder = newFolder();
    const before = await openWriter(folder);
    valueOf(appendBench(before, note('a')));
    const after = await openWriter(folder, { form: fileForm([{ ...signsGroups, to: 2 }]) });
    valueOf(appendBench(after, note('b')));
    const kept = contentsOf(folder);
    expect(problemOf(appendBench(before, note('c'))).kind).toBe('newer');
    expect(contentsOf(folder)).toEqual(kept);
  });
});
