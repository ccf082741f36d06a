import { questionsFor } from '../../tracker/overnight/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import { overnightLines as drawOvernight } from '../../views/shut-up-shop/overnight-lines.ts';
import { questionWords, ragCaution } from '../../views/shut-up-shop/question-words.ts';
import type { Look } from '../line/look.ts';
import { inColumns } from './columns.ts';
import { plainLines, textView } from './text-view.ts';

/** What falls due until `backAt`, and what to see to before the light goes out. */
export function overnightLines(look: Look, backAt: Instant): readonly string[] {
  const { bench, now, sense, shop } = look;
  const questions = questionsFor(bench, now, sense);
  return [
    ...plainLines(drawOvernight(textView(look), backAt)),
    ...(questions.length === 0 ? [] : ['', 'see to, and answer: overnight --rags yes']),
    ...inColumns(questions.map((question) => [` ${question}`, questionWords(question, shop)])),
    '',
    ragCaution,
  ];
}
