import { tellProblem, type Problem } from '../schedules/problem.ts';

/** A problem of a table as one line for people: file, line, the column's name, what is wrong, what to do. */
export const tellCell = (problem: Problem): string =>
  tellProblem(problem.field === '' ? problem : { ...problem, field: `column ${problem.field}` });
