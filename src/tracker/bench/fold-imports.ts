import type { BenchInMaking } from './bench-in-making.ts';
import type { BenchFact } from './facts.ts';

/** Folds in hours that were kept elsewhere, taken in file by file. */
export function foldImportFact({ imports }: BenchInMaking, fact: BenchFact): void {
  switch (fact.kind) {
    case 'hours-imported': {
      const { import: id, file, fingerprint, rows } = fact.body;
      imports.set(id, { id, file, fingerprint, rows, takenAt: fact.at });
      return;
    }
    case 'import-taken-out':
      imports.delete(fact.body.import);
      return;
    default:
    // Everything else is folded elsewhere.
  }
}
