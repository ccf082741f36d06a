import { standingsAt, type Standing } from '../tracker/bench/index.ts';
import { windowJson } from './json/bench-json.ts';
import { iso } from './json/iso.ts';
import { pieceName } from './json/names.ts';
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
    const standings = standingsAt(bench, now, sense).filter(
      (standing) => piece === null || standing.piece?.id === piece.id,
    );
    const { zone } = shop.shop;
    const oneJson = ({ piece: its, windows: running }: Standing) =>
      running.map((window) => ({
        ...windowJson(window, its, now, zone),
        piece: its === null ? null : pieceName(its),
      }));
    return {
      lines: () => windowLines(standings, now, shop.shop),
      json: (): WindowsJson => ({ at: iso(now, zone), windows: standings.flatMap(oneJson) }),
    };
  },
};
