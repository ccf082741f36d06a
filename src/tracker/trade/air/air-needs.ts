/** The air that a product needs to go on, in degrees Celsius and percent; what is absent is as usual. */
export type AirNeeds = {
  readonly fromC?: number;
  readonly toC?: number;
  readonly rhUpTo?: number;
  /** The publication that says so, or "common practice, no source". */
  readonly source: string;
};

/**
 * What counts where a product says nothing: the US federal painting manual's 7 to 32 C narrowed to the 10 C that the Wood
 * Handbook (chapter 16) asks for waterborne coats, and the 85 % of coating guides.
 */
export const usualAirNeeds = { fromC: 10, toC: 32, rhUpTo: 85 } as const;
