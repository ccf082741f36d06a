import { ragsFrom } from '../tracker/overnight/index.ts';
import { calledPiece } from '../views/parts/called-piece.ts';
import { ragCaution, ragQuestion } from '../views/shut-up-shop/question-words.ts';
import { pieceName } from './json/names.ts';
import type { RagsJson } from './json-shapes/index.ts';
import { isFailure, type CommandFile } from './line/command.ts';
import { look } from './line/look.ts';
import { record } from './line/record.ts';
import { whenGiven, whenOptions } from './read/when.ts';

/** Pieces whose oily rags nobody has dealt with yet. */
export const rags: CommandFile = {
  help: 'Rags, pads, steel wool and sanding dust of oil, oil stain, oil varnish and alkyd. Asked about until: recoat rags dealt-with',
  run: async (room) => {
    const shop = await look(room);
    if (isFailure(shop)) return shop;
    const pieces = ragsFrom(shop.bench);
    return {
      lines: () =>
        pieces.length === 0
          ? ['No oily rags are left to deal with, as far as was told.']
          : [`Oily rags from ${pieces.map(calledPiece).join(', ')}: ${ragQuestion}`, ragCaution],
      json: (): RagsJson => ({ rags: pieces.map(pieceName) }),
    };
  },
};

export const ragsDealtWith: CommandFile = {
  options: whenOptions,
  help: 'All that was used until then. It is asked again after the next oily product.',
  run: (room, given) =>
    record(room, (shop) => {
      const when = whenGiven(given, 'Not noted', shop);
      if (isFailure(when)) return when;
      return { ...when, intents: [{ do: 'deal with rags' }] };
    }),
};
