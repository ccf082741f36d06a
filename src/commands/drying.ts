import { createLearning } from '../shell/learning.ts';
import { coatsKeptOut, dryingOfProduct, type DryingBook } from '../tracker/learning/index.ts';
import type { Product } from '../tracker/trade/index.ts';
import { dryingJson } from './json/drying-json.ts';
import { isFailure, type CommandFile, type Failure } from './line/command.ts';
import { look, type Look } from './line/look.ts';
import type { Room } from './line/room.ts';
import { findNamed, namedById } from './names/match.ts';
import { readLibrary } from './read/find-schedule.ts';
import { dryingLines } from './text/drying-lines.ts';

export const drying: CommandFile = {
  takes: '[product...]',
  help: 'Without a product: those on the bench, and those that you have tried. Times count from the last stroke.',
  run: async (room, given) => {
    const shop = await look(room);
    if (isFailure(shop)) return shop;
    const book = createLearning(room.folder).book(shop.bench, shop.readings);
    const products = await chosen(given.sentence('product'), shop, book, room);
    if (isFailure(products)) return products;
    const keptOut = coatsKeptOut(shop.bench);
    const told = products.map((product) => ({
      product,
      milestones: dryingOfProduct(product, book, shop.settings.air, keptOut),
    }));
    return { lines: () => dryingLines(told, shop), json: () => dryingJson(told, shop) };
  },
};

async function chosen(
  typed: string,
  { bench }: Look,
  book: DryingBook,
  room: Room,
): Promise<readonly Product[] | Failure> {
  const onBench = [...bench.pieces.values()]
    .filter(({ place }) => place === 'bench')
    .flatMap(({ products }) => Object.values(products));
  const { products } = await readLibrary(room);
  // What a piece carries is what its windows open by; the last one that came has the newest label.
  const known = new Map([...Object.values(products), ...onBench].map((each) => [each.id, each]));
  const all = [...known.values()]
    .filter((product) => dryingOfProduct(product, book, true).length > 0)
    .sort((a, b) => (a.id < b.id ? -1 : 1));
  if (typed === '') {
    const used = new Set(onBench.map(({ id }) => id));
    return all.filter(
      (product) =>
        used.has(product.id) || dryingOfProduct(product, book, true).some(({ coats }) => coats > 0),
    );
  }
  const named = all.map(namedById);
  const found = findNamed(typed, named, { not: 'Not shown', what: 'product that dries' });
  return isFailure(found) ? found : [found];
}
