import {
  overnightQuestions,
  type OvernightAnswer,
  type OvernightQuestion,
} from '../tracker/bench/index.ts';
import { nearest } from '../tracker/trade/index.ts';
import { nextClock } from '../views/format/zone.ts';
import { iso } from './json/iso.ts';
import { pieceName } from './json/names.ts';
import type { OvernightJson } from './json-shapes.ts';
import { failure, isFailure, type CommandFile, type Failure, type Given } from './line/command.ts';
import { look, type Look } from './line/look.ts';
import { record } from './line/record.ts';
import { readMomentToCome } from './read/read-moment.ts';
import type { Instant } from '../tracker/time/index.ts';
import { pingsToCome, toComeJson, toComeLine } from './text/pings-to-come.ts';

const answers: readonly OvernightAnswer[] = ['yes', 'no', 'does not apply'];

export const overnight: CommandFile = {
  options: [
    ['--back <time>', 'when you will be back: 7:30, Mon 8:00; else the next 7:30'],
    ...overnightQuestions.map((question) => [`--${question} <answer>`, 'yes, no, none'] as const),
  ],
  help: 'Without answers it shows what falls due until then. With answers it is noted that the shop is shut.',
  run: async (room, given) => {
    const told = answersGiven(given);
    if (isFailure(told)) return told;
    if (Object.keys(told).length > 0)
      return record(room, (shop) => {
        const backAt = backGiven(given, shop);
        if (isFailure(backAt)) return backAt;
        return { intents: [{ do: 'shut up shop', answers: told, backAt: backAt.at }] };
      });
    const shop = await look(room);
    if (isFailure(shop)) return shop;
    const back = backGiven(given, shop);
    return isFailure(back) ? back : untilBack(shop, back.at);
  },
};

function untilBack(shop: Look, backAt: Instant) {
  const { zone } = shop.shop;
  const due = pingsToCome(shop, new Set()).filter(({ at }) => at <= backAt);
  return {
    lines: () => due.map((ping) => toComeLine(ping, shop)),
    json: (): OvernightJson => ({
      at: iso(shop.now, zone),
      backAt: iso(backAt, zone),
      fallsDue: due.map((ping) => toComeJson(ping, shop)),
      spoils: due.flatMap((ping) =>
        ping.about === 'window' && ping.stretch.loss === 'spoils'
          ? [
              {
                piece: ping.piece === null ? null : pieceName(ping.piece),
                verb: ping.window.rule.verb,
              },
            ]
          : [],
      ),
      questions: overnightQuestions,
    }),
  };
}

const usuallyBack = '07:30';

function backGiven(given: Given, { now, shop }: Look): { readonly at: Instant } | Failure {
  const typed = given.maybe('back');
  if (typed === null) return { at: nextClock(now, usuallyBack, shop.zone) };
  const read = readMomentToCome(typed, now, shop.zone);
  return read.ok ? { at: read.at } : failure('usage', `Not noted: ${read.says}`);
}

function answersGiven(given: Given): Partial<Record<OvernightQuestion, OvernightAnswer>> | Failure {
  const told: Partial<Record<OvernightQuestion, OvernightAnswer>> = {};
  for (const question of overnightQuestions) {
    const typed = given.maybe(question)?.trim().toLowerCase();
    if (typed === undefined) continue;
    const answer = typed === 'none' ? 'does not apply' : answers.find((each) => each === typed);
    if (answer === undefined)
      return failure(
        'usage',
        `Not noted: "${typed}" is no answer for ${question}. Write yes, no or none.`,
        nearest(typed, ['yes', 'no', 'none']),
      );
    told[question] = answer;
  }
  return told;
}
