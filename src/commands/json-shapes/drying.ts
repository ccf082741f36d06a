import type { IsoInstant } from './bench.ts';

/** What checks have taught of how long coats take. Minutes are counted from the last stroke. */
export type DryingJson = {
  /** Whether windows open by it: the setting `learn-drying`. */
  readonly learns: boolean;
  readonly products: readonly {
    readonly id: string;
    readonly name: string;
    readonly milestones: readonly {
      readonly milestone: string;
      readonly labelMinutes: number;
      /** In the label's own air; null before the first coat that teaches. */
      readonly yours: {
        readonly medianMinutes: number;
        readonly lowMinutes: number;
        readonly highMinutes: number;
        readonly chance: number;
      } | null;
      readonly coats: number;
      readonly foundReady: number;
      /** The figure by which windows open before the air is counted: the label's, or one taught by checks. */
      readonly opensMinutes: number;
      readonly opensBy: 'label' | 'checks';
      /** How many times as long it takes in the air of the last reading; null without one. */
      readonly timesInAirNow: number | null;
      /** Coats on the bench that were tried and teach nothing, the latest first, and what was told of them. */
      readonly keptOut: readonly { readonly lastStroke: IsoInstant; readonly because: string }[];
      /** The last three coats, the latest first. */
      readonly lastCoats: readonly {
        readonly lastStroke: IsoInstant;
        readonly notYet: TriedJson | null;
        readonly ready: TriedJson | null;
      }[];
    }[];
  }[];
};

/** When a coat was tried: by the clock, and as long as that is in the label's own air. */
type TriedJson = { readonly minutes: number; readonly labelMinutes: number };
