import type { Problem } from '../../persist/schedules/index.ts';
import type { FileProblemJson } from '../json-shapes/index.ts';

export const problemJson = ({ nearest, ...problem }: Problem): FileProblemJson => ({
  file: problem.file,
  line: problem.line,
  column: problem.column,
  field: problem.field,
  found: problem.found,
  expected: problem.expected,
  nearest: nearest ?? [],
  says: problem.says,
  todo: problem.todo,
});
