import { expect, test } from 'vitest';
import { readScheduleFolders } from '../../src/persist/schedules/index.ts';
import { minute } from '../../src/tracker/time/index.ts';
import { milestones, opensAt, type Milestone } from '../../src/tracker/windows/index.ts';
import { coatOn } from './work.ts';

/**
 * Stages of drying in the order of ASTM D1640 (names and order from memory, the wording of dry-to-touch seen at second
 * hand), and those that parts of ISO 9117 test: surface dry (part 3, title seen), print-free (part 6, from memory),
 * through dry (part 1, title seen).
 */
const astmStages = [
  'set-to-touch',
  'dust-free',
  'tack-free',
  'dry-to-touch',
  'dry-hard',
  'dry-through',
  'dry-to-recoat',
  'print-free',
];
const isoStates = ['surface dry', 'print-free', 'through dry'];

/** What a milestone means in the words of the standards; the trade alone names the others. */
const inTheStandards: Partial<Record<Milestone, string>> = {
  'dust-free': 'dust-free',
  recoat: 'dry-to-recoat',
  'turn over': 'print-free',
  'full cure': 'through dry',
};

/** Recoated while the coat below is still tacky, so "recoat" comes before "dust-free": green epoxy, and within the hour. */
const recoatedTacky = new Set([
  'epoxy-coat',
  'aerosol-enamel',
  'aerosol-acrylic',
  'oil-polyurethane-two-windows',
]);

const { products } = await readScheduleFolders({
  built: null,
  templates: new URL('../../templates/', import.meta.url).pathname,
  own: null,
});
const coats = Object.values(products).filter((product) =>
  product.windows.some((rule) => rule.milestone === 'recoat'),
);

test('milestones that a standard knows carry a stage of ASTM D1640 or a state of ISO 9117', () => {
  for (const [name, stage] of Object.entries(inTheStandards)) {
    expect(milestones).toContain(name);
    expect([...astmStages, ...isoStates]).toContain(stage);
  }
  expect(milestones).toContain('dust-free' satisfies (typeof astmStages)[number]);
});

test.each(coats.map((product) => [product.id, product] as const))(
  '%s reaches its stages in the order of ASTM D1640',
  (id, product) => {
    const work = coatOn(product);
    const reached = work
      .windows()
      .filter(({ rule }) => rule.milestone !== undefined && rule.milestone in inTheStandards)
      .filter(({ rule }) => !(recoatedTacky.has(id) && rule.milestone === 'dust-free'))
      .map((window) => ({
        milestone: window.rule.milestone as Milestone,
        at: opensAt(window) ?? 0,
      }));
    const stage = ({ milestone }: { milestone: Milestone }): number =>
      [...astmStages, 'through dry'].indexOf(inTheStandards[milestone] ?? '');
    const byStage = [...reached].sort((one, other) => stage(one) - stage(other));
    for (const [index, { at }] of byStage.entries()) {
      expect(at).toBeGreaterThanOrEqual(byStage[index - 1]?.at ?? 0);
    }
    expect(byStage.length).toBeGreaterThanOrEqual(1);
  },
);

test('those recoated while tacky do open before they are dust-free, so the exception is one', () => {
  for (const id of recoatedTacky) {
    const product = products[id];
    if (product === undefined) throw new Error(`no product ${id}`);
    const work = coatOn(product, 2 * minute);
    expect(opensAt(work.window('recoat'))).toBeLessThan(opensAt(work.window('dust-free')) ?? 0);
  }
});
