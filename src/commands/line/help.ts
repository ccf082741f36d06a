import type { CommandFile, CommandOption } from './command.ts';
import { everyCommand } from './globals.ts';
import { commands, headings } from './table.ts';

const cells = 18;

const line = (name: string, says: string): string => `  ${name.padEnd(cells)}${says}`;

/** The list of all commands. */
export function helpText(): string {
  const lists = headings.flatMap((heading) => [
    `${heading}:`,
    ...Object.entries(commands)
      .filter(([, entry]) => entry.heading === heading)
      .map(([name, { summary }]) => line(name, summary)),
    '',
  ]);
  return [
    'recoat [command] [words] [options]',
    '',
    'Without a command: the bench, on the screen; as text where no terminal is.',
    'A PIECE is its number, its name, or the beginning of its name.',
    '',
    ...lists,
    'demo:',
    line('demo', 'an invented shop; nothing in it is kept'),
    line('demo COMMAND', 'a command on the invented shop'),
    '',
    'for every command:',
    ...everyCommand.map(([flags, says]) => line(flags, says)),
    line('--help', 'after a command: what it takes'),
    line('--version', 'the version of this program'),
    '',
    'exit codes:',
    line('0', 'done'),
    line('1', 'refused as things stand; or a checked file has problems'),
    line('2', 'no such piece, part, step, timer, schedule or setting'),
    line('3', 'the store cannot be read or written'),
    line('64', 'the command line itself is wrong'),
  ].join('\n');
}

/** The page of one command. */
export function commandPage(name: string, summary: string, file: CommandFile): string {
  const all = [...(file.options ?? []), ...everyCommand];
  const longest = Math.max(...all.map(([flags]) => flags.length)) + 2;
  const listed = (options: readonly CommandOption[]): readonly string[] =>
    options.map(([flags, says]) => `  ${flags.padEnd(longest)}${says}`);
  return [
    ['recoat', name, file.takes, '[options]'].filter(Boolean).join(' '),
    '',
    `${summary.charAt(0).toUpperCase()}${summary.slice(1)}.`,
    ...(file.help === undefined ? [] : ['', file.help]),
    ...(file.options === undefined ? [] : ['', 'options:', ...listed(file.options)]),
    '',
    'for every command:',
    ...listed(everyCommand),
  ].join('\n');
}
