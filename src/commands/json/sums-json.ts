import { explainStretch } from '../../tracker/bench/index.ts';
import { minute } from '../../tracker/time/index.ts';
import type { Window } from '../../tracker/windows/index.ts';
import { edgeWords } from '../../views/piece/edge-words.ts';
import type { SumJson } from '../json-shapes/index.ts';
import type { Look } from '../line/look.ts';
import { iso, isoOrNull } from './iso.ts';

/** Why each stretch of a window begins when it does. */
export const sumsJson = (window: Window, { bench, now, sense, shop }: Look): readonly SumJson[] =>
  window.stretches.flatMap((stretch) => {
    const reason = explainStretch(bench, window, stretch, sense);
    if (reason === null) return [];
    return [
      {
        meaning: stretch.meaning,
        begins: iso(stretch.begins, shop.zone),
        says: edgeWords(reason, now, shop),
        spans: reason.spans.map(({ span, lasts, own, air }) => ({
          labelMinutes: span.ms / minute,
          ownMinutes: own === null ? null : own.ms / minute,
          ownCoats: own?.coats ?? null,
          minutes: lasts / minute,
          readings: air?.readings.length ?? null,
          nightLowFrom: isoOrNull(air?.night?.from ?? null, shop.zone),
        })),
      },
    ];
  });
