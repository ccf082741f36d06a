/** What is wrong with a line as YAML, in the words of whoever typed it. */
export type LineFlaw = { readonly line: number; readonly says: string; readonly todo: string };

const twoSpaces = 'Indent with spaces, two to a level.';

/** A name, its colon, and a space or the end behind it; dashes of a list may stand before. */
const nameAndColon = /^(?:- +)*(?:"[^"]*"|'[^']*'|[^\s#"'{}[\],&*!|>%@`-][^#]*?) *:(?= |$)(.*)$/;

/** A level of indents, and the line that began it. */
type Level = { readonly indent: number; readonly line: number };

/**
 * Looks for the first line that can't be meant, in a text of which it is known that it is no YAML: a parser names the
 * place where it lost its way, which is often further down. Only what these files need is looked for; null where no
 * line stands out.
 */
export function flawInLines(text: string): LineFlaw | null {
  const levels: Level[] = [];
  let above: { readonly indent: number; readonly opens: boolean; readonly line: number } | null =
    null;
  /** Braces and brackets that are open, and since which line. */
  let inside: { readonly depth: number; readonly since: number } | null = null;
  /** Text after | or > goes on for as long as it is indented further than this. */
  let blockBeyond: number | null = null;
  for (const [index, raw] of text.split(/\r?\n/).entries()) {
    const line = index + 1;
    const content = raw.trim();
    if (content === '' || content.startsWith('#') || /^(---|\.\.\.|%)/.test(content)) continue;
    const indent = raw.length - raw.trimStart().length;
    if (blockBeyond !== null && indent > blockBeyond) continue;
    blockBeyond = null;
    if (/^ *\t/.test(raw)) {
      return { line, says: 'The line is indented with a tab.', todo: twoSpaces };
    }
    if (inside !== null) {
      if (nameAndColon.test(content) && !content.endsWith(',') && !/[}\]]/.test(content)) {
        return unclosed(inside.since);
      }
      const depth: number = inside.depth + depthOf(content);
      inside = depth > 0 ? { depth, since: inside.since } : null;
      continue;
    }
    const misplaced = placeOnLevels(levels, { indent, line }, above);
    if (misplaced !== null) return misplaced;
    const named = nameAndColon.exec(content);
    if (named === null && !content.startsWith('- ')) return unnamed(content, line);
    const value = (named?.[1] ?? content.slice(1)).trim();
    const open = depthOf(value);
    if (open > 0) inside = { depth: open, since: line };
    if (/^[|>][-+]?$/.test(value)) blockBeyond = indent;
    above = { indent, opens: opensGroup(value) || content.startsWith('- '), line };
  }
  return inside === null ? null : unclosed(inside.since);
}

/** Where a line belongs among the levels that are open; the flaw where it belongs nowhere. */
function placeOnLevels(
  levels: Level[],
  { indent, line }: Level,
  above: { readonly indent: number; readonly opens: boolean; readonly line: number } | null,
): LineFlaw | null {
  const deepest = levels.at(-1);
  if (deepest === undefined || indent > deepest.indent) {
    if (above !== null && !above.opens) {
      return {
        line,
        says: `The line is indented by ${indent}, further than line ${above.line}, which has its value already.`,
        todo: `Indent it by ${above.indent}, as the line above, or look for what is amiss there.`,
      };
    }
    levels.push({ indent, line });
    return null;
  }
  let left: Level | undefined;
  while ((levels.at(-1)?.indent ?? -1) > indent) left = levels.pop();
  if (levels.at(-1)?.indent === indent) return null;
  const within = left ?? deepest;
  const outer = levels.at(-1) ?? within;
  const beside = indent - outer.indent < within.indent - indent ? outer : within;
  return {
    line,
    says: `The line is indented by ${indent}, but line ${beside.line}, where its group begins, by ${beside.indent}.`,
    todo: 'Indent all fields of a group alike.',
  };
}

const unclosed = (line: number): LineFlaw => ({
  line,
  says: 'A brace or bracket of this line is not closed.',
  todo: 'Close it with } or ], and put quotes round text that has a comma or colon.',
});

function unnamed(content: string, line: number): LineFlaw | null {
  const colon = /^(?:- +)*([^\s:#"'{}[\]][^:#"'{}[\]]*):\S/.exec(content);
  if (colon !== null) {
    return {
      line,
      says: `No space stands after "${colon[1] ?? ''}:".`,
      todo: 'Write the name, a colon, a space and the value.',
    };
  }
  const word = content.replace(/ .*$/, '');
  return {
    line,
    says: `"${word.length > 30 ? `${word.slice(0, 30)}…` : word}" has no colon after it.`,
    todo: 'Write the name, a colon, a space and the value; put quotes round text that has a colon or a quote.',
  };
}

/** What ends with its colon, or with an anchor or a merge behind it, has its fields on the lines below. */
const opensGroup = (value: string): boolean => value === '' || /^(#|&\S+$)/.test(value);

/** How many more braces and brackets a text opens than it closes, quotes left out. */
function depthOf(text: string): number {
  const bare = text.replace(/"(?:[^"\\]|\\.)*"|'(?:[^']|'')*'/g, '').replace(/(^| )#.*$/, '');
  return (bare.match(/[{[]/g)?.length ?? 0) - (bare.match(/[}\]]/g)?.length ?? 0);
}
