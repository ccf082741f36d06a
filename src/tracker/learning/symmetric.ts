/** A symmetric matrix by its rows, all of them whole. */
export type Symmetric = readonly (readonly number[])[];

/** The same while it is being worked on. */
export type SymmetricInMaking = number[][];

/** A row of regressors by its places that are not nought: all that a row of minutes ever has. */
export type Sparse = readonly { readonly at: number; readonly value: number }[];

/** Matrix times sparse vector. */
export const times = (matrix: Symmetric, vector: Sparse): number[] =>
  matrix.map((row) => vector.reduce((sum, { at, value }) => sum + (row[at] ?? 0) * value, 0));

/** Vector times sparse vector. */
export const dot = (whole: readonly number[], vector: Sparse): number =>
  vector.reduce((sum, { at, value }) => sum + (whole[at] ?? 0) * value, 0);

/** Takes `column` times itself, divided by `by`, off the matrix: what one more row of a regression leaves uncertain. */
export function takeOff(matrix: SymmetricInMaking, column: readonly number[], by: number): void {
  for (const [i, row] of matrix.entries()) {
    const own = column[i] ?? 0;
    // In this order both halves are rounded alike, and the matrix stays symmetric through any number of rows.
    for (let j = 0; j < row.length; j++) row[j] = (row[j] ?? 0) - (own * (column[j] ?? 0)) / by;
  }
}

/** Multiplies row and column `i` by `factors[i]`, for all `i`. */
export function stretch(matrix: SymmetricInMaking, factors: readonly number[]): void {
  for (const [i, row] of matrix.entries()) {
    const factor = factors[i] ?? 1;
    for (let j = 0; j < row.length; j++) row[j] = (row[j] ?? 0) * (factor * (factors[j] ?? 1));
  }
}

/** The rows and columns named, in that order. */
export const cutOut = (matrix: Symmetric, places: readonly number[]): Symmetric =>
  places.map((i) => places.map((j) => matrix[i]?.[j] ?? 0));

/** A pivot that is a smaller part of its place than this is what rounding left of nought. */
const rounding = 1e-12;

/**
 * The lower triangle whose product with its own transpose is the matrix (Cholesky). A pivot that rounding left near nought
 * or below it counts as nought, and its column stays empty: the matrix is one of covariances and has none that are less.
 */
export function rootOf(matrix: Symmetric): readonly (readonly number[])[] {
  const root: number[][] = [];
  for (const [i, row] of matrix.entries()) {
    const own: number[] = [];
    for (let j = 0; j <= i; j++) {
      const above = j === i ? own : (root[j] ?? []);
      let rest = row[j] ?? 0;
      for (let k = 0; k < j; k++) rest -= (own[k] ?? 0) * (above[k] ?? 0);
      const pivot = above[j] ?? 0;
      const isRounding = j === i && rest <= rounding * (row[j] ?? 0);
      own.push(j === i ? (isRounding ? 0 : Math.sqrt(rest)) : pivot > 0 ? rest / pivot : 0);
    }
    root.push(own);
  }
  return root;
}
