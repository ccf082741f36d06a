import { isAlias, isMap, isScalar, isSeq, LineCounter, parseDocument } from 'yaml';
import type { Document, Node } from 'yaml';
import type { Problem } from './problem.ts';
import { syntaxProblem } from './syntax-problem.ts';

export type Path = readonly PropertyKey[];

/** A YAML text read into plain values, which still knows where each of them stands. */
export type YamlSource = {
  readonly file: string;
  readonly value: unknown;
  /** Where the value of a path begins; where it is missing, where its nearest group of fields begins. */
  readonly placeOf: (path: Path) => Place;
  /** Where the name of the path's last field stands. */
  readonly placeOfName: (path: Path) => Place;
};

export type Place = { readonly line: number; readonly column: number };

export type YamlReading =
  | { readonly ok: true; readonly source: YamlSource }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A schedule that is longer than this is none; it would only hold up the program. */
const longestText = 512 * 1024;

/** Reads YAML 1.2. Everything that is wrong with the text comes back as problems, never as an exception. */
export function readYaml(file: string, text: string): YamlReading {
  if (text.length > longestText) {
    return refusal(file, {
      says: `The file is ${Math.round(text.length / 1024)} kB long.`,
      todo: `Keep a schedule below ${longestText / 1024} kB.`,
    });
  }
  const lines = new LineCounter();
  try {
    const document = parseDocument(text, {
      lineCounter: lines,
      prettyErrors: false,
      // Problems go to the user as values; nothing is printed on the side.
      logLevel: 'error',
      merge: true,
    });
    const flaws = [...document.errors, ...document.warnings];
    if (flaws.length > 0) {
      const lineAt = (offset: number): number => placeAt(lines, offset).line;
      return { ok: false, problems: [syntaxProblem(file, text, flaws, lineAt)] };
    }
    const value: unknown = document.toJS();
    return { ok: true, source: sourceOf(file, document, value, lines) };
  } catch (thrown) {
    // The library throws on an alias to nothing, on aliases that multiply, and on nesting beyond the stack.
    const reason = thrown instanceof Error ? thrown.message : String(thrown);
    return refusal(file, {
      says: `The text can't be read as YAML: ${firstLine(reason)}.`,
      todo: 'Write it without aliases and with less nesting.',
    });
  }
}

function sourceOf(
  file: string,
  document: Document,
  value: unknown,
  lines: LineCounter,
): YamlSource {
  const start = (node: Node | null): number => node?.range?.[0] ?? 0;
  return {
    file,
    value,
    placeOf: (path) => placeAt(lines, start(nodeAt(document, path).node)),
    placeOfName: (path) => placeAt(lines, start(nodeAt(document, path).name)),
  };
}

/** Goes down a path as far as it leads. `name` is the node of the last field's name, or the value's where there is none. */
function nodeAt(document: Document, path: Path): { node: Node | null; name: Node | null } {
  let node = document.contents;
  let name: Node | null = node;
  for (const key of path) {
    const within = isAlias(node) ? (node.resolve(document) ?? null) : node;
    if (isMap(within)) {
      const pair = within.items.find(
        (item) => isScalar(item.key) && String(item.key.value) === String(key),
      );
      if (pair === undefined) break;
      name = pair.key as Node;
      node = (pair.value as Node | null) ?? name;
    } else if (isSeq(within)) {
      const item = within.items[Number(key)] as Node | undefined;
      if (item === undefined) break;
      node = item;
      name = item;
    } else break;
  }
  return { node, name };
}

function placeAt(lines: LineCounter, offset: number): Place {
  const { line, col } = lines.linePos(offset);
  return { line: Math.max(1, line), column: Math.max(1, col) };
}

function refusal(file: string, { says, todo }: { says: string; todo: string }): YamlReading {
  return {
    ok: false,
    problems: [
      {
        file,
        line: 1,
        column: 1,
        field: '',
        found: 'the whole file',
        expected: 'YAML',
        says,
        todo,
      },
    ],
  };
}

const firstLine = (message: string): string =>
  (message.split('\n')[0] ?? '').replace(/[.:\s]+$/, '');
