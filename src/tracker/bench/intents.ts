import type { CalendarDay, Instant, Milliseconds } from '../time/index.ts';
import type { LateCause } from '../trade/late-causes.ts';
import type { FinishingSchedule, Product, Step } from '../trade/schedule.ts';
import type { EdgeSense, StampEvent } from '../windows/model.ts';
import type {
  CoatWeight,
  Finding,
  ImportedRow,
  OvernightAnswer,
  OvernightQuestion,
  PieceDescription,
  Target,
} from './facts.ts';

/** Work that takes the piece in hand by itself. `putDown` is the session to end for it where both hands are full. */
type WorkThatPicksUp = {
  readonly piece: string;
  readonly part: string | null;
  readonly putDown?: string;
};

/** What a person can ask of the bench, as data. `piece`, `part`, `step` are ids; `part` null is the whole piece. */
export type Intent =
  | {
      readonly do: 'add piece';
      readonly name: string;
      readonly schedule: FinishingSchedule;
      readonly describe?: PieceDescription;
    }
  | { readonly do: 'describe piece'; readonly piece: string; readonly changes: PieceDescription }
  /** Names of all parts, in order; parts keep their ids by name. */
  | { readonly do: 'name parts'; readonly piece: string; readonly names: readonly string[] }
  | {
      readonly do: 'insert step';
      readonly piece: string;
      readonly step: Omit<Step, 'id'>;
      readonly before: string | null;
    }
  | { readonly do: 'repeat step'; readonly piece: string; readonly step: string }
  | {
      readonly do: 'move step';
      readonly piece: string;
      readonly step: string;
      readonly before: string | null;
    }
  | {
      readonly do: 'skip step';
      readonly piece: string;
      readonly step: string;
      readonly skipped: boolean;
    }
  | {
      readonly do: 'reword step';
      readonly piece: string;
      readonly step: string;
      readonly name: string;
    }
  /** `step` absent: the question that waits for its answer. `answer` null takes the answer away. */
  | {
      readonly do: 'answer';
      readonly piece: string;
      readonly step?: string;
      readonly answer: string | null;
    }
  /** What a step that is not begun will use. */
  | {
      readonly do: 'use product';
      readonly piece: string;
      readonly step: string;
      readonly product: Product;
    }
  | {
      readonly do: 'place hold';
      readonly piece: string;
      readonly reason: string;
      readonly askAgain: CalendarDay | null;
    }
  | { readonly do: 'lift hold'; readonly piece: string }
  /** It came in from somewhere colder. */
  | { readonly do: 'carry in'; readonly piece: string }
  | { readonly do: 'take off bench'; readonly piece: string }
  | { readonly do: 'put back on bench'; readonly piece: string }
  | { readonly do: 'remove piece'; readonly piece: string }
  | {
      readonly do: 'write note';
      readonly piece: string;
      readonly step: string | null;
      readonly text: string;
    }
  /** `step` absent: the piece's current step. With several pieces the minutes are shared out. */
  | {
      readonly do: 'pick up';
      readonly targets: readonly { piece: string; part: string | null; step?: string | null }[];
      readonly putDown?: string;
      /** Why a step is begun although its trial wasn't found ready. */
      readonly anyway?: string;
    }
  /** Takes a piece along into what is in hand, at its like step; one that is along already is taken out again. */
  | { readonly do: 'take along'; readonly piece: string; readonly part: string | null }
  /** `session` absent: the one that holds `piece`, or the only one in hand. */
  | { readonly do: 'put down'; readonly piece?: string; readonly session?: string }
  /** The stamp that the sequence of the current step expects next (Space). */
  | ({ readonly do: 'next stamp' } & WorkThatPicksUp)
  | ({ readonly do: 'first stroke' } & WorkThatPicksUp)
  | ({ readonly do: 'next section' } & WorkThatPicksUp)
  | {
      readonly do: 'done';
      readonly piece: string;
      readonly part: string | null;
      /** How heavy the coat went on. */
      readonly coat?: CoatWeight;
    }
  /** Any stamp outright, for what the sequence does not expect: topped up, covered, washed out. */
  | {
      readonly do: 'stamp';
      readonly piece: string;
      readonly part: string | null;
      readonly event: StampEvent;
      readonly agent?: string;
      /** Absent: the step of which it changes a window, the one in hand before others. */
      readonly step?: string;
    }
  | {
      readonly do: 'check';
      readonly piece: string;
      readonly part: string | null;
      readonly finding: Finding;
      readonly shown?: string;
      readonly window?: string;
      /** With trouble: what is done about it, put in after the step that had it, in this order. */
      readonly remedies?: readonly Omit<Step, 'id'>[];
    }
  /** Two pieces that should come out alike; asked again it is undone. */
  | { readonly do: 'match pieces'; readonly piece: string; readonly partner: string }
  /** `step` absent: the last coat that is on. */
  | {
      readonly do: 'tell coat weight';
      readonly piece: string;
      readonly part: string | null;
      readonly step?: string;
      readonly weight: CoatWeight;
    }
  /** Why the last "not yet" came so late. */
  | { readonly do: 'explain lateness'; readonly piece: string; readonly cause: LateCause }
  /** What a moisture meter showed, in percent; one press may tell of both spots. */
  | {
      readonly do: 'read moisture';
      readonly piece: string;
      readonly part: string | null;
      readonly step?: string | null;
      readonly wood?: number;
      readonly untouched?: number;
    }
  /** Moves the latest stamp of the piece; positive is earlier. `ms` absent: 1 min for dwells and minutes, 5 for coats. */
  | {
      readonly do: 'move stamp';
      readonly piece: string;
      readonly earlier: boolean;
      readonly ms?: Milliseconds;
    }
  | {
      readonly do: 'start timer';
      readonly label: string;
      readonly ms: Milliseconds;
      readonly piece: string | null;
    }
  | { readonly do: 'close timer'; readonly timer: string }
  /** Mixes a pot that several pieces may share. */
  | { readonly do: 'mix pot'; readonly product: Product }
  | { readonly do: 'wash out pot'; readonly pot: string }
  /** It was mixed earlier or later than told. */
  | {
      readonly do: 'move pot';
      readonly pot: string;
      readonly earlier: boolean;
      readonly ms?: Milliseconds;
    }
  | {
      readonly do: 'correct session';
      readonly session: string;
      readonly start?: Instant;
      readonly end?: Instant;
      readonly targets?: readonly Target[];
      readonly dropped?: boolean;
    }
  /** The steps of a piece, or those worked in one session, teach nothing (`leave` true), or do again. */
  | {
      readonly do: 'leave out of learning';
      readonly piece: string;
      readonly session: string | null;
      readonly leave: boolean;
    }
  /** Hours that were kept elsewhere, all of one file together. */
  | {
      readonly do: 'import hours';
      readonly file: string;
      readonly fingerprint: string;
      readonly rows: readonly ImportedRow[];
    }
  | { readonly do: 'take out import'; readonly import: string }
  | { readonly do: 'take back' }
  | { readonly do: 'bring back' }
  | {
      readonly do: 'shut up shop';
      readonly answers: Readonly<Partial<Record<OvernightQuestion, OvernightAnswer>>>;
      readonly backAt: Instant | null;
    }
  /** Oily rags and the like of all work till now lie where they can't catch fire. */
  | { readonly do: 'deal with rags' }
  | { readonly do: 'note clock step'; readonly byMs: Milliseconds };

/** What comes in from outside with an intent. */
export type IntentContext = {
  readonly now: Instant;
  /** Identifies the key press; ids of the facts it makes are derived from it. */
  readonly group: string;
  /** When it happened, if that was earlier than now ("10 min ago"). */
  readonly at?: Instant;
  /** Pairs of hands in the shop. */
  readonly hands: number;
  /** The shop's air as last read, if ever. */
  readonly air: { readonly tempC: number; readonly rh: number; readonly readAt: Instant } | null;
  readonly sense: EdgeSense;
  /** Today in the shop's zone. */
  readonly today: CalendarDay;
};
