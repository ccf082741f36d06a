import Conf from 'conf';
import { factsText, settingsText } from '../file/document.ts';
import type { StoreFile } from '../folder/names.ts';

/** What a file holds, as conf gets it. */
export type StoredDocument =
  | { readonly recoat: number; readonly facts: readonly object[] }
  | { readonly recoat: number; readonly settings: Readonly<Record<string, unknown>> };

const texts = new WeakMap<StoredDocument, string>();

/** Made once a document: conf writes it, and what was written is compared with it. */
export function documentText(document: StoredDocument): string {
  let text = texts.get(document);
  if (text === undefined) {
    text =
      'facts' in document
        ? factsText(document.recoat, document.facts)
        : settingsText(document.recoat, document.settings);
    texts.set(document, text);
  }
  return text;
}

/**
 * One file of the store as conf writes it: a temporary file, synced, renamed into place. Only to be made and used while
 * the lock is held.
 */
export function openConfFile(
  folder: string,
  { name }: StoreFile,
): (document: StoredDocument) => void {
  const conf = new Conf<StoredDocument>({
    cwd: folder,
    configName: name,
    accessPropertiesByDotNotation: false,
    configFileMode: 0o600,
    serialize: documentText,
    // conf reads the file before each write to keep what it stores there for itself, which is nothing: no defaults, no
    // migrations, no schema. The store has read the file already; parsing all of it again would double the cost.
    deserialize: () => ({}) as StoredDocument,
  });
  return (document) => {
    withoutSnap(() => {
      conf.store = document;
    });
  };
}

/**
 * Where SNAP is set, as in every terminal that was opened from a snap, conf writes into the file itself. A crash would
 * then cut the file short, and the previous generation, a second name of the same file, with it.
 */
function withoutSnap(work: () => void): void {
  const snap = process.env.SNAP;
  delete process.env.SNAP;
  try {
    work();
  } finally {
    if (snap !== undefined) process.env.SNAP = snap;
  }
}
