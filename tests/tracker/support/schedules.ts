import type {
  Chemistry,
  FinishingSchedule,
  PlannedStamp,
  Product,
  Step,
  StepClass,
} from '../../../src/tracker/trade/index.ts';
import { hour, minute } from '../../../src/tracker/time/index.ts';
import type { WindowRule } from '../../../src/tracker/windows/index.ts';
import {
  aerosolRecoat,
  assemble,
  bleachB,
  bleachDry,
  clampsOff,
  clearCoat,
  greenStage,
  judge,
  milestone,
  nextPass,
  potLife,
  scrape,
  wipeOff,
} from './rules.ts';

/** A step with everything that a test doesn't care about filled in. Minutes: common practice, no source. */
export const step = (id: string, stepClass: StepClass, more: Partial<Step> = {}): Step => ({
  id,
  name: id,
  stepClass,
  minutes: { typical: 30, low: 20, high: 50 },
  driver: 'area',
  setupMinutes: 10,
  stamps: [],
  windows: [],
  needs: [],
  cautions: [],
  ...more,
});

export const product = (
  id: string,
  chemistry: Chemistry,
  windows: readonly WindowRule[],
  more: Partial<Product> = {},
): Product => ({
  id,
  name: id,
  productClass: id,
  chemistry,
  statedFor: { tempC: 23, rh: 50 },
  windows,
  cautions: [],
  ...more,
});

export const schedule = (
  id: string,
  steps: readonly Step[],
  products: readonly Product[] = [],
): FinishingSchedule => ({
  id,
  name: id.replaceAll('-', ' '),
  summary: '',
  hash: `hash of ${id}`,
  steps,
  products: Object.fromEntries(products.map((each) => [each.id, each])),
});

const strokeOn: PlannedStamp = { event: 'first-stroke', says: 'first stroke on' };

export const bleach = step('bleach', 'bleach', {
  product: 'two-part bleach',
  stamps: [
    { event: 'first-stroke', agent: 'A', says: 'A, first stroke on' },
    { event: 'first-stroke', agent: 'B', says: 'B, first stroke on' },
  ],
  untilRight: true,
});
const coat = (id: string, more: Partial<Step> = {}): Step =>
  step(id, 'coat, brushed', { product: 'clear coat', stamps: [strokeOn], ...more });
const scuff = (id: string): Step => step(id, 'scuff', { needs: ['scuff'], dusty: true, grit: 320 });

/** Sand, bleach with A then B, rinse, sand, two coats with a scuff between, rub out. */
export const bleachAndClear = schedule(
  'bleach-and-clear',
  [
    step('sand', 'sand bare, first grit', { dusty: true, grit: 120 }),
    bleach,
    step('rinse', 'rinse, neutralise', { needs: ['dry'] }),
    coat('coat 1'),
    scuff('scuff 1'),
    coat('coat 2', { needs: ['recoat'] }),
    step('rub out', 'rub out', { needs: ['full cure'] }),
  ],
  [
    product('two-part bleach', 'reaction', [bleachB, bleachDry]),
    product('clear coat', 'waterborne', clearCoat),
  ],
);

/** One coat straight upon another, no scuff between. */
export const twoCoats = schedule(
  'two-coats',
  [coat('coat 1'), coat('coat 2', { needs: ['recoat'] }), scuff('scuff 2')],
  [product('clear coat', 'waterborne', clearCoat)],
);

/** Stain wiped off in sections, then a coat. */
export const stainInSections = schedule(
  'stain-in-sections',
  [
    step('stain', 'stain', {
      product: 'oil stain',
      stamps: [
        { event: 'section-on', says: 'on', perSection: true },
        { event: 'section-off', says: 'off', perSection: true },
      ],
    }),
    coat('coat 1', { needs: ['recoat'] }),
  ],
  [
    product('oil stain', 'oxidative', [wipeOff, milestone('recoat', 12 * hour)]),
    product('clear coat', 'waterborne', clearCoat),
  ],
);

/** Aerosol in three passes, and a second coat of it. */
export const aerosol = schedule(
  'aerosol',
  [
    step('spray 1', 'coat, sprayed', { product: 'aerosol enamel', passes: 3, stamps: [strokeOn] }),
    step('spray 2', 'coat, sprayed', {
      product: 'aerosol enamel',
      passes: 3,
      stamps: [strokeOn],
      needs: ['recoat'],
    }),
  ],
  [product('aerosol enamel', 'oxidative', [nextPass, aerosolRecoat])],
);

/** Glue, clamps, and fitting once they are off. */
export const glueUp = schedule(
  'glue-up',
  [
    step('glue', 'reglue', {
      product: 'wood glue',
      stamps: [strokeOn, { event: 'in-clamps', says: 'in clamps' }],
    }),
    step('fit', 'fit a drawer', { needs: ['clamps off'] }),
  ],
  [product('wood glue', 'glue', [assemble, clampsOff])],
);

/** Stripper that is kept wet, then sanding. */
export const strip = schedule(
  'strip',
  [
    step('strip', 'strip', { product: 'stripper', stamps: [strokeOn], fumes: true }),
    step('sand', 'sand bare, first grit', { dusty: true }),
  ],
  [product('stripper', 'reaction', [scrape])],
);

/** A mixed two-part coat with a pot, and a second coat in its green stage. */
export const twoPart = schedule(
  'two-part',
  [
    step('epoxy 1', 'coat, brushed', {
      product: 'epoxy',
      stamps: [{ event: 'mixed', says: 'mixed' }, strokeOn],
    }),
    step('epoxy 2', 'coat, brushed', {
      product: 'epoxy',
      stamps: [{ event: 'mixed', says: 'mixed' }, strokeOn],
      needs: ['recoat'],
    }),
  ],
  [product('epoxy', 'two-part', [potLife, greenStage])],
);

/** Oil coats until it looks right, then wax; cures in stages. */
export const oilUntilRight = schedule(
  'oil-until-right',
  [
    step('oil', 'coat, wiped', {
      product: 'oil',
      stamps: [strokeOn],
      untilRight: true,
      needs: ['recoat'],
    }),
    step('wax', 'wax', { needs: ['recoat'] }),
  ],
  [
    product('oil', 'oxidative', [
      milestone('recoat', 12 * hour),
      milestone('light use', 48 * hour),
      milestone('full cure', 14 * 24 * hour),
    ]),
  ],
);

/** Bleach whose first part may stand half as long on softwood. */
export const bleachByWood = schedule(
  'bleach-by-wood',
  [bleach],
  [
    product('two-part bleach', 'reaction', [], {
      byWood: {
        soft: [{ ...bleachB, stretches: shifted(5) }],
        hard: [bleachB],
      },
    }),
  ],
);

/**
 * A schedule that depends on the piece: a lead test for what is old, an old finish that is asked for, two ways to strip,
 * a primer on softwood, and a coat that waits for its sample board.
 */
export const dependsOnPiece = schedule(
  'depends-on-piece',
  [
    step('lead test', 'lead test', { onlyIf: { madeBefore: 1978 } }),
    step('old finish', 'other', {
      asks: {
        question: 'which solvent softened it?',
        answers: [
          { id: 'shellac', says: 'alcohol: shellac' },
          { id: 'varnish', says: 'neither: varnish' },
        ],
      },
    }),
    step('wash off', 'strip', { onlyIf: { answers: { 'old finish': ['shellac'] } } }),
    step('strip', 'strip', {
      onlyIf: { answers: { 'old finish': ['varnish', 'unknown'] } },
      minutesTimes: { 'old finish': { varnish: 1.5 } },
    }),
    step('prime', 'prime', {
      onlyIf: { any: [{ wood: ['soft'] }, { answers: { 'old finish': ['varnish'] } }] },
    }),
    step('sample', 'other', { trialFor: ['coat'], windows: [judge], product: 'clear coat' }),
    step('coat', 'coat, brushed', { product: 'clear coat', stamps: [strokeOn] }),
    step('wrap', 'refit, wrap', { needs: ['recoat'] }),
  ],
  [product('clear coat', 'waterborne', clearCoat)],
);

/** The stretches of A to B for a wood that takes `opens` minutes, and half as long again till A is dry. */
function shifted(opens: number): WindowRule['stretches'] {
  const [waiting, working, dry] = bleachB.stretches;
  if (waiting === undefined || working?.from?.kind !== 'stamp' || dry?.from?.kind !== 'stamp')
    throw new Error('A to B has three stretches');
  return [
    waiting,
    { ...working, from: { ...working.from, plus: { ms: opens * minute } } },
    { ...dry, from: { ...dry.from, plus: { ms: 3 * opens * minute } } },
  ];
}

export const allSchedules = [
  bleachAndClear,
  twoCoats,
  stainInSections,
  aerosol,
  glueUp,
  strip,
  twoPart,
  oilUntilRight,
  dependsOnPiece,
] as const;
