import { hour, minute } from '../time/index.ts';
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

const oldFinish =
  'Through to an old finish: lead test first, wet, P100. Not tested counts as lead.';

const none: Trouble = {
  id: 'none of these',
  name: 'none of these',
  remedy: 'write what it was',
  steps: [],
};

/** Troubles of a drying coat. All remedies: common practice, no source; the label in the hand comes first. */
const ofCoats: readonly Trouble[] = [
  {
    id: 'stays soft',
    name: 'stays soft',
    remedy: 'warm the shop, wait; oily or thick: strip back',
    steps: [step('warm the shop, try it again', 'other', { untilRight: true })],
  },
  {
    id: 'runs',
    name: 'runs, sags',
    remedy: 'wait for scuff, level with 320, coat thinner',
    steps: [step('level runs with 320 on a block', 'scuff'), again('again, thinner')],
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
    remedy: 'wait a dry day; if it stays, scuff and recoat',
    steps: [
      step('look again on a dry day: gone, then skip the next two', 'other'),
      step('scuff 400, dust off', 'scuff'),
      again('again, in dry air'),
    ],
  },
  {
    id: 'nibs',
    name: 'nibs, dust',
    remedy: 'scuff 400, tack off',
    steps: [step('scuff 400, tack off', 'scuff')],
  },
  {
    id: 'craters',
    name: 'craters, pulls away',
    remedy: 'wash, scuff, barrier coat; test on a sample board',
    steps: [
      step('wash off oil and wax, clean rag each wipe', 'clean', {
        fumes: true,
        cautions: [
          'Label first. Wash solvent burns: no flame or spark, fresh air, organic-vapour mask.',
        ],
      }),
      step('scuff 320, dust off', 'scuff'),
      shellac('barrier coat: dewaxed shellac; sample board first'),
      again(),
    ],
  },
  {
    id: 'lifts',
    name: 'lifts, wrinkles',
    remedy: 'leave it to harden; strip back what lifted',
    steps: [
      step('strip back what lifted', 'strip', {
        cautions: ['Label first. Gloves, goggles, fresh air, organic-vapour mask.', oldFinish],
      }),
      again('again, over sound coats only'),
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

/** What is offered where a window of that kind was tried. */
export function troublesOf(kind: WindowKind): readonly Trouble[] {
  if (kind === 'glue') return ofGlue;
  return kind === 'chemical' || kind === 'pot' ? ofChemicals : ofCoats;
}

/** The steps that a remedy puts in after the step that had the trouble, ready to insert. */
export function remedySteps(trouble: Trouble, troubled: RemedyStep): readonly RemedyStep[] {
  const name = troubled.name.replace(/, again\b.*$/, '');
  return trouble.steps.map((remedy): RemedyStep =>
    'again' in remedy ? { ...troubled, name: `${name}, ${remedy.again}` } : remedy,
  );
}
