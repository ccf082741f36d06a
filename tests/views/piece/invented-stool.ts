import { hour } from '../../../src/tracker/time/index.ts';
import type { Product, Step } from '../../../src/tracker/trade/index.ts';
import type { WindowRule } from '../../../src/tracker/windows/index.ts';
import { bleach, Facts, product, recoat, step } from '../support/bench-of.ts';

/** A milestone of a coat that opens some time after the last stroke. */
const milestone = (name: NonNullable<WindowRule['milestone']>, opens: number): WindowRule => ({
  ...recoat(opens, null),
  id: name,
  verb: name,
  milestone: name,
});

const minutes = (typical: number, low: number, high: number): Pick<Step, 'minutes'> => ({
  minutes: { typical, low, high },
});

const coat = { stepClass: 'coat, brushed', product: 'clear', ...minutes(23, 19, 27) } as const;
const scuff = { stepClass: 'scuff', needs: ['scuff'], ...minutes(11, 9, 13), dusty: true } as const;

export const clear: Product = product(
  'clear',
  [milestone('scuff', 2 * hour), recoat(3 * hour, 12 * hour), milestone('wrap', 72 * hour)],
  {
    name: 'Waterborne clear',
    chemistry: 'waterborne',
    cautions: ['Label first. Fresh air while it dries.', 'Below 10 C it does not form a film.'],
  },
);

export const twoPartBleach: Product = product('bleach', [bleach], {
  name: 'Two-part bleach',
  deadly: true,
  cautions: [
    'Lye and peroxide blind and burn: face shield, long gloves.',
    'Never A and B in one vessel.',
  ],
});

export const stoolSteps: readonly Step[] = [
  step('look', 'look over, lead test', { stepClass: 'look over', ...minutes(16, 12, 20) }),
  step('strip', 'strip, test scrape', { stepClass: 'strip', ...minutes(65, 50, 81) }),
  step('bleach', 'bleach A, then B', {
    stepClass: 'bleach',
    product: 'bleach',
    ...minutes(20, 14, 32),
    stamps: [
      { event: 'first-stroke', agent: 'A', says: 'A, first stroke on' },
      { event: 'first-stroke', agent: 'B', says: 'B, first stroke on' },
    ],
  }),
  step('coat1', 'clear coat 1 of 3', coat),
  step('scuff1', 'scuff 320', { ...scuff, grit: 320, cautions: ['Dust mask on.'] }),
  step('coat2', 'clear coat 2 of 3', { ...coat, needs: ['recoat'] }),
  step('scuff2', 'scuff 400', { ...scuff, grit: 400, cautions: ['Dust mask on.'] }),
  step('coat3', 'clear coat 3 of 3', { ...coat, needs: ['recoat'] }),
  step('wrap', 'refit, wrap', {
    stepClass: 'refit, wrap',
    needs: ['wrap'],
    ...minutes(30, 20, 45),
  }),
];

/** A beech stool on Tuesday 24 November: second coat on from 11:00 to 11:22, everything before it done. */
export function stool(): Facts {
  const facts = new Facts()
    .piece('16 09:00', 3, 'Beech stool', stoolSteps, [clear, twoPartBleach])
    .tell('16 09:01', 'piece-described', {
      piece: 'p3',
      changes: { wood: 'hard', areaM2: 1.9, yearMade: 1950, promised: '2026-11-28' },
    });
  const worked = (when: string, until: string, id: string): void => {
    facts.tell(when, 'picked-up', {
      session: `s-${id}`,
      targets: [{ piece: 'p3', part: null, step: id }],
      hand: 1,
    });
    facts.done(until, 3, id);
    facts.putDown(until, `s-${id}`);
  };
  worked('16 09:10', '16 09:28', 'look');
  worked('16 09:35', '16 10:39', 'strip');
  facts
    .tell('18 08:54', 'picked-up', {
      session: 's-bleach',
      targets: [{ piece: 'p3', part: null, step: 'bleach' }],
      hand: 1,
    })
    .stamp('18 09:02', 3, 'bleach', 'first-stroke', { agent: 'A' })
    .stamp('18 09:13', 3, 'bleach', 'first-stroke', { agent: 'B' })
    .done('18 09:16', 3, 'bleach')
    .putDown('18 09:16', 's-bleach')
    .tell('23 13:04', 'picked-up', {
      session: 's-coat1',
      targets: [{ piece: 'p3', part: null, step: 'coat1' }],
      hand: 1,
    })
    .stamp('23 13:10', 3, 'coat1', 'first-stroke')
    .done('23 13:25', 3, 'coat1')
    .putDown('23 13:25', 's-coat1')
    .tell('23 17:15', 'checked', {
      piece: 'p3',
      part: null,
      step: 'coat1',
      window: 'p3/coat1/scuff//1/',
      finding: 'ready',
      air: null,
    });
  worked('24 10:20', '24 10:32', 'scuff1');
  return facts
    .tell('24 10:58', 'picked-up', {
      session: 's-coat2',
      targets: [{ piece: 'p3', part: null, step: 'coat2' }],
      hand: 1,
    })
    .stamp('24 11:00', 3, 'coat2', 'first-stroke')
    .done('24 11:22', 3, 'coat2')
    .putDown('24 11:24', 's-coat2');
}

/** The same stool before anything was done to it. */
export const rawStool = (): Facts =>
  new Facts().piece('16 09:00', 3, 'Beech stool', stoolSteps, [clear, twoPartBleach]);
