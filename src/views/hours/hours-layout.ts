/** Columns of the hours tables, in cells. The picture takes what is left. */
export type HoursLayout = {
  readonly isNarrow: boolean;
  readonly name: number;
  readonly picture: number;
};

/** `> `: where the marked row is. */
export const markCells = 2;
/** Estimate, range, minutes and verdict of one piece's table, each with the space before it. */
export const expectedCells = 4;
export const rangeCells = 8;
export const minutesCells = 5;
export const verdictCells = 8;
/** Pieces, ratio and range over all pieces. */
export const piecesCells = 4;
export const ratioCells = 11;
export const ratioRangeCells = 9;

const narrowPieces = 3;
const narrowRatio = 10;

/** A narrow terminal leaves estimate and range to the line about the marked row. */
export function pieceLayout(columns: number): HoursLayout {
  if (columns < 80) {
    const name = Math.max(8, Math.min(22, columns - 26));
    return {
      isNarrow: true,
      name,
      picture: columns - markCells - name - minutesCells - verdictCells,
    };
  }
  const name = columns < 100 ? 21 : 34;
  const figures = expectedCells + rangeCells + minutesCells + verdictCells;
  return { isNarrow: false, name, picture: columns - markCells - name - figures - 1 };
}

export function finishedLayout(columns: number): HoursLayout {
  if (columns < 80) {
    const name = Math.max(8, Math.min(22, columns - 26));
    const figures = narrowPieces + narrowRatio;
    return { isNarrow: true, name, picture: columns - markCells - name - figures - 1 };
  }
  const name = columns < 100 ? 21 : 34;
  const figures = piecesCells + ratioCells + ratioRangeCells;
  return { isNarrow: false, name, picture: columns - markCells - name - figures - 1 };
}

/** The part of a list that is shown around the marked row, so that this one is among them. */
export function shownAround(at: number, length: number, room: number): number {
  if (length <= room) return 0;
  return Math.max(0, Math.min(at - Math.floor(room / 2), length - room));
}

/** `step class`, and where not all rows are shown which of them is marked: `step class, 4 of 13`. */
export const tableTitle = (name: string, at: number, length: number, room: number): string =>
  length <= room ? name : `${name}, ${at + 1} of ${length}`;
