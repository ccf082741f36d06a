import { passCalled, type CardStamp, type StepRow } from '../../tracker/bench/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { shopDay } from '../format/index.ts';
import type { Shop } from '../port.ts';
import { momentOn } from './moment-on.ts';

/**
 * When something was put on: `13:10 to 13:25`, `A 09:02, B 09:13`, `coat 2 of 3 10:00 to 10:05`, `4 sections 10:00 to 10:20`,
 * `in clamps 11:05`. A finish alone is told only if it fell on a later day: the row has its own time and minutes.
 */
export function stampWords({ stamps, at, planned }: StepRow, shop: Shop): string {
  const when = (stamp: CardStamp): string => {
    const first =
      stamp.movedFrom === null ? '' : ` (first recorded ${momentOn(stamp.movedFrom, at, shop)})`;
    return momentOn(stamp.at, at, shop) + first;
  };
  const parts = new Set(stamps.map(({ part }) => part));
  const told = [...parts].flatMap((part) => {
    const words = wordsOfOne(
      stamps.filter((stamp) => stamp.part === part),
      when,
      { at, shop, planned },
    );
    if (words.length === 0) return [];
    return [part === null ? words.join(', ') : `${part} ${words.join(', ')}`];
  });
  return told.join('; ');
}

function wordsOfOne(
  stamps: readonly CardStamp[],
  when: (stamp: CardStamp) => string,
  { at, shop, planned }: Pick<StepRow, 'at' | 'planned'> & { readonly shop: Shop },
): readonly string[] {
  const called = (pass: number): string =>
    planned === null ? `pass ${pass}` : passCalled(planned, pass);
  const passes = [...Map.groupBy(stamps, ({ pass }) => pass)].sort(([a], [b]) => a - b);
  return passes.flatMap(([pass, own]) => {
    const words = wordsOfPass(own, when, at, shop);
    return passes.length === 1 ? words : words.map((each) => `${called(pass)} ${each}`);
  });
}

function wordsOfPass(
  stamps: readonly CardStamp[],
  when: (stamp: CardStamp) => string,
  at: Instant,
  shop: Shop,
): readonly string[] {
  const sections = new Set(stamps.flatMap(({ section }) => section ?? []));
  const last = stamps.findLast(({ event }) => event === 'done' || event === 'last-stroke');
  const first = stamps.find(({ event }) => event !== 'done');
  if (first === undefined) {
    const isLater = last !== undefined && shopDay(last.at, shop.zone) !== shopDay(at, shop.zone);
    return isLater ? [`done ${when(last)}`] : [];
  }
  if (sections.size > 0) {
    const span = last === undefined ? when(first) : `${when(first)} to ${when(last)}`;
    return [`${sections.size} ${sections.size === 1 ? 'section' : 'sections'} ${span}`];
  }
  const plain = stamps.filter(({ event }) => event !== 'done' && event !== 'last-stroke');
  const [only] = plain;
  if (plain.length === 1 && only?.event === 'first-stroke' && only.agent === null)
    return [last === undefined ? `from ${when(only)}` : `${when(only)} to ${when(last)}`];
  return [
    ...plain.map((stamp) => `${nameOf(stamp)} ${when(stamp)}`),
    ...(last === undefined ? [] : [`done ${when(last)}`]),
  ];
}

const nameOf = ({ event, agent }: CardStamp): string => {
  if (event === 'first-stroke' && agent !== null) return agent;
  const name = event.replace('-', ' ');
  return agent === null ? name : `${agent} ${name}`;
};
