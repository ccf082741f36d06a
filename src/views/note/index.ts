import type { Piece } from '../../tracker/bench/index.ts';
import { lineOf, segment, type Line } from '../drawing/index.ts';
import { whenInWords } from '../format/index.ts';
import { calledPiece } from '../parts/called-piece.ts';
import { fieldPage } from '../parts/field-page.ts';
import { backWhenDone } from '../parts/message-lines.ts';
import { editField } from '../parts/text-field.ts';
import { fieldIn, withCursor } from '../parts/writing.ts';
import type { ScreenModule, View } from '../screen.ts';
import type { NoteState } from '../screens.ts';

/** A note on a piece, or on one of its steps. */
export const noteScreen: ScreenModule<NoteState> = {
  draw: (state, view) => {
    const piece = view.snapshot.bench.pieces.get(state.piece);
    return fieldPage(
      {
        title: titleOf(piece, state.step),
        above: piece === undefined ? [] : earlier(piece, state.step, view),
        label: 'note',
        field: fieldIn(state.text, state),
        hints: ['It stands on the job card.'],
        keys: ['Enter: write it down', 'up, down: which step', 'Esc: no note'],
      },
      view,
    );
  },

  typing: () => true,

  press: (state, press, view, port) => {
    if (press.name === 'escape') return { back: true };
    if (press.name === 'enter') {
      const { piece, step, text } = state;
      return backWhenDone(port.act({ do: 'write note', piece, step, text }));
    }
    if (press.name === 'up' || press.name === 'down' || press.name === 'tab') {
      const piece = view.snapshot.bench.pieces.get(state.piece);
      const ids = [null, ...(piece?.steps.map(({ id }) => id) ?? [])];
      const by = press.name === 'up' ? -1 : 1;
      const next = ids[(ids.indexOf(state.step) + by + ids.length) % ids.length];
      return { state: { ...state, step: next ?? null } };
    }
    const edited = editField(fieldIn(state.text, state), press);
    return edited === null ? {} : { state: withCursor({ ...state, text: edited.text }, edited) };
  },
};

function titleOf(piece: Piece | undefined, stepId: string | null): string {
  if (piece === undefined) return 'note';
  const step = piece.steps.find(({ id }) => id === stepId);
  return `note on ${calledPiece(piece)}${step === undefined ? '' : `, ${step.name}`}`;
}

/** The last notes on the same. */
function earlier(piece: Piece, step: string | null, view: View): readonly Line[] {
  const { shop } = view.snapshot;
  const last = piece.notes.filter((note) => note.step === step).slice(-3);
  if (last.length === 0) return [];
  return [
    ...last.map(({ at, text }) => [
      segment(`${whenInWords(at, view.now, shop)}  `, 'quiet'),
      segment(text),
    ]),
    lineOf(''),
  ];
}
