import {
  foldBench,
  type Bench,
  type BenchFact,
  type BenchFactBodies,
  type PingSense,
} from '../../../src/tracker/bench/index.ts';
import { standardSettings, type Settings } from '../../../src/tracker/settings/index.ts';
import { hour, minute, type Instant } from '../../../src/tracker/time/index.ts';
import { noRules, type Product, type Step } from '../../../src/tracker/trade/index.ts';
import type { StampEvent, WindowRule } from '../../../src/tracker/windows/index.ts';
import { instantOfClock, nextClock } from '../../../src/views/format/index.ts';
import type { BenchPort, Shop, ShownPing, Snapshot } from '../../../src/views/port.ts';
import type { Press } from '../../../src/views/keys/press.ts';
import { plain } from '../../../src/views/drawing/index.ts';
import type { Frame, View } from '../../../src/views/screen.ts';
import type { Theme } from '../../../src/views/theme/index.ts';

/** An instant of the invented shop, whose zone is UTC: `24 14:29` is in November 2026, `12-03 16:41:20` in December. */
export function at(text: string): Instant {
  const [day = '', clock = ''] = text.split(' ');
  const date = day.includes('-') ? `2026-${day}` : `2026-11-${day}`;
  return Date.parse(`${date}T${clock}${clock.length === 5 ? ':00' : ''}Z`);
}

export const shop: Shop = { zone: 'UTC', hours: '24', temperature: 'C', lengths: 'mm' };

export const sense: PingSense = {
  spanEnd: (span, from) => from + span.ms,
  nextClock: (from, time) => nextClock(from, time, 'UTC'),
  instantOf: (day, time) => instantOfClock(day, time, 'UTC'),
};

type Kind = BenchFact['kind'];

/** Facts told one after another, each its own key press. */
export class Facts {
  readonly list: BenchFact[] = [];

  tell<K extends Kind>(when: string, kind: K, body: BenchFactBodies[K]): this {
    const told = at(when);
    const id = `f${this.list.length + 1}`;
    this.list.push({
      id,
      group: `g-${id}`,
      at: told,
      told,
      by: 'person',
      uptimeMs: null,
      bootId: null,
      kind,
      body,
    } as BenchFact);
    return this;
  }

  piece(
    when: string,
    number: number,
    name: string,
    steps: readonly Step[],
    products: readonly Product[] = [],
  ): this {
    return this.tell(when, 'piece-added', {
      piece: `p${number}`,
      number,
      name,
      schedule: { id: 'invented', name: 'invented schedule', hash: '0' },
      steps,
      products: Object.fromEntries(products.map((product) => [product.id, product])),
    });
  }

  stamp(
    when: string,
    number: number,
    step: string,
    event: StampEvent,
    more: { agent?: string; part?: string; pass?: number; section?: number } = {},
  ): this {
    return this.tell(when, 'stamped', {
      piece: `p${number}`,
      part: more.part ?? null,
      step,
      event,
      agent: more.agent ?? null,
      pass: more.pass ?? 1,
      section: more.section ?? null,
      air: null,
    });
  }

  done(when: string, number: number, step: string, part: string | null = null): this {
    return this.tell(when, 'step-done', {
      piece: `p${number}`,
      part,
      step,
      pass: 1,
      expectation: { minutes: 30, low: 20, high: 45, chance: 0.8, model: 'finishing schedule' },
      air: null,
    });
  }

  pickUp(when: string, number: number, step: string | null): this {
    return this.tell(when, 'picked-up', {
      session: `s${number}-${when}`,
      targets: [{ piece: `p${number}`, part: null, step }],
      hand: 1,
    });
  }

  putDown(when: string, session: string): this {
    return this.tell(when, 'put-down', { session });
  }

  bench(): Bench {
    return foldBench(this.list);
  }
}

export function step(id: string, name: string, more: Partial<Step> = {}): Step {
  return {
    id,
    name,
    stepClass: 'other',
    minutes: { typical: 30, low: 20, high: 45 },
    driver: 'fixed',
    setupMinutes: 0,
    stamps: [],
    windows: [],
    needs: [],
    cautions: [],
    ...more,
  };
}

const inAir = { chemistry: 'oxidative', statedFor: { tempC: 23, rh: 50 } } as const;

export function product(
  id: string,
  windows: readonly WindowRule[],
  more: Partial<Product> = {},
): Product {
  return {
    id,
    name: id,
    productClass: id,
    chemistry: 'oxidative',
    statedFor: { tempC: 23, rh: 50 },
    windows,
    cautions: [],
    ...more,
  };
}

const first = { events: ['first-stroke'], which: 'first', assume: true } as const;
const last = { events: ['last-stroke'], which: 'last' } as const;

/** A recoat that opens after the last stroke, and from its closing on wants the surface scuffed first. */
export const recoat = (
  opens: number,
  closes: number | null,
  says = 'scuff 320 first',
): WindowRule => ({
  id: 'recoat',
  kind: 'coat',
  verb: 'next coat',
  milestone: 'recoat',
  scope: 'step',
  begins: last,
  stretches: [
    { meaning: 'wait', loss: 'costs nothing' },
    {
      from: { kind: 'stamp', stamp: last, plus: { ms: opens, ...inAir, may: 'grow' } },
      meaning: 'go',
      loss: 'costs nothing',
    },
    ...(closes === null
      ? []
      : [
          {
            from: { kind: 'stamp', stamp: first, plus: { ms: closes, ...inAir, may: 'shrink' } },
            meaning: 'go after work',
            loss: 'costs work',
            says,
          } as const,
        ]),
  ],
  closedBy: { by: 'needing step' },
  notYetAdds: 30 * minute,
});

/** A forbidden gap: at once, then keep off, then again. */
export const barred: WindowRule = {
  id: 'recoat',
  kind: 'coat',
  verb: 'next coat',
  milestone: 'recoat',
  scope: 'step',
  begins: last,
  stretches: [
    { meaning: 'go', loss: 'costs nothing' },
    {
      from: { kind: 'stamp', stamp: first, plus: { ms: hour } },
      meaning: 'keep off',
      loss: 'costs work',
      says: 'recoating now wrinkles it',
    },
    {
      from: { kind: 'stamp', stamp: last, plus: { ms: 24 * hour } },
      meaning: 'go',
      loss: 'costs nothing',
    },
  ],
  closedBy: { by: 'needing step' },
};

export const clamps: WindowRule = {
  id: 'clamps',
  kind: 'glue',
  verb: 'clamps off',
  scope: 'step',
  begins: { events: ['in-clamps'], which: 'first' },
  stretches: [
    { meaning: 'wait', loss: 'costs nothing' },
    {
      from: { kind: 'stamp', stamp: { events: ['in-clamps'], which: 'first' }, plus: { ms: hour } },
      meaning: 'go',
      loss: 'costs nothing',
    },
  ],
  closedBy: { by: 'stamp', stamp: { events: ['clamps-off'], which: 'first' } },
};

export const fullCure: WindowRule = {
  id: 'full-cure',
  kind: 'cure',
  verb: 'full cure',
  milestone: 'full cure',
  scope: 'step',
  begins: last,
  stretches: [
    { meaning: 'wait', loss: 'costs nothing' },
    {
      from: { kind: 'stamp', stamp: last, plus: { ms: 21 * 24 * hour } },
      meaning: 'go',
      loss: 'costs nothing',
    },
  ],
  closedBy: { by: 'nothing' },
};

const strokeOf = (agent: string) => ({ events: ['first-stroke'], which: 'first', agent }) as const;

/** Bleach: A works for ten minutes, B must be on two minutes later. */
export const bleach: WindowRule = {
  id: 'b-on',
  kind: 'chemical',
  verb: 'B on',
  scope: 'step',
  begins: strokeOf('A'),
  stretches: [
    { meaning: 'wait', loss: 'costs nothing' },
    {
      from: { kind: 'stamp', stamp: strokeOf('A'), plus: { ms: 10 * minute } },
      meaning: 'go',
      loss: 'costs nothing',
    },
    {
      from: { kind: 'stamp', stamp: strokeOf('A'), plus: { ms: 12 * minute } },
      meaning: 'late',
      loss: 'spoils',
      says: 'rinse, dry, start over',
    },
  ],
  closedBy: { by: 'stamp', stamp: strokeOf('B') },
  gear: 'gloves, goggles',
};

/** A mixed pot that gels four hours after it was mixed. */
export const pot: WindowRule = {
  id: 'pot',
  kind: 'pot',
  verb: 'wash out',
  scope: 'step',
  begins: { events: ['mixed'], which: 'first' },
  stretches: [
    { meaning: 'go', loss: 'costs nothing' },
    {
      from: { kind: 'stamp', stamp: { events: ['mixed'], which: 'first' }, plus: { ms: 4 * hour } },
      meaning: 'late',
      loss: 'spoils',
      says: 'it gels in the pot',
    },
  ],
  closedBy: { by: 'stamp', stamp: { events: ['washed-out'], which: 'first' } },
};

/** Eight invented pieces on an afternoon, Tuesday 24 November 2026 about 14:29. */
export function afternoon(): Facts {
  const coat = (rule: WindowRule, name: string) => [
    step('coat', name, { product: 'finish', stepClass: 'coat, brushed', windows: [rule] }),
    step('next', 'next coat', {
      needs: ['recoat'],
      product: 'finish',
      stepClass: 'coat, brushed',
      minutes: { typical: 18, low: 15, high: 22 },
    }),
  ];
  const varnish = product('finish', [], { productClass: 'oil varnish', selfHeatingRags: true });
  const clear = product('finish', [], {
    productClass: 'waterborne clear',
    chemistry: 'waterborne',
  });
  return new Facts()
    .piece('16 09:00', 1, 'Oak settle', [
      step('sand', 'sand 120 grit', { minutes: { typical: 36, low: 26, high: 48 } }),
      step('sand2', 'sand 150 grit'),
    ])
    .piece('16 09:01', 2, 'Plant stand', coat(recoat(12 * hour, 24 * hour), 'varnish coat 1'), [
      varnish,
    ])
    .piece(
      '16 09:02',
      3,
      'Beech stool',
      coat(recoat(3 * hour + 48 * minute, 12 * hour), 'clear coat 2 of 3'),
      [clear],
    )
    .piece('16 09:03', 4, 'Side table', [
      step('glue', 'glue-up, left rail', {
        windows: [clamps],
        stamps: [{ event: 'in-clamps', says: 'in clamps' }],
      }),
    ])
    .piece('16 09:04', 5, 'Garden bench', coat(barred, 'aerosol pass 2'), [
      product('finish', [], { productClass: 'aerosol alkyd enamel' }),
    ])
    .piece('16 09:05', 6, 'Cane rocker', [
      step('look', 'look over, lead test', { minutes: { typical: 25, low: 15, high: 30 } }),
    ])
    .piece('16 09:06', 7, 'Walnut tray', [step('oil', 'oil coat', { windows: [fullCure] })])
    .piece('16 09:07', 8, 'Hat rack', [step('hinges', 'hinges on')])
    .tell('20 10:00', 'hold-placed', {
      piece: 'p8',
      reason: 'hinge plates',
      askAgain: '2026-11-26',
    })
    .stamp('23 12:00', 7, 'oil', 'first-stroke')
    .done('23 12:30', 7, 'oil')
    .stamp('23 18:30', 2, 'coat', 'first-stroke')
    .done('23 18:50', 2, 'coat')
    .stamp('24 08:40', 5, 'coat', 'first-stroke')
    .done('24 08:55', 5, 'coat')
    .stamp('24 11:00', 3, 'coat', 'first-stroke')

    .done('24 11:22', 3, 'coat')
    .stamp('24 14:20', 4, 'glue', 'in-clamps')
    .pickUp('24 14:02', 1, 'sand');
}

/** Bleach A went on at 16:30 on piece 2 of the same afternoon's shop, and piece 5 dries between passes. */
export function tense(): Facts {
  return new Facts()
    .piece('12-01 09:00', 2, 'Wall shelf', [
      step('bleach', 'bleach', {
        windows: [bleach],
        stepClass: 'bleach',
        stamps: [
          { event: 'first-stroke', agent: 'A', says: 'A, first stroke on' },
          { event: 'first-stroke', agent: 'B', says: 'B, first stroke on' },
        ],
      }),
    ])
    .piece('12-01 09:01', 3, 'Book rack', [
      step('coat', 'clear coat 2 of 3', { windows: [recoat(2 * hour, 13 * hour)] }),
      step('next', 'clear coat 3', { needs: ['recoat'] }),
    ])
    .piece('12-01 09:02', 6, 'Cane rocker', [step('look', 'look over, lead test')])
    .stamp('12-03 10:00', 3, 'coat', 'first-stroke')
    .done('12-03 10:30', 3, 'coat')
    .stamp('12-03 16:30', 2, 'bleach', 'first-stroke', { agent: 'A' });
}

export function snapshotOf(bench: Bench, more: Partial<Snapshot> = {}): Snapshot {
  return {
    bench,
    settings: standardSettings,
    shop,
    sense,
    rules: noRules,
    readings: [],
    pings: [],
    unwritten: new Set(),
    obstacle: null,
    notices: [],
    awake: null,
    keeper: 'cannot',
    folder: null,
    ...more,
  };
}

export const withSettings = (changes: Partial<Settings>): Settings => ({
  ...standardSettings,
  ...changes,
});

export function ping(
  claim: string,
  when: string,
  text: string,
  more: Partial<ShownPing> = {},
): ShownPing {
  return {
    claim,
    at: at(when),
    text,
    loud: false,
    piece: null,
    seenAt: null,
    ways: ['desktop', 'bell'],
    failures: [],
    ...more,
  };
}

export type Size = readonly [columns: number, rows: number];
export const sizes: readonly Size[] = [
  [80, 24],
  [40, 20],
  [120, 36],
  [32, 10],
];

const theme: Theme = { colour: 'none', glyphs: 'blocks' };

export function viewOf(
  snapshot: Snapshot,
  now: Instant,
  [columns, rows]: Size = [80, 24],
  more: Partial<View> = {},
): View {
  return { snapshot, now, columns, rows, theme, message: null, ...more };
}

export const rowsOf = (frame: Frame): readonly string[] =>
  frame.lines.map((line) => plain(line).trimEnd());

export const key = (name: string, text = name.length === 1 ? name : ''): Press => ({ name, text });

/** A port that keeps what was asked of it. Whatever a test doesn't give refuses by throwing. */
export function portOf(snapshot: () => Snapshot, answers: Partial<BenchPort> = {}): BenchPort {
  const unasked = (name: string) => (): never => {
    throw new Error(`nobody was to call ${name}`);
  };
  return {
    subscribe: () => () => undefined,
    snapshot,
    act: unasked('act'),
    takeReading: unasked('takeReading'),
    acknowledge: unasked('acknowledge'),
    choose: unasked('choose'),
    schedules: unasked('schedules'),
    past: unasked('past'),
    pingWays: () => ({ desktop: true, says: 'desktop yes, bell yes' }),
    ...answers,
  };
}
