/**
 * The first line in which JSON breaks, from 1; null where it only ends too early. The parser doesn't name the place of every
 * mistake, but says of a beginning that is right so far that it ends unexpectedly, so the place can be closed in on.
 */
export function lineOfBreak(text: string): number | null {
  const lines = text.split('\n');
  const isRightUpTo = (count: number): boolean => {
    const beginning = lines.slice(0, count).join('\n');
    try {
      JSON.parse(beginning);
      return true;
    } catch (error) {
      const says = error instanceof Error ? error.message : '';
      // Some beginnings it blames for what is missing at their very end.
      const place = / at position (\d+)/.exec(says)?.[1];
      return /^Unexpected end|^Unterminated/.test(says) || Number(place) >= beginning.length;
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
