import type { OvernightAnswer, OvernightQuestion } from '../../tracker/bench/index.ts';
import { temperature } from '../format/index.ts';
import type { Shop } from '../port.ts';

/** Below this waterborne coats do not form a film (USDA Wood Handbook, chapter 16: 50 F). */
const coldestC = 10;

/** What is to be seen to, in words. */
export const questionWords = (
  question: OvernightQuestion,
  shop: Pick<Shop, 'temperature'>,
): string =>
  ({
    rags: 'laid flat outdoors singly, or under water in a lidded metal can',
    pots: 'what was mixed is washed out',
    gun: 'cleaned',
    cans: 'lids on',
    heat: `stays above ${temperature(coldestC, shop.temperature)} all night`,
  })[question];

export const answerSigns: Readonly<Record<OvernightAnswer, string>> = {
  yes: 'y',
  no: 'n',
  'does not apply': '-',
};

/** Asked until somebody says so. */
export const ragQuestion = 'dealt with? Singly outdoors, or under water in a lidded metal can.';

/** Always shown, whether or not rags are asked about (NFPA and fire-investigation guidance; the handling is common practice). */
export const ragCaution =
  'Oily rags, pads, wool, dust catch fire by themselves. Label, local code first.';
