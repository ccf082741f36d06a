import { isMixed, openPots, piecesOnBench, potCalled, type Pot } from '../tracker/bench/index.ts';
import type { Product } from '../tracker/trade/index.ts';
import { potStands } from '../views/pots/pot-stands.ts';
import { potJson } from './json/pot-json.ts';
import type { PotsJson } from './json-shapes/index.ts';
import { failure, isFailure, type CommandFile, type Failure } from './line/command.ts';
import { look, type Look } from './line/look.ts';
import { record } from './line/record.ts';
import { findNamed, namedById } from './names/match.ts';
import { readLibrary } from './read/find-schedule.ts';
import { whenGiven, whenOptions } from './read/when.ts';

/** `recoat pot`: what stands mixed on the bench. */
export const pot: CommandFile = {
  help: 'Mixed products that several pieces share: pot mix, pot wash-out.',
  run: async (room) => {
    const shop = await look(room);
    if (isFailure(shop)) return shop;
    const open = openPots(shop.bench);
    const view = { now: shop.now, snapshot: shop };
    return {
      lines: () =>
        open.length === 0
          ? ['No pot is mixed.']
          : open.map((each) => `${potCalled(each)}: ${potStands(each, view)}`),
      json: (): PotsJson => ({ pots: open.map((each) => potJson(each, shop.shop.zone)) }),
    };
  },
};

export const potMix: CommandFile = {
  takes: '<product...>',
  options: whenOptions,
  help: 'A product with a pot life, by its id or the beginning of its name. As a piece on the bench carries it, if one does.',
  run: async (room, given) => {
    const library = await readLibrary(room);
    return record(room, (shop) => {
      const product = mixableCalled(
        given.sentence('product'),
        shop,
        Object.values(library.products),
      );
      if (isFailure(product)) return product;
      const when = whenGiven(given, 'Not mixed', shop);
      if (isFailure(when)) return when;
      return { ...when, intents: [{ do: 'mix pot', product }] };
    });
  },
};

function mixableCalled(
  typed: string,
  { bench }: Look,
  library: readonly Product[],
): Product | Failure {
  const carried = piecesOnBench(bench).flatMap((piece) => Object.values(piece.products));
  const all = [...new Map([...library, ...carried].map((each) => [each.id, each])).values()];
  const found = findNamed(typed, all.map(namedById), { not: 'Not mixed', what: 'product' });
  if (isFailure(found)) return found;
  if (isMixed(found)) return found;
  return failure('refused', `Not mixed: ${found.name} is used as it is; it has no pot life.`);
}

export const potWashOut: CommandFile = {
  takes: '[letter]',
  options: whenOptions,
  help: 'The letter may be left out where one pot is open.',
  run: (room, given) =>
    record(room, (shop) => {
      const found = openPotCalled(given.maybe('letter'), shop);
      if (isFailure(found)) return found;
      const when = whenGiven(given, 'Not washed out', shop);
      if (isFailure(when)) return when;
      return { ...when, intents: [{ do: 'wash out pot', pot: found.id }] };
    }),
};

function openPotCalled(letter: string | null, { bench }: Look): Pot | Failure {
  const open = openPots(bench);
  const letters = open.map((each) => each.letter);
  const [only, another] = open;
  if (only === undefined) return failure('refused', 'Not washed out: no pot is mixed.');
  if (letter === null)
    return another === undefined
      ? only
      : failure('usage', `Not washed out: say which pot: ${letters.join(', ')}.`);
  const wanted = letter.trim().toUpperCase();
  const found = open.find((each) => each.letter === wanted);
  return found ?? failure('unknown', `Not washed out: there is no open pot "${letter}".`, letters);
}
