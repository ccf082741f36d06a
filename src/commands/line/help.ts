import { capital } from '../../views/format/capital.ts';
import type { CommandFile, CommandOption } from './command.ts';
import { everyCommand } from './globals.ts';
import { commands, headings } from './table.ts';

const cells = 18;

/** Terminals break a longer line in the middle of a word. */
const pageCells = 80;

/** Broken between words into lines of at most so many letters. */
const broken = (text: string, letters: number): readonly string[] =>
  text.match(new RegExp(`\\S.{0,${letters - 1}}(?= |$)`, 'g')) ?? [];

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
    options.flatMap(([flags, says]) =>
      broken(says, pageCells - longest - 2).map(
        (words, index) => `  ${(index === 0 ? flags : '').padEnd(longest)}${words}`,
      ),
    );
  return [
    ['recoat', name, file.takes, '[options]'].filter(Boolean).join(' '),
    '',
    `${capital(summary)}.`,
    ...(file.help === undefined ? [] : ['', ...broken(file.help, pageCells)]),
    ...((file.options ?? []).length === 0 ? [] : ['', 'options:', ...listed(file.options ?? [])]),
    '',
    'for every command:',
    ...listed(everyCommand),
  ].join('\n');
}

/** `recoat demo --help`. */
export const demoPage = (): string =>
  commandPage('demo', 'an invented shop; nothing in it is kept', {
    takes: '[command] [words]',
    help: 'Alone it opens the bench of an invented shop on the screen, with a piece in every stage and windows that open within minutes. With a command it runs that on the invented shop: recoat demo hours.',
    run: () => Promise.reject(new Error('a page of help runs nothing')),
  });
