/** What is wrong in a schedule or products file, and where. */
export type Problem = {
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
  readonly column: number;
  /** Way to the field, steps and lists by their id or number from 1: `steps[sand-120].minutes.low`; empty for the whole file. */
  readonly field: string;
  /** What stands there, shortened. */
  readonly found: string;
  readonly expected: string;
  /** Known names that were meant perhaps, nearest first. */
  readonly nearest?: readonly string[];
  /** What is wrong, one sentence. */
  readonly says: string;
  /** What to do about it, one sentence. */
  readonly todo: string;
};

/** A problem as one line for people: file, line, field, what is wrong, what to do. */
export function tellProblem({ file, line, field, says, todo }: Problem): string {
  const where = field === '' ? `${file}, line ${line}` : `${file}, line ${line}, ${field}`;
  return `${where}: ${says} ${todo}`;
}

export const byPlace = (one: Problem, other: Problem): number =>
  one.line - other.line || one.column - other.column;

const longestShown = 60;

/** A value as it is shown in a sentence: quoted text, a number, `a list`. */
export function shown(value: unknown): string {
  if (value === undefined || value === null) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'a group of fields';
  if (typeof value === 'string') {
    return JSON.stringify(value.length > longestShown ? `${value.slice(0, longestShown)}…` : value);
  }
  return typeof value === 'number' || typeof value === 'boolean' ? String(value) : 'something else';
}
