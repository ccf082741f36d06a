import type { HoursFile } from '../../persist/hours-import/read-hours.ts';
import type { ImportedHours } from '../../tracker/bench/index.ts';
import type { ImportJson, ImportsJson } from '../json-shapes/index.ts';
import type { Look } from '../line/look.ts';
import { iso } from './iso.ts';
import { problemJson } from './problem-json.ts';

/** What would be taken from a file, and what is refused. */
export const importJson = ({ rows, problems, passedOver }: HoursFile): ImportJson => ({
  lines: rows.length,
  classes: [...Map.groupBy(rows, ({ stepClass }) => stepClass)].map(([stepClass, own]) => ({
    stepClass,
    lines: own.length,
    pieces: new Set(own.map(({ piece }) => piece)).size,
    minutes: own.reduce((sum, each) => sum + each.minutes, 0),
    estimatedMinutes: own.reduce((sum, each) => sum + each.estimate, 0),
  })),
  problems: problems.map(problemJson),
  passedOver,
});

export const importsJson = (imports: readonly ImportedHours[], { shop }: Look): ImportsJson => ({
  imports: imports.map(({ id, file, rows, takenAt }, index) => ({
    place: index + 1,
    id,
    file,
    lines: rows.length,
    takenAt: iso(takenAt, shop.zone),
  })),
});
