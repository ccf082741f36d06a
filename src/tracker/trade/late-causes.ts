/** Why a coat can take far longer than it should, and what is usually done about it (common practice, no source). */
export const lateCauses = ['oily wood', 'too thick', 'old can', 'silicone', 'cold'] as const;
export type LateCause = (typeof lateCauses)[number];

export const lateRemedies: Readonly<Record<LateCause, string>> = {
  'oily wood': 'wash with solvent, seal with dewaxed shellac',
  'too thick': 'wait longer; next coats thinner',
  'old can': 'try it on a sample board, use a fresh one',
  silicone: 'wash, barrier coat of dewaxed shellac',
  cold: 'warm the shop and the wood',
};
