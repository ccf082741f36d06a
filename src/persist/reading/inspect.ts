import { readFileSync } from 'node:fs';
import { migrate, type FileForm } from '../file/form.ts';
import { identify, unreadable, type Identity } from '../file/identity.ts';
import { readDocument, type Damage } from '../file/document.ts';
import type { Contents, ContentsName } from '../folder/names.ts';
import { joinFacts } from '../join-facts.ts';
import { bad, good, type Result } from '../result.ts';

/**
 * Checks contents against their schemas; `text` is the file's own, to find the line. Reading without it takes only
 * files that the program vouched for.
 */
export type ContentsCheck = (contents: unknown, holds: ContentsName, text: string) => Damage | null;

export type Inspection<Name extends ContentsName> =
  | { readonly is: 'absent' }
  | {
      readonly is: 'fine';
      readonly identity: Identity;
      readonly contents: Contents[Name];
      /** The form that it has on the disk. */
      readonly form: number;
    }
  /** Needs a check that was not given. */
  | { readonly is: 'unchecked' }
  | { readonly is: 'damaged'; readonly damage: Damage };

/** Looks at one file and changes nothing. A problem is what no mending can help. */
export function inspect<Name extends ContentsName>(
  path: string,
  holds: Name,
  form: FileForm,
  check: ContentsCheck | null,
): Result<Inspection<Name>> {
  const identity = identify(path);
  if (!identity.ok) return identity;
  if (identity.value === null) return good({ is: 'absent' });
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    return unreadable(path, error);
  }
  const read = readDocument(bytes, holds);
  if ('says' in read) return good({ is: 'damaged', damage: read });
  if (read.form > form.current) return newer(path, read.form, form.current);
  const fine = (contents: unknown): Result<Inspection<Name>> =>
    good({
      is: 'fine',
      identity: identity.value ?? '',
      contents: withoutDuplicates(contents) as Contents[Name],
      form: read.form,
    });
  if (read.vouched && read.form === form.current) return fine(read.contents);
  if (check === null) return good({ is: 'unchecked' });
  const text = bytes.toString('utf8');
  // Bytes that are no UTF-8 would be replaced without a word.
  if (text.includes('\uFFFD') && !Buffer.from(text).equals(bytes)) {
    return good({ is: 'damaged', damage: { says: 'it holds bytes that are no text', line: null } });
  }
  if (read.form === form.current) {
    const damage = check(read.contents, holds, text);
    return damage ? good({ is: 'damaged', damage }) : fine(read.contents);
  }
  const raised = broughtUp(read, holds, form, check);
  if ('failure' in raised)
    return bad(
      'damaged',
      path,
      `Not opened: ${path} has form ${read.form} and can't be brought up to form ${form.current}: ${raised.failure}.`,
      'It was left as it is. Use the version of recoat that wrote it, and report this.',
    );
  return fine(raised.contents);
}

/**
 * An older file's contents in the present form, checked. One that can't be brought up is left alone: the fault may be the
 * program's, and setting files aside for it would take the user's record away.
 */
function broughtUp(
  older: { readonly form: number; readonly contents: unknown },
  holds: ContentsName,
  form: FileForm,
  check: ContentsCheck,
): { readonly contents: unknown } | { readonly failure: string } {
  try {
    const contents = migrate(form, older.form, holds, older.contents);
    const damage = check(contents, holds, '');
    return damage === null ? { contents } : { failure: damage.says };
  } catch (error) {
    return { failure: String(error) };
  }
}

const newer = (path: string, form: number, current: number) =>
  bad(
    'newer',
    path,
    `Not opened: ${path} was written by a newer recoat (form ${form}; this one knows up to ${current}).`,
    'Nothing was touched. Use the newer recoat, here and in every other window.',
  );

/** A fact that was written twice happened once. */
const withoutDuplicates = (contents: unknown): unknown =>
  Array.isArray(contents)
    ? joinFacts([], contents as readonly { readonly id: string }[])
    : contents;
