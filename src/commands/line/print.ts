import type { World } from '../../shell/world.ts';
import { visible } from '../../views/drawing/visible.ts';
import type { RefusedJson } from '../json-shapes/index.ts';
import { isFailure, type Answer, type Failure } from './command.ts';
import { exitCodes, type ExitCode } from './exit-codes.ts';

/** Prints an answer or a failure. @returns the exit code. */
export function printResult(result: Answer | Failure, asJson: boolean, world: World): ExitCode {
  if (isFailure(result)) return printFailure(result, asJson, world);
  if (asJson) world.print(jsonText(result.json()));
  else world.print(`${result.lines().map(visible).join('\n')}\n`);
  return result.code ?? exitCodes.done;
}

function printFailure({ failed, says, nearest }: Failure, asJson: boolean, world: World): ExitCode {
  if (asJson) {
    const refused: RefusedJson = { refused: says, nearest };
    world.print(jsonText(refused));
  }
  printNotice(nearest.length === 0 ? says : `${says} Nearest: ${nearest.join(', ')}.`, world);
  return exitCodes[failed];
}

export const printNotice = (text: string, world: World): void =>
  world.printError(`${visible(text)}\n`);

/** Everything from here on that may act on a terminal and that JSON leaves as it is. */
const beyondAscii = /[\u007f-\uffff]/g;

/** One line of JSON. What would act on a terminal is written as an escape, which reads back the same. */
export const jsonText = (value: object): string =>
  `${JSON.stringify(value).replace(beyondAscii, escapeActing)}\n`;

const escapeActing = (character: string): string =>
  isHalf(character) || visible(character) === character
    ? character
    : `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;

/** Half of a surrogate pair, which JSON.stringify has seen to. */
const isHalf = (character: string): boolean => character >= '\ud800' && character <= '\udfff';
