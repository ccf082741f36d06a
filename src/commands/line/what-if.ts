import { whatIf, type MinutesIntent } from '../../tracker/learning/index.ts';
import { whatIfWords } from '../../views/hours/what-if-words.ts';
import { applyIntent } from '../../shell/apply-intent.ts';
import type { WhatIfJson } from '../json-shapes/index.ts';
import { isFailure, type Answer, type CommandOption, type Failure } from './command.ts';
import { look, type Look } from './look.ts';
import { failureOf } from './record.ts';
import type { Room } from './room.ts';

export const whatIfOption: CommandOption = [
  '--what-if',
  'record nothing; say what it would do to expected minutes',
];

/** What a change would do to expected minutes, or why it can't be made. Nothing is recorded. */
export async function answerWhatIf(
  room: Room,
  intentOf: (look: Look) => MinutesIntent | Failure,
): Promise<Answer | Failure> {
  const shop = await look(room);
  if (isFailure(shop)) return shop;
  const intent = intentOf(shop);
  if (isFailure(intent)) return intent;
  const told = { clock: room.clock, at: undefined, group: 'what if' };
  const tried = applyIntent(shop.bench, intent, told, shop);
  if (!tried.ok) return failureOf(tried);
  return {
    lines: () => [
      whatIfWords(shop.bench, intent) ?? 'expected minutes stay as they are: nothing was learned',
      'Nothing was recorded.',
    ],
    json: (): WhatIfJson => ({ classes: whatIf(shop.bench, intent) ?? [] }),
  };
}
