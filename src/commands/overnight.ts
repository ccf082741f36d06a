import {
  overnightQuestions,
  type OvernightAnswer,
  type OvernightQuestion,
} from '../tracker/bench/index.ts';
import type { Instant } from '../tracker/time/index.ts';
import { nearest } from '../tracker/trade/index.ts';
import { readBackAt, usualBackAt } from '../views/shut-up-shop/back-at.ts';
import { overnightJson } from './json/overnight-json.ts';
import { failure, isFailure, type CommandFile, type Failure, type Given } from './line/command.ts';
import { look, type Look } from './line/look.ts';
import { record } from './line/record.ts';
import { overnightLines } from './text/overnight-lines.ts';

export const overnight: CommandFile = {
  options: [
    ['--back <time>', 'when you will be back: 7:30, Mon 8:00; else the next 7:30'],
    ...overnightQuestions.map((question) => [`--${question} <answer>`, 'yes, no, none'] as const),
  ],
  help: 'Without answers it shows what falls due until then. With answers it is noted that the shop is shut.',
  run: async (room, given) => {
    const answers = answersGiven(given);
    if (isFailure(answers)) return answers;
    if (Object.keys(answers).length > 0)
      return record(room, (shop) => {
        const back = backGiven(given, shop);
        if (isFailure(back)) return back;
        return { intents: [{ do: 'shut up shop', answers, backAt: back.at }] };
      });
    const shop = await look(room);
    if (isFailure(shop)) return shop;
    const back = backGiven(given, shop);
    if (isFailure(back)) return back;
    return {
      lines: () => overnightLines(shop, back.at),
      json: () => overnightJson(shop, back.at),
    };
  },
};

function backGiven(given: Given, { now, shop }: Look): { readonly at: Instant } | Failure {
  const typed = given.maybe('back');
  if (typed === null) return { at: usualBackAt(now, shop.zone) };
  const read = readBackAt(typed, now, shop.zone);
  return read.ok ? { at: read.at } : failure('usage', read.says);
}

const answerWords: ReadonlyMap<string, OvernightAnswer> = new Map([
  ['yes', 'yes'],
  ['no', 'no'],
  ['none', 'does not apply'],
]);

function answersGiven(given: Given): Partial<Record<OvernightQuestion, OvernightAnswer>> | Failure {
  const told: Partial<Record<OvernightQuestion, OvernightAnswer>> = {};
  for (const question of overnightQuestions) {
    const typed = given.maybe(question);
    if (typed === null) continue;
    const answer = answerWords.get(typed.trim().toLowerCase());
    const words = [...answerWords.keys()];
    if (answer === undefined)
      return failure(
        'usage',
        `Not noted: "${typed}" is no answer for ${question}. Write ${words.join(', ')}.`,
        nearest(typed, words),
      );
    told[question] = answer;
  }
  return told;
}
