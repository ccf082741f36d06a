import { sessionHolding, stepUnderWay } from '../tracker/bench/index.ts';
import { cautionsOfStep } from '../tracker/cautions/index.ts';
import { cautionJson } from './json/caution-json.ts';
import { pieceName, stepName } from './json/names.ts';
import type { CautionsJson } from './json-shapes/index.ts';
import { airAgainst, airLine } from './line/air-told.ts';
import { isFailure, type CommandFile } from './line/command.ts';
import { lookWithRules } from './line/look-with-rules.ts';
import { findOnBench } from './names/find-piece.ts';
import { findStep } from './names/find-step.ts';
import { cautionLine } from './text/caution-lines.ts';

const not = 'Not shown';

export const cautions: CommandFile = {
  takes: '<piece>',
  options: [['--step <name>', 'its name or place in the list; else the one that is next']],
  help: 'Everything to be careful about in that step, in full: of its product, of such work, of what was put on the piece before, of what goes on beside it now, and of the air. Label, local codes and licensed practice come first.',
  run: async (room, given) => {
    const shop = await lookWithRules(room);
    if (isFailure(shop)) return shop;
    const piece = findOnBench(given.word('piece'), shop.bench, not);
    if (isFailure(piece)) return piece;
    const typed = given.maybe('step');
    const step =
      typed === null
        ? stepUnderWay(piece, null, sessionHolding(shop.bench, piece.id))
        : findStep(typed, piece, not);
    if (isFailure(step)) return step;
    const air = step === null ? [] : airAgainst(piece, step, shop);
    const all = step === null ? [] : cautionsOfStep(piece, step, shop).all;
    return {
      lines: () => [
        step === null ? `${piece.name}: every step is done` : `${piece.name}, ${step.name}`,
        ...all.map((each) => cautionLine(each, shop)),
        ...air.map(airLine),
        'Label, local codes and licensed practice come first.',
      ],
      json: (): CautionsJson => ({
        piece: pieceName(piece),
        step: step === null ? null : stepName(piece, step.id),
        cautions: all.map((each) => cautionJson(each, shop.shop.zone)),
        air,
      }),
    };
  },
};
