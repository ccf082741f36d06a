import { nearest } from '../../tracker/trade/index.ts';
import { failure, type Failure } from './command.ts';
import { plainWordsAt } from './globals.ts';
import { benchEntry, commands, type CommandEntry } from './table.ts';

/** The command that was named, and the other words. No name at all is the bench, under an empty name. */
export type FoundCommand = {
  readonly name: string;
  readonly entry: CommandEntry;
  readonly words: readonly string[];
};

export type Found = FoundCommand | Failure | 'help' | 'version';

/** Which command a command line names. Options that every command takes may stand before its name. */
export function findCommand(args: readonly string[]): Found {
  const [first, second] = plainWordsAt(args);
  if (first === undefined) {
    if (args.includes('--version')) return 'version';
    if (args.includes('--help') || args.includes('-h')) return 'help';
    return { name: '', entry: benchEntry, words: args };
  }
  const one = args[first] ?? '';
  if (one === 'help')
    return second === undefined ? 'help' : findCommand([...args.toSpliced(first, 1), '--help']);
  const two = second === first + 1 ? `${one} ${args[second] ?? ''}` : '';
  const name = Object.hasOwn(commands, two) ? two : one;
  const entry = Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (entry === undefined)
    return failure(
      'usage',
      `Not understood: there is no command "${one}". See: recoat --help`,
      nearest(one, [...Object.keys(commands), 'demo', 'help']),
    );
  return { name, entry, words: args.toSpliced(first, name === two ? 2 : 1) };
}
