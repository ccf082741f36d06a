import { fromSchedule, type PieceOutlook } from '../../tracker/estimate/index.ts';
import { daysAtLeast, daysByLabel, outlookHours } from '../../views/format/index.ts';
import type { Look } from '../line/look.ts';

/** What a piece will take, in hours of hands and in days; none where nothing is foretold. */
export function outlookLines(outlook: PieceOutlook, { settings }: Look): readonly string[] {
  const from =
    outlook.model === fromSchedule
      ? 'from the finishing schedule, not yet from you'
      : 'from what you took before';
  return [
    `${outlookHours(outlook)}, ${from}`,
    `${daysAtLeast(outlook.days)} on the bench${daysByLabel(outlook)}: for what dries or sets, with hands at work ${settings.shopHours} every day`,
  ];
}
