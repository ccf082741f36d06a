/**
 * What commands answer with `--json`: one object on one line. These shapes are for other programs, so a field keeps its
 * name and meaning; new ones may come beside them. No field is ever left out: what isn't there is null or an empty list.
 * Nothing here depends on language, units or the 12 or 24 hours of the shop.
 */

export type * from './bench.ts';
export type * from './drying.ts';
export type * from './hours.ts';
export type * from './job-card.ts';
export type * from './piece.ts';
export type * from './shop.ts';
