import { barePiece } from '../bench/bare-piece.ts';
import type { Expectation } from '../bench/facts.ts';
import type { Bench, ImportedHours } from '../bench/bench.ts';
import type { Piece, PlannedStep } from '../bench/piece.ts';
import type { PieceHours, StepHours } from './hours.ts';

/** The model of estimates that came with hours from elsewhere. They claim no range. */
export const importedEstimate = 'imported estimate';

const kept = new WeakMap<ImportedHours['rows'], readonly PieceHours[]>();

/** Hours that were kept elsewhere, as finished pieces: told by their names within a file, and marked. */
export const importedPieces = ({ imports = [] }: Pick<Bench, 'imports'>): readonly PieceHours[] =>
  imports.flatMap((each) => {
    const known = kept.get(each.rows) ?? piecesOf(each);
    kept.set(each.rows, known);
    return known;
  });

const piecesOf = ({ id, rows }: ImportedHours): readonly PieceHours[] =>
  [...Map.groupBy(rows.filter(isWork), ({ piece }) => piece)].map(([name, own]) => {
    const steps = own.map((row, index): StepHours => ({
      step: stepOf(index, row),
      state: 'done',
      expected: estimateOf(row.estimate),
      minutes: row.minutes,
      about: false,
      setup: 0,
      sessions: 0,
      setups: 0,
      verdict: null,
    }));
    const minutes = own.reduce((sum, row) => sum + row.minutes, 0);
    return {
      piece: pieceOf(`${id}:${name}`, name, own),
      steps,
      classes: [],
      done: {
        expected: estimateOf(own.reduce((sum, row) => sum + row.estimate, 0)),
        minutes,
        verdict: null,
      },
      toGo: null,
      setup: { minutes: 0, expected: 0, about: false },
      begun: 0,
      countedOff: 0,
      other: 0,
      recorded: minutes,
      sessions: 0,
      imported: true,
    };
  });

const isWork = ({ minutes, estimate }: ImportedHours['rows'][number]): boolean =>
  minutes > 0 && estimate > 0;

const estimateOf = (minutes: number): Expectation => ({
  minutes,
  low: minutes,
  high: minutes,
  chance: 0,
  model: importedEstimate,
});

const stepOf = (
  index: number,
  { stepClass, estimate }: ImportedHours['rows'][number],
): PlannedStep => ({
  id: String(index + 1),
  name: stepClass,
  stepClass,
  minutes: { typical: estimate, low: estimate, high: estimate },
  driver: 'fixed',
  setupMinutes: 0,
  stamps: [],
  windows: [],
  needs: [],
  cautions: [],
  skipped: false,
  copyOf: null,
});

function pieceOf(id: string, name: string, rows: ImportedHours['rows']): Piece {
  const days = rows.map(({ at }) => at);
  return {
    id,
    number: null,
    name,
    ...barePiece,
    schedule: { id: 'imported', name: 'imported', hash: '' },
    products: {},
    steps: [],
    place: 'past',
    addedAt: Math.min(...days),
    leftAt: Math.max(...days),
  };
}
