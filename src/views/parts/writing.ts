import type { TextField } from './text-field.ts';

type Cursor = { readonly cursor?: number };

/** The field whose text a screen's state keeps, with the cursor that the state keeps beside it. */
export const fieldIn = (text: string, { cursor }: Cursor): TextField =>
  cursor === undefined ? { text } : { text, cursor };

/** The state with the cursor where a field has it. */
export function withCursor<State extends Cursor>(state: State, { cursor }: TextField): State {
  const { cursor: _, ...rest } = state;
  return (cursor === undefined ? rest : { ...rest, cursor }) as State;
}

/** The state with the cursor behind the text: another field has been opened, or another text put into it. */
export const cursorBehind = <State extends Cursor>(state: State): State =>
  withCursor(state, { text: '' });
