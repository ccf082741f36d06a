import { pieceOfTimer, standingsAt, type Standing } from '../tracker/bench/index.ts';
import { windowJson } from './json/bench-json.ts';
import { iso } from './json/iso.ts';
import { pieceName } from './json/names.ts';
import { sumsJson } from './json/sums-json.ts';
import type { WindowsJson } from './json-shapes/index.ts';
import { isFailure, type CommandFile } from './line/command.ts';
import { look } from './line/look.ts';
import { findOnBench } from './names/find-piece.ts';
import { windowLines } from './text/window-lines.ts';

export const windows: CommandFile = {
  takes: '[piece]',
  run: async (room, given) => {
    const shop = await look(room);
    if (isFailure(shop)) return shop;
    const { bench, now, sense } = shop;
    const typed = given.maybe('piece');
    const piece = typed === null ? null : findOnBench(typed, bench, 'Not shown');
    if (isFailure(piece)) return piece;
    /** The piece of a row, or the one that an odd timer is for. */
    const onWhat = ({ piece: its, timer }: Standing) => its ?? pieceOfTimer(bench, timer);
    const standings = standingsAt(bench, now, sense).filter(
      (standing) => piece === null || onWhat(standing)?.id === piece.id,
    );
    const { zone } = shop.shop;
    const oneJson = (standing: Standing) =>
      standing.windows.map((window) => {
        const its = onWhat(standing);
        return {
          ...windowJson(window, standing.piece, now, zone),
          piece: its === null ? null : pieceName(its),
          sums: sumsJson(window, shop),
        };
      });
    return {
      lines: () => windowLines(standings, shop),
      json: (): WindowsJson => ({ at: iso(now, zone), windows: standings.flatMap(oneJson) }),
    };
  },
};
