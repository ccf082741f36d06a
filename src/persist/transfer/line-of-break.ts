/**
 * The first line in which JSON breaks, from 1; null where it only ends too early. The parser doesn't name the place of every
 * mistake, but says of a beginning that is right so far that it ends unexpectedly, so the place can be closed in on.
 */
export function lineOfBreak(text: string): number | null {
  const lines = text.split('\n');
  const isRightUpTo = (count: number): boolean => {
    try {
      JSON.parse(lines.slice(0, count).join('\n'));
      return true;
    } catch (error) {
      return error instanceof Error && /^Unexpected end|^Unterminated/.test(error.message);
    }
  };
  if (isRightUpTo(lines.length)) return null;
  let right = 0;
  let wrong = lines.length;
  while (wrong - right > 1) {
    const middle = (right + wrong) >> 1;
    if (isRightUpTo(middle)) right = middle;
    else wrong = middle;
  }
  return wrong;
}
