/** What kept the store from doing as asked. Nothing was changed. */
export type StoreProblem = {
  readonly kind:
    | 'damaged' // not readable as what it should be, and not mended
    | 'newer' // written by a newer version of the program; left untouched
    | 'unwritable' // no right or no way to write there
    | 'unreadable' // no right or no way to read it
    | 'full' // no room on the disk
    | 'busy' // another process kept the store locked
    | 'unsafe link' // a link, or no plain file, where a file of the store should be
    | 'not empty' // something is there already that an import would mix with
    | 'gone'; // the data folder is not there any more
  /** Path of the file or folder. */
  readonly file: string;
  /** What is wrong and where; starts with `Not ...:`. */
  readonly says: string;
  readonly todo: string;
};

export type Result<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: StoreProblem };

/** Something the user must be told although the work went on. */
export type Notice = {
  readonly file: string;
  readonly says: string;
  readonly todo: string;
};

export const good = <T>(value: T): Result<T> => ({ ok: true, value });

export const bad = (
  kind: StoreProblem['kind'],
  file: string,
  says: string,
  todo: string,
): { readonly ok: false; readonly problem: StoreProblem } => ({
  ok: false,
  problem: { kind, file, says, todo },
});
