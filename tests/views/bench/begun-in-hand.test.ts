import { expect, test } from 'vitest';
import { plainBench, spokenBench } from '../../../src/views/plain/index.ts';
import { shippedProduct } from '../../support/shipped.ts';
import { at, Facts, snapshotOf, step } from '../support/bench-of.ts';
import { deskOf } from '../support/desk-of.ts';

/** A stripper that was put on at 14:02 and is still in hand. */
const stripping = () =>
  new Facts()
    .piece(
      '24 13:00',
      1,
      'Oak settle',
      [
        step('strip', 'strip', { product: 'solvent-stripper' }),
        step('sand', 'sand 120', { needs: ['dry'] }),
      ],
      [shippedProduct('solvent-stripper')],
    )
    .pickUp('24 14:00', 1, 'strip')
    .stamp('24 14:02', 1, 'strip', 'first-stroke');

const shownAt = (when: string, facts = stripping()) =>
  deskOf({ now: at(when), facts: facts.list, settings: { farView: 0 } });

test.each([
  ['24 14:12', 'working till     14:32 20 min', 'test scrape from 14:32; strip, 1 of 2'],
  ['24 14:40', 'now, till        16:02 82 min', 'test scrape, by 16:02; strip, 1 of 2'],
  ['24 16:07', 'late since       16:02  5 min', 'drying on: top up or cover it; strip, 1 of 2'],
])('in hand at %s a dwell says how it stands, what to do and what helps', (when, row, second) => {
  const rows = shownAt(when).rows();
  expect(rows[5]).toContain(row);
  expect(rows[6]).toContain(second);
  expect(rows[3]).toContain('in hand  1 Oak settle: strip');
  const [verb] = second.split(';');
  expect(rows[1]).toContain(`next     1 Oak settle: ${verb}`);
});

test('what is open in hand and will cost work is called before what is still to open', () => {
  const oil = step('oil', 'oil', { product: 'oil-stain' });
  const facts = stripping()
    .piece(
      '24 13:01',
      2,
      'Plant stand',
      [oil, step('next', 'varnish', { needs: ['recoat'] })],
      [shippedProduct('oil-stain')],
    )
    .done('24 02:45', 2, 'oil');
  const called = (when: string) => shownAt(when, facts).rows().slice(1, 3);
  expect(called('24 14:40')).toEqual([
    'next     1 Oak settle: test scrape, by 16:02',
    '         2 Plant stand: try it from 14:45',
  ]);
});

test('on a narrow screen, as text and aloud likewise', () => {
  expect(shownAt('24 14:12').text([40, 20])).toMatch(/working till +14:32 20 min/);
  const input = { ...snapshotOf(stripping().bench()), now: at('24 14:12') };
  expect(plainBench(input)).toContain('working till 14:32  strip; open to 16:02');
  expect(spokenBench(input)).toContain('strip: working till 14 32, 20 minutes left');
  expect(spokenBench(input)).toContain(' In hand.');
});

test('once it is scraped off, the row says since when it is in hand', () => {
  const done = stripping().done('24 14:50', 1, 'strip');
  expect(shownAt('24 14:52', done).rows()[5]).toContain('in hand since    14:00 52 min');
});

test('while a pass goes on the row says since when it is in hand, and after it when the next one may', () => {
  const enamel = step('enamel', 'enamel', {
    product: 'aerosol-enamel',
    passes: 3,
    stepClass: 'coat, sprayed',
  });
  const spraying = () =>
    new Facts()
      .piece('24 13:00', 1, 'Oak settle', [enamel], [shippedProduct('aerosol-enamel')])
      .pickUp('24 14:00', 1, 'enamel')
      .stamp('24 14:01', 1, 'enamel', 'first-stroke');
  expect(shownAt('24 14:02', spraying()).rows()[5]).toContain('in hand since    14:00  2 min');
  const between = spraying().stamp('24 14:03', 1, 'enamel', 'last-stroke');
  const rows = shownAt('24 14:04', between).rows();
  expect(rows[5]).toContain('pass 2 of 3 from 14:08   4:00');
  expect(rows[6]).toContain('open to 15:01; enamel, pass 1 of 3, 1 of 1');
  expect(shownAt('24 14:10', between).rows()[6]).toContain('then keep off till Thu 14:03; enamel');
});

test('a section that flashed off says so in its row, and which it is', () => {
  const wash = step('wash', 'wash off', { product: 'refinisher' });
  const facts = new Facts()
    .piece('24 13:00', 1, 'Oak settle', [wash], [shippedProduct('refinisher')])
    .pickUp('24 14:00', 1, 'wash')
    .stamp('24 14:01', 1, 'wash', 'section-on', { section: 3 });
  const rows = shownAt('24 14:08', facts).rows();
  expect(rows[5]).toContain('late since       14:06  2 min');
  expect(rows[6]).toContain('it has flashed off: wet it again; section 3, wash off, 1 of 1');
});
