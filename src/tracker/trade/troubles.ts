import { hour, minute, type Milliseconds } from '../time/index.ts';
import type { WindowKind, WindowRule } from '../windows/model.ts';
import type { Step, StepClass } from './schedule.ts';
import { usualStep } from './usual-work.ts';

/** One thing that a surface can show when it is tried and not as it should be, and what is usually done about it. */
export type Trouble = {
  readonly id: string;
  /** As a person would call it: `runs, sags`. */
  readonly name: string;
  /** What is done about it, in a few words. */
  readonly remedy: string;
  /** What of it are steps; `again` is the step that had the trouble, once more. */
  readonly steps: readonly (RemedyStep | Again)[];
};

type RemedyStep = Omit<Step, 'id'>;
type Again = { readonly again: string };

const step = (name: string, stepClass: StepClass, more: Partial<RemedyStep> = {}): RemedyStep => ({
  ...usualStep(name, stepClass),
  ...more,
});

const again = (how = 'again'): Again => ({ again: how });

const strokes = { events: ['last-stroke'], which: 'last' } as const;

/** Shellac from which wax was taken lets go of the brush in an hour and takes a coat after two. */
const shellacDries: WindowRule = {
  id: 'recoat',
  kind: 'coat',
  verb: 'next coat',
  milestone: 'recoat',
  scope: 'step',
  begins: { events: ['first-stroke'], which: 'first', assume: true },
  stretches: [
    { meaning: 'wait', loss: 'costs nothing' },
    {
      from: {
        kind: 'stamp',
        stamp: strokes,
        plus: {
          ms: 2 * hour,
          statedFor: { tempC: 23, rh: 50 },
          chemistry: 'evaporative',
          may: 'grow',
        },
      },
      meaning: 'go',
      loss: 'costs nothing',
    },
  ],
  closedBy: { by: 'needing step' },
  notYetAdds: 30 * minute,
};

const shellac = (name: string): RemedyStep =>
  step(name, 'prime', {
    needs: ['scuff'],
    stamps: [{ event: 'first-stroke', says: 'first stroke on' }],
    windows: [shellacDries],
    fumes: true,
    cautions: [
      'Label first. Alcohol in shellac burns: no flame, spark or heater, fresh air, organic-vapour mask.',
    ],
  });

const stripCare = 'Label first. Gloves, goggles, fresh air, organic-vapour mask.';
const oldFinish =
  'Through to an old finish: lead test first, wet, P100. Not tested counts as lead.';

export const none: Trouble = {
  id: 'none of these',
  name: 'none of these',
  remedy: 'write what it was',
  steps: [],
};

/** Nothing to do but let it be for a while: the time counts from "done", and the next remedy waits for it. */
const leave = (name: string, ms: Milliseconds, then: string): RemedyStep =>
  step(name, 'other', {
    minutes: { typical: 2, low: 1, high: 5 },
    windows: [
      {
        id: 'left',
        kind: 'coat',
        verb: then,
        milestone: 'dry',
        scope: 'step',
        begins: { events: ['first-stroke'], which: 'first', assume: true },
        stretches: [
          { meaning: 'wait', loss: 'costs nothing' },
          {
            from: {
              kind: 'latest',
              of: [
                { kind: 'stamp', stamp: strokes, plus: { ms } },
                { kind: 'check', finding: 'not yet', plus: { ms: ms / 2 } },
              ],
            },
            meaning: 'go',
            loss: 'costs nothing',
          },
        ],
        closedBy: { by: 'needing step' },
        notYetAdds: ms / 2,
      },
    ],
  });

const afterLeaving = (name: string, stepClass: StepClass, more: Partial<RemedyStep> = {}) =>
  step(name, stepClass, { ...more, needs: ['dry'] });

const solventWash = {
  fumes: true,
  cautions: ['Label first. Wash solvent burns: no flame or spark, fresh air, organic-vapour mask.'],
} as const;

/**
 * Troubles of a drying coat, those of the brush and gun first. All remedies and waits: common practice, no source; the
 * label in the hand comes first.
 */
const ofCoats: readonly Trouble[] = [
  {
    id: 'still tacky',
    name: 'still tacky, soft',
    remedy: 'warm the shop, a night more; else strip back',
    steps: [
      leave('warm the shop, air moving; leave it', 12 * hour, 'try it'),
      afterLeaving('still tacky: strip back to sound; if not, skip this', 'strip', {
        cautions: [stripCare],
      }),
    ],
  },
  {
    id: 'runs',
    name: 'runs, sags',
    remedy: 'wait for scuff, level with 320, coat thinner',
    steps: [step('level runs with 320 on a block', 'scuff'), again('again, thinner')],
  },
  {
    id: 'nibs',
    name: 'nibs, dust',
    remedy: 'scuff 400, tack off',
    steps: [step('scuff 400, tack off', 'scuff')],
  },
  {
    id: 'fisheye',
    name: 'fisheye, craters',
    remedy: 'wash, scuff, barrier coat; test on a sample board',
    steps: [
      step('wash off oil, wax, silicone; clean rag each wipe', 'clean', {
        ...solventWash,
        needs: ['scuff'],
      }),
      step('scuff 320, dust off', 'scuff'),
      shellac('barrier coat: dewaxed shellac; sample board first'),
      again(),
    ],
  },
  {
    id: 'bleed',
    name: 'bleed, stain through',
    remedy: 'scuff, blocking primer, then coat again',
    steps: [
      step('scuff 320, dust off', 'scuff'),
      shellac('blocking primer: dewaxed shellac'),
      again(),
    ],
  },
  {
    id: 'blush',
    name: 'blush, white haze',
    remedy: 'warm dry air for a day; if it stays, scuff, recoat',
    steps: [
      leave('leave it in warm, dry air', 24 * hour, 'look again'),
      afterLeaving('look again: gone, then skip the next two', 'other'),
      step('scuff 400, dust off', 'scuff'),
      again('again, in dry air'),
    ],
  },
  {
    id: 'wrinkle',
    name: 'wrinkle, lifts',
    remedy: 'leave 3 days, strip back, barrier coat, again',
    steps: [
      leave('leave it alone to harden', 72 * hour, 'strip back'),
      afterLeaving('strip back what wrinkled or lifted', 'strip', {
        cautions: [stripCare, oldFinish],
      }),
      shellac('barrier coat: dewaxed shellac'),
      again('again, over sound coats only'),
    ],
  },
  none,
];

/** Troubles of a stain once it was wiped. */
const ofStains: readonly Trouble[] = [
  {
    id: 'blotch',
    name: 'blotch, uneven colour',
    remedy: 'wipe back, dry, washcoat, then again',
    steps: [
      step("wipe back hard with the stain's own thinner", 'clean', solventWash),
      leave('let the thinner out', 4 * hour, 'sand lightly'),
      afterLeaving('sand 220 lightly, dust off', 'sand bare, next grit'),
      shellac('washcoat: dewaxed shellac, thinned by half'),
      step('scuff 320 lightly, dust off', 'scuff', { needs: ['recoat'] }),
      again('again, gel or thinned; sample board first'),
    ],
  },
  {
    id: 'still tacky',
    name: 'still tacky, greasy',
    remedy: 'wipe off what was left on, a night more',
    steps: [
      step("wipe off what lies on top, stain's own thinner", 'clean', solventWash),
      leave('leave it, warm, air moving', 12 * hour, 'try it'),
    ],
  },
  none,
];

/** Troubles of what sets in clamps or in a hole. */
const ofGlue: readonly Trouble[] = [
  {
    id: 'open joint',
    name: 'joint stands open',
    remedy: 'take it apart, clean to bare wood, glue again',
    steps: [step('joint apart, old glue off to bare wood', 'reglue'), again()],
  },
  {
    id: 'chalky glue',
    name: 'glue white, crumbly',
    remedy: 'too cold: take it apart, warm shop and wood, again',
    steps: [step('joint apart, clean; shop and wood warm', 'reglue'), again('again, warm')],
  },
  {
    id: 'stays soft',
    name: 'stays soft, rubbery',
    remedy: 'leave the clamps on, warm the shop, try again',
    steps: [step('warm the shop, try the joint again', 'other', { untilRight: true })],
  },
  none,
];

/** Troubles of strippers and other wet work that is tried by scraping. */
const ofChemicals: readonly Trouble[] = [
  {
    id: 'hardly moves',
    name: 'finish hardly moves',
    remedy: 'a second round, kept wet and covered for longer',
    steps: [again('again, kept wet longer')],
  },
  {
    id: 'patches left',
    name: 'patches left',
    remedy: 'once more on the patches only',
    steps: [again('again, patches only')],
  },
  {
    id: 'wood darkens',
    name: 'wood darkens, furs up',
    remedy: 'off at once, rinse as the label says, dry',
    steps: [step('rinse as the label says, dry', 'rinse, neutralise')],
  },
  none,
];

/** Troubles of wood that dries after a bleach, a stripper or a rinse: nothing on it runs or sags (common practice, no source). */
const ofWetWood: readonly Trouble[] = [
  {
    id: 'still damp',
    name: 'still damp, cool to the hand',
    remedy: 'warm, air moving, a night more',
    steps: [leave('leave it, warm, air moving', 12 * hour, 'feel it again')],
  },
  {
    id: 'salts',
    name: 'white salts, crust',
    remedy: 'rinse as the label says, dry again; no dry sanding',
    steps: [step('rinse the salts off as the label says, dry', 'rinse, neutralise')],
  },
  {
    id: 'uneven',
    name: 'uneven, dark places left',
    remedy: 'once more on the whole surface',
    steps: [again()],
  },
  none,
];

const wetWork: ReadonlySet<StepClass> = new Set(['clean', 'strip', 'bleach', 'rinse, neutralise']);

/** What is offered where a window of that kind was tried, on a step of that class. */
export function troublesOf(kind: WindowKind, stepClass?: StepClass): readonly Trouble[] {
  if (kind === 'glue') return ofGlue;
  if (kind === 'coat' && stepClass === 'stain') return ofStains;
  if (kind === 'coat' && stepClass !== undefined && wetWork.has(stepClass)) return ofWetWood;
  return kind === 'chemical' || kind === 'pot' ? ofChemicals : ofCoats;
}

/** The steps that a remedy puts in after the step that had the trouble, ready to insert. */
export function remedySteps(trouble: Trouble, troubled: RemedyStep): readonly RemedyStep[] {
  const name = troubled.name.replace(/, again\b.*$/, '');
  return trouble.steps.map((remedy): RemedyStep =>
    'again' in remedy ? { ...troubled, name: `${name}, ${remedy.again}` } : remedy,
  );
}
