import type { PieceDescription } from '../../tracker/bench/index.ts';

type PastPlan = {
  readonly name: string;
  readonly schedule: string;
  readonly describe: PieceDescription;
  readonly note?: string;
};

/** Pieces of the past half year, oldest first. */
export const pastPlans: readonly PastPlan[] = [
  {
    name: 'Music stand',
    schedule: 'strip-stain-varnish',
    describe: { kind: 'stand', wood: 'hard', areaM2: 0.4 },
  },
  {
    name: 'Shoe bench',
    schedule: 'paint-and-wax',
    describe: { kind: 'bench', wood: 'soft', areaM2: 1.1 },
  },
  {
    name: 'Blanket box',
    schedule: 'strip-stain-varnish',
    describe: { kind: 'box', wood: 'hard', areaM2: 2.2, fittings: 5, yearMade: 1925 },
    note: 'two layers of paint under the varnish',
  },
  {
    name: 'Towel rail',
    schedule: 'aerosol-enamel',
    describe: { kind: 'rail', wood: 'hard', areaM2: 0.3 },
  },
  {
    name: 'Step stool',
    schedule: 'bleach-and-clear',
    describe: { kind: 'stool', wood: 'hard', areaM2: 0.6 },
  },
  {
    name: 'Coat stand',
    schedule: 'glue-up-repair',
    describe: { kind: 'stand', wood: 'hard', areaM2: 0.7, joints: 5 },
  },
  {
    name: 'Tea trolley',
    schedule: 'strip-stain-varnish',
    describe: { kind: 'trolley', wood: 'hard', areaM2: 1.6, yearMade: 1955 },
  },
  {
    name: 'Corner shelf',
    schedule: 'paint-and-wax',
    describe: { kind: 'shelf', wood: 'soft', areaM2: 0.8 },
  },
  {
    name: 'Writing slope',
    schedule: 'bleach-and-clear',
    describe: { kind: 'box', wood: 'hard', areaM2: 0.5 },
  },
  {
    name: 'Nest of tables',
    schedule: 'strip-stain-varnish',
    describe: { kind: 'tables', wood: 'hard', areaM2: 2.4 },
  },
  {
    name: 'Umbrella stand',
    schedule: 'aerosol-enamel',
    describe: { kind: 'stand', wood: 'soft', areaM2: 0.5 },
  },
  {
    name: 'Wash stand',
    schedule: 'bleach-and-clear',
    describe: { kind: 'stand', wood: 'soft', areaM2: 1.3 },
  },
  {
    name: 'Window seat',
    schedule: 'paint-and-wax',
    describe: { kind: 'seat', wood: 'soft', areaM2: 1.9 },
  },
  {
    name: 'Card table',
    schedule: 'strip-stain-varnish',
    describe: { kind: 'table', wood: 'hard', areaM2: 1.2, yearMade: 1938 },
  },
];
