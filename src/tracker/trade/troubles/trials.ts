import { again, step } from './remedies.ts';
import { noneOfThese, type Trouble } from './trouble.ts';

/** Troubles that a test patch or sample board shows. `again` is the trial, so that its step goes on waiting. */
export const ofTrials: readonly Trouble[] = [
  {
    id: 'colour off',
    name: 'colour not as wanted',
    remedy: 'another board: other strength, colour or time',
    steps: [again('again, changed')],
  },
  {
    id: 'blotches',
    name: 'blotches',
    remedy: 'thin wash coat first, then another board',
    steps: [
      step('decide on a wash coat or gel stain against blotches', 'other'),
      again('again, with it'),
    ],
  },
  {
    id: 'hardly works',
    name: 'hardly works',
    remedy: 'longer or a second round on the patch',
    steps: [again('again, longer')],
  },
  {
    id: 'harms wood',
    name: 'darkens, furs, lifts veneer',
    remedy: 'rinse, dry; another product, another patch',
    steps: [
      step('rinse the patch, let it dry', 'rinse, neutralise'),
      again('again, other product'),
    ],
  },
  {
    id: 'does not hold',
    name: 'pulls away, does not hold',
    remedy: 'wash off oil and wax, barrier coat, again',
    steps: [
      step('wash off oil and wax, clean rag each wipe', 'clean', { fumes: true }),
      again('again, on a barrier coat'),
    ],
  },
  noneOfThese,
];
