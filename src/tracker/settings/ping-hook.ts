/** A command that pings are handed to: its file, then its arguments. Never a line for a shell. */
export type PingHook = readonly [file: string, ...words: string[]];

/**
 * Reads `none`, a JSON list of words, or the path of a program alone; null where it is none of them. A line with spaces
 * could be a path or a command with arguments, so that is written as a list.
 */
export function readPingHook(text: string): PingHook | 'none' | null {
  const typed = text.trim();
  if (typed === 'none') return 'none';
  if (!typed.startsWith('[')) return /^[^\s\0]+$/.test(typed) ? [typed] : null;
  let words: unknown;
  try {
    words = JSON.parse(typed);
  } catch {
    return null;
  }
  if (!Array.isArray(words) || !words.every((word) => typeof word === 'string')) return null;
  const [file, ...rest] = words;
  // A word of a command line ends at the first null.
  if (file === undefined || file === '' || words.some((word) => word.includes('\0'))) return null;
  return [file, ...rest];
}
