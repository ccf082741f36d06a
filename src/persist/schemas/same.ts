/** A type without `readonly`, written out flat, so that two ways of building it compare equal. */
type Plain<T> = T extends readonly (infer Item)[]
  ? Plain<Item>[]
  : T extends object
    ? { -readonly [Key in keyof T]: Plain<T[Key]> }
    : T;

type Identical<A, B> =
  (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false;

/**
 * Holds a schema to a type of the tracker, in both directions: `matches<Piece, z.infer<typeof piece>>(true)` compiles
 * only while neither has a field, an option or a value that the other lacks.
 */
export const matches = <Expected, Schema>(
  _same: Identical<Plain<Expected>, Plain<Schema>>,
): void => {};
