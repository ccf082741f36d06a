import type { Chemistry, Climate, Reading } from '../trade/climate.ts';
import type { Instant, Milliseconds } from '../time/index.ts';

/**
 * The one model of every window of time in the shop.
 *
 * A *stamp* is an event at an instant. A *span* is a label's figure. An *edge* is a stamp plus a span, a check,
 * a clock time, or the earliest or latest of edges. A *stretch* is the time up to the next edge, with one meaning.
 * A *window* is its ordered stretches. Each edge counts as at least the one before it, so that every instant
 * lies in exactly one stretch and stretches come in their order.
 */

/** What can happen on a piece, part, section, coat, pass or pot. */
export const stampEvents = [
  'first-stroke',
  'last-stroke',
  'section-on',
  'section-off',
  'topped-up',
  'covered',
  'uncovered',
  'mixed',
  'in-clamps',
  'clamps-off',
  'turned',
  'washed-out',
] as const;
export type StampEvent = (typeof stampEvents)[number];

/** The milestones of a coat that a later step can wait for (after ASTM D1640 and ISO 9117, and the trade). */
export const milestones = [
  'dust-free',
  'scuff',
  'recoat',
  'turn over',
  'rub out',
  'refit',
  'wrap',
  'light use',
  'full cure',
  'dry',
  'clamps off',
] as const;
export type Milestone = (typeof milestones)[number];

/** A label's length of time, with the climate it is stated for. */
export type Span = {
  readonly ms: Milliseconds;
  /** The climate the figure is stated for; absent for what the shop's air does not move. */
  readonly statedFor?: Climate;
  readonly chemistry?: Chemistry;
  /** `grow`: conditions may only lengthen it (openings, forbidden gaps). `shrink`: only shorten it (closings, wet time, pot life). */
  readonly may?: 'grow' | 'shrink';
  /** The user's own checks may teach a better figure. */
  readonly learnable?: boolean;
};

/** How long a coat takes in this shop instead of the label's figure, and how many tried coats taught it. */
export type OwnTime = { readonly ms: Milliseconds; readonly coats: number };

/** Picks one stamp among those of the window's subject. */
export type StampChoice = {
  readonly events: readonly StampEvent[];
  /** What was put on, where a step puts on several things: `A`, `B`. */
  readonly agent?: string;
  readonly which: 'first' | 'last';
  /** Where that stamp was never made: count from the pick-up of the finished step, and mark it assumed. */
  readonly assume?: boolean;
  /** It lasts until one of these comes after it: covered until uncovered. Not in force, it moves nothing. */
  readonly until?: readonly StampEvent[];
};

export type Edge =
  | { readonly kind: 'stamp'; readonly stamp: StampChoice; readonly plus?: Span }
  /** The latest check with that finding, plus a span. A check that was not made moves nothing. */
  | { readonly kind: 'check'; readonly finding: 'ready' | 'not yet'; readonly plus?: Span }
  /** The first time the shop's clock shows `time` (`07:30`) at or after the stamp. */
  | { readonly kind: 'clock'; readonly after: StampChoice; readonly time: string }
  /** A span beyond the edge before this one. */
  | { readonly kind: 'beyond'; readonly edge: Edge; readonly plus: Span }
  | { readonly kind: 'earliest'; readonly of: readonly Edge[] }
  | { readonly kind: 'latest'; readonly of: readonly Edge[] };

/** What a stretch of time is good for. */
export type Meaning = 'wait' | 'go' | 'go after work' | 'keep off' | 'late';

/** What is lost by being in a stretch: the surface, some work, or nothing. */
export type Loss = 'spoils' | 'costs work' | 'costs nothing';

export type Stretch = {
  /** Where it begins; absent for the first, which begins with the window. */
  readonly from?: Edge;
  readonly meaning: Meaning;
  readonly loss: Loss;
  /** The extra work or the rescue, in words: `scuff 320 first`. Once a later scuff step is done, that work counts as done. */
  readonly says?: string;
};

/** Families that share their words and their look. */
export type WindowKind = 'chemical' | 'coat' | 'glue' | 'cure' | 'pot' | 'timer';

/** What one window is about: the whole step, one coat or pass of it (the next pass closes it), or one section. */
export type WindowScope = 'step' | 'pass' | 'section';

export type WindowRule = {
  /** Unique within its step. */
  readonly id: string;
  readonly kind: WindowKind;
  /** What there is to do in it, as it is said: `B on`, `wipe off`, `scuff`, `clamps off`. */
  readonly verb: string;
  /** Later steps wait for it by this name. */
  readonly milestone?: Milestone;
  readonly scope: WindowScope;
  /** The window is there from this stamp on. */
  readonly begins: StampChoice;
  readonly stretches: readonly Stretch[];
  /**
   * What ends it: a stamp of the same subject; the first stroke of the next pass; the first stroke or the finish of a
   * later step that needs this milestone; a check that found it ready; or nothing (a cure runs out by itself).
   */
  readonly closedBy:
    | { readonly by: 'stamp'; readonly stamp: StampChoice }
    | { readonly by: 'next pass' }
    | { readonly by: 'needing step' }
    | { readonly by: 'ready' }
    | { readonly by: 'nothing' };
  /** A check can move it (`r`, `n`, `t`): how much a "not yet" adds. */
  readonly notYetAdds?: Milliseconds;
  /** Protection to have on before the next stamp, said in its pings. */
  readonly gear?: string;
};

/** The state of a window at one instant. */
export type WindowState = 'before' | 'open' | 'closing' | 'late' | 'barred' | 'done';

/** Whose windows these are. */
export type WindowSubject = {
  readonly pieceId: string;
  readonly stepId: string;
  readonly partId: string | null;
  readonly pass: number;
  readonly section: number | null;
};

/** A stretch with its ends worked out. `ends` is null where it never ends or its end is not known yet. */
export type TimedStretch = Stretch & { readonly begins: Instant; readonly ends: Instant | null };

/** Which window it is: what a rule says of a subject. */
export type WindowIdentity = {
  /** Stable over restarts and corrected stamps. */
  readonly key: string;
  readonly rule: WindowRule;
  readonly subject: WindowSubject;
};

/** One window of one piece, worked out from its stamps; states are asked of it at an instant. */
export type Window = WindowIdentity & {
  readonly begunAt: Instant;
  /** The fact that the window hangs on; a later check that moved it counts instead. Pings are told apart by it. */
  readonly hangsOn: string;
  /** Some stamp it counts from was assumed, not pressed. */
  readonly assumed: boolean;
  readonly stretches: readonly TimedStretch[];
  /** When a check found it ready, if one did after the last "not yet". */
  readonly foundReadyAt: Instant | null;
  /** When a check last held it back ("not yet"); absent where none does now. */
  readonly heldBackAt?: Instant;
  readonly closedAt: Instant | null;
  /** What it waits for, where that is the next of several: `coat 2 of 4`. */
  readonly nextPass?: string;
  /** By what it opens where checks have taught another time than the label's. */
  readonly own?: OwnTime;
};

/** Where a span ends in the shop's air, and what of that air counted. */
export type SpanAir = {
  readonly end: Instant;
  /** The readings that counted, in their order; none where the span ran before or without any. */
  readonly readings: readonly Reading[];
  /** The usual night low that counted for want of a reading, and from when on; null where it never did. */
  readonly night: { readonly tempC: number; readonly from: Instant } | null;
};

/** How spans run in the shop's air. It depends on nothing but that air, never on the present. */
export type AirSense = {
  /** The end of a span that began at `from`: the label's where air does not move it. */
  readonly spanEnd: (span: Span, from: Instant) => Instant;
  /** The same with what counted; null where the air moves nothing. */
  readonly spanAir: (span: Span, from: Instant) => SpanAir | null;
  /** How many times as long as the label says such a span takes in the air of one instant, as far as it may move. */
  readonly factorAt: (span: Span, at: Instant) => number;
  /**
   * How much of a span had run at `to`, as the air was read: nothing holds it to the label's side, and no night low is
   * counted where none was read.
   */
  readonly labelTime: (span: Span, from: Instant, to: Instant) => Milliseconds;
};

/** Working out edges needs these from outside: conditions move spans, and the shop's zone knows clock times. */
export type EdgeSense = Pick<AirSense, 'spanEnd'> &
  Partial<AirSense> & {
    /** The first instant at or after `from` at which the shop's clock shows `time`. */
    readonly nextClock: (from: Instant, time: string) => Instant;
    /** The time that stands in for a span's figure; null or absent where the label's stands. */
    readonly ownTime?: (span: Span) => OwnTime | null;
  };
