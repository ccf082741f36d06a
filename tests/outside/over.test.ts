import { expect, test } from 'vitest';
import { readRules } from '../../src/persist/schedules/index.ts';
import { over, type First, type Verdict } from '../../src/tracker/trade/index.ts';

const templates = new URL('../../templates/', import.meta.url).pathname;
const { rules } = await readRules({ built: null, templates });

type Expected = readonly [below: string, above: string, verdict: Verdict, first?: First];

/** What finishers tell each other (common practice, no source, unless a source stands beside it). */
const trade: readonly Expected[] = [
  ['paste wax', 'paste wax', 'yes'],
  ['paste wax', 'waterborne polyurethane', 'no'],
  ['paste wax', 'shellac', 'no'],
  ['paste wax', 'chalk-type paint', 'no'],
  ['oil stain', 'waterborne polyurethane', 'after', 'dry'],
  ['oil stain', 'oil-based polyurethane', 'after', 'dry'],
  ['oil stain', 'nitrocellulose lacquer', 'after', 'dry'],
  ['traditional varnish', 'nitrocellulose lacquer', 'no'],
  ['oil-based polyurethane', 'pre-catalysed lacquer', 'no'],
  ['shellac', 'conversion varnish', 'no'],
  ['dewaxed shellac', 'conversion varnish', 'no'],
  ['waxy shellac', 'oil-based polyurethane', 'no'],
  ['waxy shellac', 'waterborne polyurethane', 'no'],
  ['dewaxed shellac', 'oil-based polyurethane', 'after', 'dry'],
  ['dewaxed shellac', 'waterborne polyurethane', 'after', 'dry'],
  ['boiled linseed oil', 'waterborne polyurethane', 'after', 'a step between'],
  ['tung oil', 'oil-based polyurethane', 'after', 'dry'],
  ['acrylic paint', 'alkyd enamel', 'after', 'scuffed'],
  ['sanding sealer', 'oil-based polyurethane', 'after', 'judgement'],
  ['sanding sealer', 'nitrocellulose lacquer', 'yes'],
  ['aerosol acrylic', 'nitrocellulose lacquer', 'yes'],
  ['nitrocellulose lacquer', 'aerosol acrylic', 'yes'],
  ['aerosol acrylic', 'aerosol alkyd enamel', 'after', 'scuffed'],
  ['acrylic paint', 'aerosol acrylic', 'after', 'judgement'],
  ['traditional varnish', 'aerosol acrylic', 'no'],
  ['milk paint', 'boiled linseed oil', 'after', 'dry'],
  ['chalk-type paint', 'paste wax', 'after', 'dry'],
  ['chalk-type paint', 'waterborne polyurethane', 'after', 'dry'],
  ['two-part epoxy', 'traditional varnish', 'after', 'scuffed'],
  // Glue goes into joints: what lies on the faces is no verdict on them.
  ['old finish', 'liquid hide glue', 'after', 'judgement'],
  ['aliphatic PVA glue', 'oil stain', 'after', 'judgement'],
  ['oil paste wood filler', 'nitrocellulose lacquer', 'after', 'dry'],
  ['water dye stain', 'acrylic paint', 'after', 'a step between'],
  // Wood Handbook FPL-GTR-190, ch. 16: a stain-blocking primer over extractive-rich wood.
  ['bare wood', 'acrylic paint', 'after', 'judgement'],
  ['bare wood', 'stain-blocking latex primer', 'yes'],
  // FPL report 1705: finish and wax must be fully off before bleaching.
  ['traditional varnish', 'two-part bleach', 'no'],
  ['paste wax', 'oxalic acid', 'no'],
  // Washington State Department of Health, second hand: chlorine bleach with acid, and with peroxide.
  ['chlorine bleach', 'acid rinse', 'no'],
  ['chlorine bleach', 'oxalic acid', 'no'],
  ['chlorine bleach', 'two-part bleach', 'no'],
];

test.each(trade.map((each) => [each]))('%j', ([below, above, verdict, first]) => {
  const { row } = over(rules.over, below, above);
  expect([row?.verdict, row?.first]).toEqual([verdict, first]);
});

test('lacquer over oil stain waits 24 hours at the least (common practice: 24 to 72)', () => {
  expect(over(rules.over, 'oil stain', 'nitrocellulose lacquer').row?.wait).toBe(24 * 3_600_000);
});
