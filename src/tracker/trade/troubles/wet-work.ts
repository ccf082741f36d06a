import { hour } from '../../time/index.ts';
import { again, leave, step } from './remedies.ts';
import { noneOfThese, type Trouble } from './trouble.ts';

/** Troubles of what sets in clamps or in a hole. */
export const ofGlue: readonly Trouble[] = [
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
  noneOfThese,
];

/** Troubles of strippers and other wet work that is tried by scraping. */
export const ofChemicals: readonly Trouble[] = [
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
  noneOfThese,
];

/** Troubles of wood that dries after a bleach, a stripper or a rinse: nothing on it runs or sags (common practice, no source). */
export const ofWetWood: readonly Trouble[] = [
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
  noneOfThese,
];
