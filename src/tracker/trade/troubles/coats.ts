import { hour } from '../../time/index.ts';
import { afterLeaving, again, leave, shellac, solventWash, step } from './remedies.ts';
import { noneOfThese, type Trouble } from './trouble.ts';

const stripCare = 'Label first. Gloves, goggles, fresh air, organic-vapour mask.';
const oldFinish =
  'Through to an old finish: lead test first, wet, P100. Not tested counts as lead.';

/** Troubles of a drying coat, those of the brush and gun first. */
export const ofCoats: readonly Trouble[] = [
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
  noneOfThese,
];

/** Troubles of a stain once it was wiped. */
export const ofStains: readonly Trouble[] = [
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
  noneOfThese,
];
