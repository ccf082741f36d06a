import { inventedShops } from '../../../tests/tracker/learning/invented-shops.ts';
import { heldAlong, heldLeftOut } from '../../../tests/tracker/learning/tried-coats.ts';

const pasts = [0, 1, 2, 3, 4, 6, 8, 12, 16];
/** So that the shares over all shops have standard errors well below 0.005; those of one shop have 0.01 and more. */
const products = 150;
const leftOut = { coats: 9, products: 20 };
const target = '0.78 to 0.92';

/** @param {number} share */
const isMet = (share) => share >= 0.78 && share <= 0.92;

/**
 * How often the next coat dries within the range for four in five, after so many that were tried: over the invented shops
 * on which no prior was chosen, together and one by one, and for coats that are left out of their own histories.
 *
 * @returns {Promise<readonly import('../report.mjs').Row[]>}
 */
export function dryingRows() {
  const shops = inventedShops
    .map((shop, i) => ({ shop, seed: 100 + i }))
    .filter(({ shop }) => !shop.isForChoosing);
  const told = shops.map(({ shop, seed }) => ({
    name: `${shop.habit.name}; label x ${shop.centre}, spread ${shop.spread}`,
    held: heldAlong(shop, pasts, products, seed),
    out: heldLeftOut(shop, leftOut.coats, leftOut.products, seed),
  }));
  const together = pasts.map((past, at) => {
    const shares = told.map(({ name, held }) => ({ name, share: held[at]?.share ?? NaN }));
    const squares = told.map(({ held }) => (held[at]?.standardError ?? NaN) ** 2);
    const error = Math.sqrt(squares.reduce((sum, one) => sum + one, 0)) / told.length;
    const row = rowOf(
      `next coat within the range for 4 in 5, after ${past} coats`,
      shares.toSorted((a, b) => a.share - b.share),
    );
    return { ...row, detail: `standard error ${error.toFixed(3)}; ${row.detail}` };
  });
  const out = rowOf(
    `a coat left out of ${leftOut.coats} within the range that the others tell`,
    told.map(({ name, out }) => ({ name, share: out })).toSorted((a, b) => a.share - b.share),
  );
  const each = told.map(({ name, held }) => ({
    what: name,
    target,
    measured: held.map(({ share }) => share.toFixed(2)).join(' '),
    met: held.every(({ share }) => isMet(share)),
    detail: `after ${pasts.join(' ')} coats; ${products} products, standard error at most ${Math.max(...held.map(({ standardError }) => standardError)).toFixed(3)}`,
  }));
  return Promise.resolve([...together, out, ...each]);
}

/**
 * @param {string} what
 * @param {readonly {name: string, share: number}[]} shares from the lowest
 * @returns {import('../report.mjs').Row}
 */
function rowOf(what, shares) {
  const share = shares.reduce((sum, one) => sum + one.share, 0) / shares.length;
  const [lowest, highest] = [shares[0], shares.at(-1)];
  return {
    what,
    target,
    measured: share.toFixed(2),
    met: isMet(share),
    detail: `${shares.filter((one) => isMet(one.share)).length} of ${shares.length} shops; lowest ${lowest?.share.toFixed(2)} (${lowest?.name}), highest ${highest?.share.toFixed(2)} (${highest?.name})`,
  };
}
