import { stripVTControlCharacters } from 'node:util';

const lineBreaks = /\s*[\n\v\f\r\u0085\u2028\u2029]+\s*/g;
/** Control characters, marks that turn the writing direction, what has no width and joins nothing, the byte order mark. */
const unseen = /[\p{Cc}\p{Bidi_Control}\u00ad\u200b\u2060-\u206f\ufeff\ufff9-\ufffb]/gu;

/**
 * Text of a person, fit to leave the program: one line, no control characters, no half characters, at most `most`
 * code points (then it ends in an ellipsis). Line breaks become ` - `, tabs a space.
 */
export function harmlessLine(text: string, most: number): string {
  const line = stripVTControlCharacters(text.toWellFormed())
    .trim()
    .replace(lineBreaks, ' - ')
    .replaceAll('\t', ' ')
    .replace(unseen, '')
    .trim();
  const characters = Array.from(line);
  return characters.length <= most
    ? line
    : `${characters
        .slice(0, most - 1)
        .join('')
        .trimEnd()}…`;
}
