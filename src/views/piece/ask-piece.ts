import type { Intent, Piece, PlannedStep } from '../../tracker/bench/index.ts';
import { readMoisture } from '../../tracker/trade/index.ts';
import { segment, type Line } from '../drawing/index.ts';
import { shopDay } from '../format/index.ts';
import { listClosed, freshGuard } from '../keys/guard.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { fieldPage, type FieldPage } from '../parts/field-page.ts';
import { messageOf } from '../parts/message-lines.ts';
import { fieldIn } from '../parts/writing.ts';
import type { BenchPort } from '../port.ts';
import { refused, type Frame, type Step, type View } from '../screen.ts';
import type { PieceState } from '../screens.ts';
import { describe, descriptionExample, readDescription } from './describe-piece.ts';
import { isToDo, markedStep } from './marked-step.ts';
import { moistureLines } from './moisture-lines.ts';

/** What can be written on an opened piece. */
export type Asks = Exclude<NonNullable<PieceState['asks']>, 'class' | 'match' | 'coat'>;

/** Begins to ask: a field, with what is known already in it. */
export function ask(state: PieceState, asks: Asks, piece: Piece, view: View): PieceState {
  const { cursor: _, ...rest } = state;
  return { ...rest, asks, text: begins(asks, state, piece, view) };
}

function begins(asks: Asks, state: PieceState, piece: Piece, view: View): string {
  switch (asks) {
    case 'insert':
    case 'moisture':
      return '';
    case 'reword':
      return markedStep(state, piece)?.name ?? '';
    case 'parts':
      return piece.parts.map(({ name }) => name).join(', ');
    case 'describe':
      return describe(piece, view.snapshot.shop.lengths);
  }
}

/** Asks nothing any more. The key that ended it must not act on the piece too. */
export function askedOut(state: PieceState, view: View): PieceState {
  const { asks: _asks, text: _text, cursor: _cursor, from: _from, ...rest } = state;
  return { ...rest, guard: listClosed(state.guard ?? freshGuard, view.now) };
}

export function drawAsking(asks: Asks, state: PieceState, piece: Piece, view: View): Frame {
  const step = markedStep(state, piece);
  const page: Omit<FieldPage, 'field'> = {
    insert: {
      title: `insert a step into ${calledPiece(piece)}`,
      above: [place(piece, step)],
      label: 'step  ',
      hints: ['What there is to do: second bleach round, left rail reglued, sand 180.'],
      keys: ['Enter: next, its kind of work', 'Esc: no step'],
    },
    reword: {
      title: `reword a step of ${calledPiece(piece)}`,
      above: [[segment('so far  ', 'quiet'), segment(step?.name ?? '')]],
      label: 'step  ',
      hints: ['Minutes, windows and what was recorded stay with it.'],
      keys: ['Enter: reword it', 'Esc: leave it'],
    },
    parts: {
      title: `parts of ${calledPiece(piece)}`,
      label: 'parts',
      hints: [
        'What is worked apart, with commas between: case, drawers, top. Empty: no parts.',
        'Tab on the bench goes from part to part.',
      ],
      keys: ['Enter: name them', 'Esc: leave them'],
    },
    describe: {
      title: `what is known of ${calledPiece(piece)}`,
      label: 'known',
      hints: [
        `With commas between: ${descriptionExample(view.snapshot.shop.lengths)}.`,
        'What is not in the line is taken away. name ...: another name.',
      ],
      keys: ['Enter: note it', 'Esc: leave it'],
    },
    moisture: {
      title: `what a moisture meter shows on ${calledPiece(piece)}`,
      above: moistureLines(piece, view),
      label: 'meter ',
      hints: [
        'wood 12.5, untouched 9: percent on the worked wood, and on a spot that was left alone.',
        'Dry enough to coat is within one point of the untouched spot.',
      ],
      keys: ['Enter: note it', 'Esc: nothing read'],
    },
  }[asks];
  return fieldPage({ ...page, field: fieldIn(state.text ?? '', state) }, view);
}

/** Where an inserted step goes: before the marked one; at the end once nothing is to do any more. */
export const insertedBefore = (piece: Piece, step: PlannedStep | null): PlannedStep | null =>
  piece.steps.some((each) => isToDo(piece, each)) ? step : null;

function place(piece: Piece, step: PlannedStep | null): Line {
  const before = insertedBefore(piece, step);
  return before === null
    ? [segment('at the end', 'quiet')]
    : [segment('before  ', 'quiet'), segment(before.name)];
}

/** What Enter does with what was written. A refusal keeps the field as it is. */
export function answer(
  asks: Asks,
  state: PieceState,
  piece: Piece,
  view: View,
  port: BenchPort,
): Step<PieceState> {
  const text = (state.text ?? '').trim();
  if (asks === 'insert') {
    return text === ''
      ? { message: refused('Not inserted: a step needs a name.') }
      : { state: { ...state, asks: 'class', from: 0 } };
  }
  const intent = intentOf(asks, text, state, piece, view);
  if ('says' in intent) return { message: refused(`Not noted: ${intent.says}`) };
  const reply = port.act(intent);
  const message = messageOf(reply);
  return reply.ok ? { state: askedOut(state, view), message } : { message };
}

function intentOf(
  asks: Exclude<Asks, 'insert'>,
  text: string,
  state: PieceState,
  piece: Piece,
  { now, snapshot }: View,
): Intent | { readonly says: string } {
  switch (asks) {
    case 'reword': {
      const step = markedStep(state, piece);
      if (step === null) return { says: 'there is no step to reword.' };
      return { do: 'reword step', piece: piece.id, step: step.id, name: text };
    }
    case 'moisture': {
      const found = readMoisture(text);
      if (!found.ok) return { says: found.says };
      const step = markedStep(state, piece)?.id ?? null;
      return { do: 'read moisture', piece: piece.id, part: null, step, ...found.read };
    }
    case 'parts':
      return { do: 'name parts', piece: piece.id, names: text.split(',') };
    case 'describe': {
      const { lengths, zone } = snapshot.shop;
      const read = readDescription(text, piece, lengths, shopDay(now, zone));
      if (!read.ok) return { says: read.says };
      return { do: 'describe piece', piece: piece.id, changes: read.changes };
    }
  }
}
