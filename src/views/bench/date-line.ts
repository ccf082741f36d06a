import type { Standing } from '../../tracker/bench/index.ts';
import { dryingPaceAt, readingHoldsFor } from '../../tracker/windows/index.ts';
import { lineOf, segment, spread, width, type Line } from '../drawing/index.ts';
import {
  clock,
  day,
  dewPoint,
  dryingWords,
  humidity,
  temperature,
  whenInWords,
} from '../format/index.ts';
import { keyMapWith, keyOf } from '../keys/key-map.ts';
import type { View } from '../screen.ts';

/** Row 1: clock and day at the left, the air in the shop and what it does to the coats now drying at the right. */
export function dateLine(view: View, standings: readonly Standing[]): Line {
  const { now, snapshot } = view;
  const { shop } = snapshot;
  const reading = snapshot.readings.at(-1);
  const narrow = view.columns < 80;
  const left = [segment(clock(now, shop)), segment(`${narrow ? ' ' : '  '}${day(now, shop)}`)];
  const notes = keyOf(keyMapWith(snapshot.settings.keys), 'conditions');
  if (reading === undefined)
    return spread(
      left,
      lineOf(narrow ? `air not read: ${notes}` : `air not read yet: ${notes} notes it`, 'quiet'),
      view.columns,
    );
  const isOld = now - reading.at > readingHoldsFor;
  const air = [temperature(reading.tempC, shop.temperature), humidity(reading.rh)];
  const at = whenInWords(reading.at, now, shop);
  // The key stands beside it: until the next reading, what dries is counted by the night low.
  const old = isOld ? `, old: ${notes}` : '';
  const dew = `dew ${dewPoint(reading, shop.temperature)}`;
  const windows = standings.flatMap((standing) => standing.windows);
  const pace = dryingWords(dryingPaceAt(windows, now, snapshot.sense));
  const slow = pace === '' ? [] : [pace];
  const brief =
    pace === '' ? [] : [pace.replace('coats dry', 'coats x').replace(/ x as long$/, '')];
  const told = narrow
    ? [[...air, `at ${at}${old}`].join(' '), [...air, `at ${at}`].join(' ')]
    : [
        [...air, dew, ...slow, `read ${at}${old}`],
        [...air, dew, ...brief, `read ${at}${old}`],
        [...air, ...brief, `read ${at}${old}`],
        [...air, `read ${at}${old}`],
      ].map((words) => words.join('  '));
  const room = view.columns - left.reduce((sum, { text }) => sum + width(text), 0) - 2;
  const fits = told.find((words) => width(words) <= room) ?? told.at(-1) ?? '';
  return spread(left, lineOf(fits, isOld ? 'quiet' : 'text'), view.columns);
}
