import type { ContentsName } from '../folder/names.ts';

/** One step from the form before it to form `to`. Pure: what it returns is checked like anything read. */
export type Migration = {
  readonly to: number;
  /** What changes, for the developer: `readings get a place`. */
  readonly what: string;
  readonly facts: (facts: readonly unknown[], holds: ContentsName) => readonly unknown[];
  readonly settings: (
    settings: Readonly<Record<string, unknown>>,
  ) => Readonly<Record<string, unknown>>;
};

/** The form in which files are written, and the way to it from older ones. */
export type FileForm = { readonly current: number; readonly migrations: readonly Migration[] };

/** Numbers must run 2, 3, 4 ... without gap or repeat; a list that doesn't is a mistake in the program. */
export function fileForm(migrations: readonly Migration[]): FileForm {
  for (const [index, { to, what }] of migrations.entries()) {
    if (to !== index + 2)
      throw new Error(`migration "${what}" is numbered ${to}, expected ${index + 2}`);
  }
  return { current: migrations.length + 1, migrations };
}

/**
 * Every change of the file form, in order. A field or kind of fact that the schemas of today would refuse, or whose
 * meaning changed, is such a change: an older program must not touch what it would misread.
 */
export const presentForm = fileForm([]);

/** Brings contents of an older form up to the present one. */
export function migrate(
  form: FileForm,
  from: number,
  holds: ContentsName,
  contents: unknown,
): unknown {
  return form.migrations
    .filter(({ to }) => to > from)
    .reduce(
      (result, step) =>
        holds === 'settings'
          ? step.settings(result as Readonly<Record<string, unknown>>)
          : step.facts(result as readonly unknown[], holds),
      contents,
    );
}
