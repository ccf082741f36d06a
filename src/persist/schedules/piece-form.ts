import * as z from 'zod/mini';
import type { Condition, Question, Terms } from '../../tracker/trade/index.ts';
import { durationOf, group, id, numberFrom, oneOf, text, wholeNumber } from './fields.ts';

/** What makes a step depend on the piece: its conditions, its question, its trial. */

/** One of something, or a list of it; read as a list. */
const oneOrMore = <Each extends z.core.$ZodType>(each: Each, words: string) =>
  z.pipe(
    z.union([each, z.array(each, { error: words }).check(z.minLength(1, { error: words }))], {
      error: words,
    }),
    z.transform((given): readonly z.output<Each>[] =>
      Array.isArray(given) ? (given as z.output<Each>[]) : [given as z.output<Each>],
    ),
  );

const year = (words: string) => wholeNumber(1000, 2999, words);
const woodWords = 'soft, hard or unknown, or a list of them';
const answerWords = 'an answer, or a list of them; "unknown" where none was given';

const terms = {
  'made before': z.optional(year('year, also for pieces whose year is not known')),
  'made since': z.optional(year('year, only for pieces whose year is known')),
  wood: z.optional(oneOrMore(oneOf('a wood', ['soft', 'hard', 'unknown']), woodWords)),
  answers: z.optional(
    z.record(id, oneOrMore(text('an answer'), answerWords), {
      error: 'answers by the id of the step that asks',
    }),
  ),
};
const termsGroup = group('a condition', terms);

/** All that it names must hold, and of `any` one group. */
export const condition = group('a condition', {
  ...terms,
  any: z.optional(
    z
      .array(termsGroup, { error: 'a list of conditions, of which one must hold' })
      .check(z.minLength(2, { error: 'a list of at least two conditions' })),
  ),
});

const asTerms = (form: z.infer<typeof termsGroup>): Terms => ({
  ...(form['made before'] === undefined ? {} : { madeBefore: form['made before'] }),
  ...(form['made since'] === undefined ? {} : { madeSince: form['made since'] }),
  ...(form.wood === undefined ? {} : { wood: form.wood }),
  ...(form.answers === undefined ? {} : { answers: form.answers }),
});

export const makeCondition = ({ any, ...form }: z.infer<typeof condition>): Condition => ({
  ...asTerms(form),
  ...(any === undefined ? {} : { any: any.map(asTerms) }),
});

export const question = group('a question', {
  question: text('a question, such as "which solvent softened it?"'),
  answers: z
    .record(id, text('an answer in words'), { error: 'answers by their ids, in words' })
    .check(
      z.refine((answers) => Object.keys(answers).length >= 2, {
        error: 'at least two answers by their ids, in words',
      }),
    ),
});

export const makeQuestion = (form: z.infer<typeof question>): Question => ({
  question: form.question,
  answers: Object.entries(form.answers).map(([answer, says]) => ({ id: answer, says })),
});

export const minutesTimes = z.record(
  id,
  z.record(id, numberFrom(0.1, 10, 'how many times the minutes'), {
    error: 'figures by answer, such as {shellac: 0.6}',
  }),
  { error: 'figures by the id of the step that asks, then by answer' },
);

const trialWords = 'the id of a later step, or a list of them';
const laterSteps = oneOrMore(id, trialWords);

/** The steps that it is the trial for, and how long after it can first be judged. */
export const trial = z.union([
  laterSteps,
  group('a trial', {
    for: laterSteps,
    'judge after': durationOf('a length of time with its unit, such as 30 min or 12 h'),
  }),
]);

export const trialOf = (
  form: z.infer<typeof trial>,
): { readonly steps: readonly string[]; readonly judgeAfter: number } =>
  'for' in form
    ? { steps: form.for, judgeAfter: form['judge after'] }
    : { steps: form, judgeAfter: 0 };
