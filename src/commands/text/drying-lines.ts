import {
  dryingChance,
  type DriedCoat,
  type MilestoneDrying,
} from '../../tracker/learning/index.ts';
import { minute } from '../../tracker/time/index.ts';
import { air, day, timesIn } from '../../views/format/index.ts';
import { labelLength } from '../../views/parts/label-length.ts';
import type { ProductTold } from '../json/drying-json.ts';
import { timesNow } from '../line/drying-now.ts';
import type { Look } from '../line/look.ts';

/** Each product with its milestones: the label, what checks have taught, and the last coats that were tried. */
export function dryingLines(told: readonly ProductTold[], look: Look): readonly string[] {
  if (told.length === 0)
    return ['No coat is on the bench, and none was tried. To tell of one: recoat drying PRODUCT'];
  const lines = told.flatMap(({ product, milestones }) => [
    product.name,
    ...milestones.flatMap((each) => milestoneLines(each, look)),
  ]);
  return look.settings.learnDrying
    ? lines
    : [...lines, '', 'Windows open by the label: the setting "learn drying" is no.'];
}

const indent = ' '.repeat(13);

const mostKeptOut = 3;

function milestoneLines(drying: MilestoneDrying, look: Look): readonly string[] {
  const { milestone, label, yours, coats, opens, keptOut, lastCoats } = drying;
  const head = `  ${milestone.padEnd(indent.length - 4)}  label ${labelLength(label)}`;
  const out = keptOut
    .slice(0, mostKeptOut)
    .map(({ at, because }) => `${indent}${day(at, look.shop)}: ${because}, teaches nothing`);
  if (yours === null)
    return [`${head}, from the label, not yet from you`, ...airLines(drying, look), ...out];
  const { median, low, high } = yours;
  const range = `${length(low)} to ${length(high)}, ${timesIn(dryingChance)}`;
  const by = look.settings.learnDrying ? opens : null;
  return [
    `${head}, yours ${length(median)}, from ${coats} ${coats === 1 ? 'coat' : 'coats'}`,
    `${indent}${range}; opens at ${labelLength(by?.ms ?? label)}${by === null ? ', by the label' : by.ms < label ? ', sooner than the label' : ''}`,
    ...airLines(drying, look),
    ...lastCoats.map((coat) => `${indent}${coatWords(coat, look)}`),
    ...out,
  ];
}

/** A figure that the air moves by less than a twentieth is not told again. */
const worthTelling = 0.05;

/** `in the air now, 15 C 65 %: label 17 h, yours 24 h` */
function airLines(drying: MilestoneDrying, look: Look): readonly string[] {
  const times = timesNow(drying, look);
  const reading = look.readings.at(-1);
  if (times === null || reading === undefined || Math.abs(times - 1) < worthTelling) return [];
  const { label, yours } = drying;
  const own = yours === null ? '' : `, yours ${length(yours.median * times)}`;
  return [
    `${indent}in the air now, ${air(reading, look.shop.temperature)}: label ${labelLength(label * times)}${own}`,
  ];
}

const length = (minutes: number): string => labelLength(minutes * minute);

/** `Tue 24 Nov: not yet at 2 h, ready at 2 h 40`, by the clock. */
function coatWords({ at, notYet, ready }: DriedCoat, { shop }: Look): string {
  const words = [
    ...(notYet === null ? [] : [`not yet at ${length(notYet.minutes)}`]),
    ...(ready === null ? [] : [`ready at ${length(ready.minutes)}`]),
  ];
  return `${day(at, shop)}: ${words.join(', ')}`;
}
