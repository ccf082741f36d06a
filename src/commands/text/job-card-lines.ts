import type { JobCard } from '../../tracker/bench/index.ts';
import { jobCardText } from '../../views/job-card/plain.ts';
import type { Look } from '../line/look.ts';

export const jobCardLines = (card: JobCard, { now, shop }: Look): readonly string[] =>
  jobCardText(card, now, shop).trimEnd().split('\n');
