/** What is wrong in a schedule or products file or a table of hours, and where. */
export type Problem = {
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
  /** Counted from 1: of text the sign in its line, of a table the cell in its line. */
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

/** Beyond so many, what is wrong further down is mostly wrong because of what stands above. */
const mostTold = 5;

/** The problems of all files for people: what is alike once, and of each file the first few. */
export function tellProblems(problems: readonly Problem[]): readonly string[] {
  const files = [...new Set(problems.map(({ file }) => file))];
  return files.flatMap((file) => {
    const alike = Map.groupBy(
      problems.filter((problem) => problem.file === file),
      ({ says, todo }) => `${says} ${todo}`,
    );
    const told = [...alike.values()].flatMap(([first, ...others]) =>
      first === undefined ? [] : [tellProblem(first) + alsoIn(others)],
    );
    const more = told.length - mostTold;
    if (more <= 0) return told;
    const rest = `${file}: ${more} more, told once these are mended.`;
    return [...told.slice(0, mostTold), rest];
  });
}

function alsoIn(others: readonly Problem[]): string {
  const lines = [...new Set(others.map(({ line }) => line))];
  if (lines.length === 0) return '';
  const shownLines = lines.slice(0, 4).join(', ');
  return ` The same in line ${shownLines}${lines.length > 4 ? ' and further down' : ''}.`;
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
