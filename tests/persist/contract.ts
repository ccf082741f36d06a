import { describe, expect, it, vi } from 'vitest';
import type { FactStore } from '../../src/persist/index.ts';
import { standardSettings } from '../../src/tracker/settings/index.ts';
import { claim, note, reading } from './facts.ts';
import { idsOf, valueOf } from './places.ts';

/** What every store does, wherever it keeps its facts. */
export function describeStore(name: string, open: () => Promise<FactStore>): void {
  describe(`${name}: a store`, () => {
    it('starts empty, with standard settings', async () => {
      const loaded = valueOf((await open()).load());
      expect(loaded).toMatchObject({ bench: [], conditions: [], pings: [] });
      expect(loaded.settings).toEqual(standardSettings);
    });

    it('gives the result of a change and keeps its facts in the order of telling', async () => {
      const store = await open();
      const change = () =>
        store.change((current) => ({
          append: { bench: [note(`n${current.bench.length}`)] },
          result: current.bench.length,
        }));
      expect([change(), change(), change()].map(valueOf)).toEqual([0, 1, 2]);
      expect(valueOf(store.load()).bench).toEqual([note('n0'), note('n1'), note('n2')]);
    });

    it('keeps the three kinds of facts apart', async () => {
      const store = await open();
      const append = { bench: [note('n')], conditions: [reading('r')], pings: [claim('c')] };
      valueOf(store.change(() => ({ append, result: null })));
      expect(valueOf(store.load())).toMatchObject(append);
    });

    it('changes nothing for a change that appends nothing', async () => {
      const store = await open();
      valueOf(store.change(() => ({ append: { bench: [note('n')] }, result: null })));
      const before = store.fingerprint();
      expect(valueOf(store.change(() => ({ append: {}, result: 'looked' })))).toBe('looked');
      expect(valueOf(store.change(() => ({ append: { bench: [] }, result: 'looked' })))).toBe(
        'looked',
      );
      expect(store.fingerprint()).toBe(before);
    });

    it('takes a fact once, however often it is told', async () => {
      const store = await open();
      const tell = (...texts: string[]) =>
        valueOf(
          store.change(() => ({
            append: { bench: texts.map((text) => note('same', text)) },
            result: null,
          })),
        );
      tell('first', 'second');
      const before = store.fingerprint();
      tell('third');
      expect(valueOf(store.load()).bench).toEqual([note('same', 'first')]);
      expect(store.fingerprint()).toBe(before);
    });

    it('is as before if deciding fails, and goes on working', async () => {
      const store = await open();
      const before = store.fingerprint();
      const failing = () =>
        store.change(() => {
          throw new Error('a mistake');
        });
      expect(failing).toThrow('a mistake');
      expect(store.fingerprint()).toBe(before);
      expect(store.change(() => ({ append: { bench: [note('n')] }, result: 1 }))).toEqual({
        ok: true,
        value: 1,
      });
    });

    it('lets nobody start a change within a change', async () => {
      const store = await open();
      const nested = () =>
        store.change(() => {
          store.change(() => ({ append: {}, result: null }));
          return { append: {}, result: null };
        });
      expect(nested).toThrow('by its own holder');
    });

    it('shows by the fingerprint that something changed', async () => {
      const store = await open();
      const prints = [store.fingerprint()];
      const note2 = (id: string) =>
        valueOf(store.change(() => ({ append: { bench: [note(id)] }, result: null })));
      note2('a');
      prints.push(store.fingerprint());
      note2('b');
      prints.push(store.fingerprint());
      valueOf(
        store.changeSettings((now) => ({ settings: { ...now, helper: true }, result: null })),
      );
      prints.push(store.fingerprint());
      expect(new Set(prints).size).toBe(4);
      expect(valueOf(store.load()).fingerprint).toBe(prints[3]);
    });

    it('changes settings, or leaves them', async () => {
      const store = await open();
      const set = store.changeSettings((now) => ({
        settings: { ...now, temperature: 'F', keys: { ready: ['w'] } },
        result: now.temperature,
      }));
      expect(valueOf(set)).toBe('auto');
      const before = store.fingerprint();
      expect(
        valueOf(store.changeSettings((now) => ({ settings: null, result: now.temperature }))),
      ).toBe('F');
      expect(store.fingerprint()).toBe(before);
      expect(valueOf(store.readSettings())).toEqual(valueOf(store.load()).settings);
      expect(valueOf(store.load()).settings).toEqual({
        ...standardSettings,
        temperature: 'F',
        keys: { ready: ['w'] },
      });
    });

    it('moves a piece to the history of its year', async () => {
      const store = await open();
      const facts = ['a', 'b', 'c', 'd'].map((id) => note(id));
      valueOf(store.change(() => ({ append: { bench: facts }, result: null })));
      valueOf(
        store.moveToHistory([
          { year: 2025, facts: facts.slice(0, 1) },
          { year: 2026, facts: facts.slice(1, 3), shared: new Set(['c']) },
        ]),
      );
      expect(idsOf(valueOf(store.load()).bench)).toEqual(['c', 'd']);
      expect(store.historyYears()).toEqual([2025, 2026]);
      expect(valueOf(store.readHistory(2025))).toEqual({ facts: [note('a')], notices: [] });
      expect(idsOf(valueOf(store.readHistory(2026)).facts)).toEqual(['b', 'c']);
      expect(valueOf(store.readHistory(1999))).toEqual({ facts: [], notices: [] });
    });

    it('moves what is chosen on what is stored then', async () => {
      const store = await open();
      const facts = ['a', 'b'].map((id) => note(id));
      valueOf(store.change(() => ({ append: { bench: facts }, result: null })));
      valueOf(store.moveToHistory(({ bench }) => [{ year: 2026, facts: bench.slice(1) }]));
      expect(idsOf(valueOf(store.load()).bench)).toEqual(['a']);
      expect(idsOf(valueOf(store.readHistory(2026)).facts)).toEqual(['b']);
      valueOf(store.moveToHistory(() => []));
      expect(store.historyYears()).toEqual([2026]);
    });

    it('moves a piece again without doubling anything', async () => {
      const store = await open();
      const facts = ['a', 'b'].map((id) => note(id));
      const move = () => valueOf(store.moveToHistory([{ year: 2026, facts }]));
      valueOf(store.change(() => ({ append: { bench: facts }, result: null })));
      move();
      // What a process finds that died between the two files: the facts are in both.
      valueOf(store.change(() => ({ append: { bench: facts }, result: null })));
      move();
      expect(valueOf(store.load()).bench).toEqual([]);
      expect(idsOf(valueOf(store.readHistory(2026)).facts)).toEqual(['a', 'b']);
    });

    it('calls no watcher for its own changes', async () => {
      const store = await open();
      const listener = vi.fn();
      const stop = store.watch(listener);
      valueOf(store.change(() => ({ append: { bench: [note('n')] }, result: null })));
      await new Promise((resolve) => setTimeout(resolve, 200));
      stop();
      expect(listener).not.toHaveBeenCalled();
    });
  });
}
