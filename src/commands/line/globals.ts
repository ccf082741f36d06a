import type { CommandOption } from './command.ts';

/** Options that every command takes. */
export const everyCommand: readonly CommandOption[] = [
  ['--json', 'answer as JSON, for programs'],
  ['--folder <path>', 'where data lives; else RECOAT_FOLDER, else the data folder of this system'],
  ['--zone <name>', "tell and read times in this zone (Europe/Lisbon), not in the shop's"],
];

/** Those of them that take the next word for their value. */
const withValue = new Set(['--folder', '--zone']);

/** The places of the words in a command line that are neither options nor values of the options above. */
export function plainWordsAt(args: readonly string[]): readonly number[] {
  const places: number[] = [];
  for (let at = 0; at < args.length; at += 1) {
    const word = args[at] ?? '';
    if (withValue.has(word)) at += 1;
    else if (!word.startsWith('-')) places.push(at);
  }
  return places;
}
