import { keyWord } from '../keys/key-map.ts';

/** What keys do on an opened piece. Help lines and matching are made from this. */
export type PieceAct =
  | 'pick up'
  | 'insert'
  | 'repeat'
  | 'skip'
  | 'reword'
  | 'earlier'
  | 'later'
  | 'answer'
  | 'product'
  | 'note'
  | 'describe'
  | 'parts'
  | 'moisture'
  | 'match'
  | 'carried in'
  | 'coat'
  | 'cautions'
  | 'job card'
  | 'off the bench'
  | 'back';

export type PieceKey = {
  readonly act: PieceAct;
  /** Names of presses; the first is the one that is told. */
  readonly keys: readonly string[];
  readonly says: string;
};

export const pieceKeys: readonly PieceKey[] = [
  { act: 'pick up', keys: ['enter'], says: 'pick up' },
  { act: 'insert', keys: ['i'], says: 'insert' },
  { act: 'repeat', keys: ['e'], says: 'repeat' },
  { act: 'skip', keys: ['x'], says: 'skip' },
  { act: 'reword', keys: ['w'], says: 'reword' },
  { act: 'earlier', keys: [',', '['], says: 'step earlier' },
  { act: 'later', keys: ['.', ']'], says: 'step later' },
  { act: 'answer', keys: ['a'], says: 'answer' },
  { act: 'product', keys: ['p'], says: 'product' },
  { act: 'note', keys: ['n'], says: 'note' },
  { act: 'describe', keys: ['o'], says: 'describe' },
  { act: 'parts', keys: ['l'], says: 'parts' },
  { act: 'moisture', keys: ['u'], says: 'moisture' },
  { act: 'match', keys: ['m'], says: 'matches' },
  { act: 'carried in', keys: ['f'], says: 'from the cold' },
  { act: 'coat', keys: ['g'], says: 'coat weight' },
  { act: 'cautions', keys: ['c'], says: 'cautions' },
  { act: 'job card', keys: ['j'], says: 'job card' },
  { act: 'off the bench', keys: ['y'], says: 'off the bench' },
  { act: 'back', keys: ['escape', 'left'], says: 'bench' },
];

export const pieceAct = (press: string): PieceAct | null =>
  pieceKeys.find(({ keys }) => keys.includes(press))?.act ?? null;

/** `i insert`, `e repeat`, ...: all but picking up, which the line above it names together with the step. */
export const pieceHints = (): readonly string[] =>
  pieceKeys
    .filter(({ act }) => act !== 'pick up')
    .map(({ keys, says }) => `${keyWord(keys[0] ?? '')} ${says}`);
