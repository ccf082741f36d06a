import { failure, type CommandOption, type Failure, type Given } from './command.ts';

export const csvOption: CommandOption = ['--csv', 'as CSV (RFC 4180), for a spreadsheet'];

/** An answer has one form; of two that are asked for neither is guessed. */
export function twoForms(given: Given, forms: readonly string[]): Failure | null {
  const [first, second] = forms.filter((form) => given.has(form));
  if (first === undefined || second === undefined) return null;
  return failure(
    'usage',
    `Not shown: --${first} and --${second} are two forms of one answer. Give one of them.`,
  );
}
