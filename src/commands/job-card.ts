import { jobCard as cardOf } from '../tracker/bench/index.ts';
import { jobCardJson } from './json/job-card-json.ts';
import { isFailure, type CommandFile } from './line/command.ts';
import { csvOption, twoForms } from './line/forms.ts';
import { lookFor } from './names/look-for.ts';
import { csvLines } from './text/csv-lines.ts';
import { jobCardLines } from './text/job-card-lines.ts';
import { jobCardMarkdown, jobCardRows } from './text/job-card-rows.ts';

export const jobCard: CommandFile = {
  takes: '<piece>',
  options: [csvOption, ['--markdown', 'as Markdown with a table, to hand over or keep elsewhere']],
  run: async (room, given) => {
    const clash = twoForms(given, ['csv', 'markdown', 'json']);
    if (clash !== null) return clash;
    const found = await lookFor(given.word('piece'), 'Not shown', room);
    if (isFailure(found)) return found;
    const { piece, shop } = found;
    const card = cardOf(shop.bench, piece, shop.now, shop.sense);
    const csv = given.has('csv') ? await csvLines(jobCardRows(card, shop)) : null;
    const text = () =>
      given.has('markdown') ? jobCardMarkdown(card, shop) : jobCardLines(card, shop);
    return { lines: () => csv ?? text(), json: () => jobCardJson(card, shop) };
  },
};
