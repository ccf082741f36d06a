import type { YAMLError } from 'yaml';
import { flawInLines } from './look-at-lines.ts';
import type { Problem } from './problem.ts';

type Told = { readonly says: string; readonly todo: string };

const shape = 'Write fields as "name: value", one a line, the lines of a group indented alike.';
const quotes = 'Put quotes round text with a colon, comma, brace or quote in it, and close them.';

/**
 * The one thing that is wrong with a text that is no YAML. A parser that has lost its way finds fault with every line
 * that follows; only the first cause is worth mending.
 * @param flaws what the parser found, at least one
 * @param lineAt in which line a place of the text lies, from 1
 */
export function syntaxProblem(
  file: string,
  text: string,
  flaws: readonly YAMLError[],
  lineAt: (offset: number) => number,
): Problem {
  const first = flaws.reduce((one, other) => (other.pos[0] < one.pos[0] ? other : one));
  const lost = lineAt(first.pos[0]);
  const seen = first.code === 'DUPLICATE_KEY' ? null : flawInLines(text);
  // A line that stands out after the parser's first trouble is none of its causes.
  const cause = seen !== null && seen.line <= lost + 1 ? seen : null;
  const { says, todo } = cause ?? inWords(first, text);
  const line = cause?.line ?? lost;
  return {
    file,
    line,
    column: 1,
    field: '',
    found: (text.split(/\r?\n/)[line - 1] ?? '').trim().slice(0, 60),
    expected: 'YAML',
    says,
    todo,
  };
}

/** What the parser says, in plain words. */
function inWords({ code, pos, message }: YAMLError, text: string): Told {
  const at = text.slice(pos[0]).split(/[:\r\n]/)[0] ?? '';
  // Only the codes that these files run into have words of their own.
  if (code === 'DUPLICATE_KEY') {
    return { says: `"${at}" stands twice in one group.`, todo: 'Take one of them out.' };
  }
  if (code === 'TAB_AS_INDENT') {
    return { says: 'The line is indented with a tab.', todo: 'Indent with spaces.' };
  }
  if (code === 'BAD_INDENT') {
    return { says: 'The line is not indented like the others of its group.', todo: shape };
  }
  if (code === 'MULTILINE_IMPLICIT_KEY' || code === 'BLOCK_AS_IMPLICIT_KEY') {
    return { says: "A name and its value don't fit together here.", todo: shape };
  }
  if (code === 'MISSING_CHAR' || code === 'BAD_SCALAR_START' || code === 'BAD_DQ_ESCAPE') {
    return { says: `Something is not closed or quoted here: ${plain(message)}.`, todo: quotes };
  }
  return { says: `This is no YAML: ${plain(message)}.`, todo: shape };
}

const plain = (message: string): string =>
  (message.split('\n')[0] ?? '')
    .replace(/[.:\s]+$/, '')
    .replace(/^./, (letter) => letter.toLowerCase());
