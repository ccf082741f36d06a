import { lineOf } from '../drawing/index.ts';
import { page, scrolledBy, scrolledPage } from '../page.ts';
import { fieldPage } from '../parts/field-page.ts';
import { heading } from '../parts/heading.ts';
import { backWhenDone } from '../parts/message-lines.ts';
import { editField } from '../parts/text-field.ts';
import { fieldIn, withCursor } from '../parts/writing.ts';
import { refused, type ScreenModule } from '../screen.ts';
import type { ImportHoursState } from '../screens.ts';
import { previewPage, takenAlready } from './preview-page.ts';

/** Hours that were kept elsewhere: the file's name, then what would be taken of it and what is refused, then yes or no. */
export const importHoursScreen: ScreenModule<ImportHoursState> = {
  draw: (state, view) => {
    if (state.looked !== null)
      return { lines: scrolledPage(previewPage(state, state.looked, view), view) };
    if (state.isRead === true)
      return {
        lines: page(
          [...heading(lineOf('hours kept elsewhere', 'strong'), view), lineOf('Reading.')],
          [],
          view,
        ),
      };
    return fieldPage(
      {
        title: 'hours kept elsewhere',
        above: [],
        label: 'file',
        field: fieldIn(state.text, state),
        hints: [
          'CSV whose first line names date, piece, step class, minutes, estimate.',
          'It is shown first; nothing is taken yet.',
        ],
        keys: ['Enter: look at it', 'Esc: back'],
      },
      view,
    );
  },

  load: async (state, port) =>
    state.isRead === true && state.looked === null && port.lookAtHours !== undefined
      ? { ...state, looked: await port.lookAtHours(state.text.trim()) }
      : state,

  typing: ({ isRead }) => isRead !== true,

  press: (state, press, view, port) => {
    const { looked, isRead: _, ...writing } = state;
    if (looked === null && state.isRead !== true) {
      if (press.name === 'escape') return { back: true };
      if (press.name === 'enter')
        return state.text.trim() === ''
          ? { message: refused('Not looked at: no file is named yet.') }
          : { replace: { ...state, isRead: true } };
      const edited = editField(fieldIn(state.text, state), press);
      return edited === null ? {} : { state: withCursor({ ...state, text: edited.text }, edited) };
    }
    if (press.name === 'escape' || press.name === 'n')
      return { replace: { ...writing, looked: null, from: 0 } };
    if (looked === null) return {};
    if (press.name === 'y') {
      const { rows, fingerprint } = looked;
      if (takenAlready(looked, view) !== null || rows.length === 0)
        return { message: refused('Not taken: there is nothing in it to take. n: another file.') };
      return backWhenDone(
        port.act({ do: 'import hours', file: state.text.trim(), fingerprint, rows }),
      );
    }
    const from = scrolledBy(press, previewPage(state, looked, view), view);
    return from === null ? {} : { state: { ...state, from } };
  },
};
