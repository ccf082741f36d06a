import type { CommandFile } from './line/command.ts';
import { record } from './line/record.ts';

/** Again and again: each names what it does. */
export const takeBack: CommandFile = {
  run: (room) => record(room, () => ({ intents: [{ do: 'take back' }] })),
};

export const bringBack: CommandFile = {
  run: (room) => record(room, () => ({ intents: [{ do: 'bring back' }] })),
};
