import type { BenchFact, ConditionsFact, PingFact } from '../../src/tracker/bench/index.ts';
import type { Product, Step } from '../../src/tracker/trade/index.ts';
import type { WindowRule } from '../../src/tracker/windows/index.ts';

/** 2026-11-24 15:06:40 UTC. */
export const noon = 1795532800000;

const head = (id: string) => ({
  id,
  group: `group-${id}`,
  at: noon,
  told: noon,
  by: 'person' as const,
  uptimeMs: 90_000,
  bootId: 'boot-1',
});

export const note = (id: string, text = 'runner replaced'): BenchFact => ({
  ...head(id),
  kind: 'note-written',
  body: { piece: 'oak-chest', step: null, text },
});

export const reading = (id: string, tempC = 19): ConditionsFact => ({
  ...head(id),
  by: 'script',
  kind: 'reading-taken',
  body: { tempC, rh: 55 },
});

export const claim = (id: string): PingFact => ({
  ...head(id),
  kind: 'ping-claimed',
  body: { pings: ['scuff'], text: '2 Oak chest: scuff, try it', loud: false, piece: 'oak-chest' },
});

const span = {
  ms: 7_200_000,
  statedFor: { tempC: 21, rh: 50 },
  chemistry: 'waterborne',
  may: 'grow',
} as const;

const scuffWindow: WindowRule = {
  id: 'scuff',
  kind: 'coat',
  verb: 'scuff',
  milestone: 'scuff',
  scope: 'pass',
  begins: { events: ['last-stroke'], which: 'last', assume: true },
  stretches: [
    { meaning: 'wait', loss: 'costs work' },
    {
      from: { kind: 'stamp', stamp: { events: ['last-stroke'], which: 'last' }, plus: span },
      meaning: 'go',
      loss: 'costs nothing',
    },
    {
      from: {
        kind: 'latest',
        of: [
          { kind: 'stamp', stamp: { events: ['first-stroke'], which: 'first' }, plus: span },
          { kind: 'beyond', edge: { kind: 'check', finding: 'ready' }, plus: span },
        ],
      },
      meaning: 'go after work',
      loss: 'costs work',
      says: 'scuff 320 first',
    },
  ],
  closedBy: { by: 'needing step' },
  notYetAdds: 1_800_000,
};

const clearCoat: Product = {
  id: 'clear',
  name: 'waterborne polyurethane',
  productClass: 'waterborne clear',
  chemistry: 'waterborne',
  statedFor: { tempC: 21, rh: 50 },
  windows: [scuffWindow],
  cautions: ['Ventilate.'],
};

const coat = (id: string): Step => ({
  id,
  name: `Coat ${id}`,
  stepClass: 'coat, brushed',
  minutes: { typical: 25, low: 18, high: 40 },
  driver: 'area',
  setupMinutes: 10,
  product: 'clear',
  passes: 1,
  stamps: [{ event: 'first-stroke', says: 'first stroke on' }],
  windows: [scuffWindow],
  needs: ['recoat'],
  cautions: [],
});

export const pieceAdded = (id: string, steps = 3): BenchFact => ({
  ...head(id),
  kind: 'piece-added',
  body: {
    piece: id,
    number: 1,
    name: 'Oak chest',
    schedule: { id: 'bleach-and-clear', name: 'bleach and clear', hash: 'abc' },
    steps: Array.from({ length: steps }, (_, index) => coat(`coat-${index + 1}`)),
    products: { clear: clearCoat },
  },
});

/** A bench of about the size asked for: pieces with their steps, and the facts that work on them leaves. */
export function benchOfSize(bytes: number): readonly BenchFact[] {
  const facts: BenchFact[] = [];
  for (let size = 0; size < bytes;) {
    const id = `piece-${facts.length}`;
    const more = [
      pieceAdded(id, 12),
      ...Array.from({ length: 50 }, (_, index) =>
        note(`${id}-${index}`, 'sanded to 220, raised the grain'),
      ),
    ];
    facts.push(...more);
    size += more.reduce((sum, fact) => sum + JSON.stringify(fact).length + 2, 0);
  }
  return facts;
}
