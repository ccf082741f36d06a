import { standingsAt } from '../../tracker/bench/index.ts';
import { rowWords } from '../../views/bench/row-words.ts';
import { air, clock, fullDay, shopDay } from '../../views/format/index.ts';
import type { Look } from '../line/look.ts';
import { inColumns } from './columns.ts';
import { textView } from './text-view.ts';

export function benchLines(look: Look): readonly string[] {
  const { bench, now, sense, shop, readings } = look;
  const reading = readings.at(-1);
  const view = textView(look);
  const told =
    reading === undefined
      ? 'no reading yet'
      : `${air(reading, shop.temperature)} read ${clock(reading.at, shop)}`;
  const rows = standingsAt(bench, now, sense).map((standing) => {
    const words = rowWords(standing, view);
    return [
      standing.piece === null ? '' : String(standing.piece.number),
      words.name,
      `${words.words} ${words.clock}`,
      words.then,
    ];
  });
  return [
    `Bench, ${fullDay(shopDay(now, shop.zone))} ${clock(now, shop)}, ${told}`,
    ...(rows.length === 0 ? ['The bench is empty.'] : ['', ...inColumns(rows)]),
  ];
}
