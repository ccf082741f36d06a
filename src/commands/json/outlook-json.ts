import type { PieceOutlook } from '../../tracker/estimate/index.ts';
import type { OutlookJson } from '../json-shapes/index.ts';

export const outlookJson = (outlook: PieceOutlook): OutlookJson => ({
  lowMinutes: outlook.lowMinutes,
  highMinutes: outlook.highMinutes,
  chance: outlook.chance,
  model: outlook.model,
  leastDays: outlook.days.least,
  mostDays: outlook.days.most,
  leastDaysByLabel: outlook.labelDays.least,
  mostDaysByLabel: outlook.labelDays.most,
});
