import type { Piece } from './piece.ts';

/** A piece of which nothing was told yet, and on which nothing was done. */
export const barePiece = {
  kind: null,
  wood: null,
  areaM2: null,
  profile: null,
  fittings: null,
  joints: null,
  drawers: null,
  yearMade: null,
  promised: null,
  parts: [],
  partners: [],
  stamps: [],
  finishes: [],
  checks: [],
  coatWeights: [],
  lateness: [],
  moisture: [],
  notes: [],
  answers: {},
  waivers: [],
  hold: null,
} as const satisfies Partial<Piece>;
