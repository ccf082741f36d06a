import type { BenchFact } from '../tracker/bench/index.ts';
import { standardSettings, type Settings } from '../tracker/settings/index.ts';
import { idsLeaving, joinFacts, withoutNeedless } from './join-facts.ts';
import { good } from './result.ts';
import type { Appending, FactStore, Loaded } from './store.ts';

/** A store that ends with the process: for looking around without a folder, and for tests of what stands on a store. */
export function memoryStore(start: Appending & { readonly settings?: Settings } = {}): FactStore {
  let generation = 0;
  let kept: Omit<Loaded, 'fingerprint'> = {
    bench: start.bench ?? [],
    conditions: start.conditions ?? [],
    pings: start.pings ?? [],
    settings: start.settings ?? standardSettings,
  };
  const history = new Map<number, readonly BenchFact[]>();
  let isDeciding = false;

  const fingerprint = () => `memory ${generation}`;
  const load = (): Loaded => ({ ...kept, fingerprint: fingerprint() });
  const keep = (changed: Partial<typeof kept>) => {
    kept = { ...kept, ...changed };
    generation += 1;
  };
  /** As on the disk, whoever decides may not start another change before the first is stored. */
  const deciding = <T>(decide: () => T): T => {
    if (isDeciding) throw new Error('the lock of the store was asked for by its own holder');
    isDeciding = true;
    try {
      return decide();
    } finally {
      isDeciding = false;
    }
  };

  return {
    folder: null,
    load: () => good(load()),
    change: (decide) =>
      deciding(() => {
        const { append, result } = decide(load());
        const grown = {
          bench: joinFacts(kept.bench, append.bench),
          conditions: joinFacts(
            withoutNeedless(kept.conditions, append.needless),
            append.conditions,
          ),
          pings: joinFacts(withoutNeedless(kept.pings, append.needless), append.pings),
        };
        const hasChanged =
          grown.bench !== kept.bench ||
          grown.conditions !== kept.conditions ||
          grown.pings !== kept.pings;
        if (hasChanged) keep(grown);
        return good(result);
      }),
    readSettings: () => good(kept.settings),
    changeSettings: (decide) =>
      deciding(() => {
        const { settings, result } = decide(kept.settings);
        if (settings !== null) keep({ settings });
        return good(result);
      }),
    moveToHistory(chosen) {
      const pieces = typeof chosen === 'function' ? deciding(() => chosen(load())) : chosen;
      for (const { year, facts } of pieces) {
        history.set(year, joinFacts(history.get(year) ?? [], facts));
      }
      const gone = idsLeaving(pieces);
      const staying = kept.bench.filter(({ id }) => !gone.has(id));
      if (staying.length < kept.bench.length) keep({ bench: staying });
      return good(undefined);
    },
    historyYears: () => [...history.keys()].sort((one, other) => one - other),
    readHistory: (year) => good({ facts: history.get(year) ?? [], notices: [] }),
    fingerprint,
    // Nobody else can change it.
    watch: () => () => {},
    notices: () => [],
    close() {},
  };
}
