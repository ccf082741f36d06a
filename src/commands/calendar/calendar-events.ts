import {
  piecesOnBench,
  pingsOfBench,
  potCalled,
  standingsAt,
  type Bench,
  type BenchPing,
  type Standing,
} from '../../tracker/bench/index.ts';
import { minute, type CalendarDay, type Instant } from '../../tracker/time/index.ts';
import type { Window } from '../../tracker/windows/index.ts';
import { visible } from '../../views/drawing/visible.ts';
import { capital, thenWords } from '../../views/format/index.ts';
import { calledPiece } from '../../views/parts/called-piece.ts';
import { pingText } from '../../views/ping-text/index.ts';
import type { Look } from '../line/look.ts';

/** One entry of the calendar. Its id stays the same for as long as the window, the hold or the promise does. */
export type CalendarEvent = {
  readonly id: string;
  readonly summary: string;
  readonly description: string;
  readonly when:
    | { readonly from: Instant; readonly to: Instant }
    | { readonly day: CalendarDay; readonly startsAt: Instant };
  readonly alarms: readonly { readonly at: Instant; readonly says: string }[];
};

/** What has no end of its own is shown this long. */
const shownFor = 30 * minute;

/** Windows that can still be used, holds to ask about again, and dates promised. */
export function calendarEvents(look: Look): readonly CalendarEvent[] {
  return [...windowEvents(look), ...holdEvents(look), ...promiseEvents(look)];
}

function windowEvents(look: Look): readonly CalendarEvent[] {
  const { bench, now, sense, shop } = look;
  const pings = pingsOfBench(bench, now, sense).filter((ping) => ping.at > now);
  return standingsAt(bench, now, sense).flatMap((standing) =>
    standing.windows.flatMap((window): CalendarEvent[] => {
      const when = usableTime(window, now);
      if (when === null) return [];
      return [
        {
          id: window.key,
          summary: visible([...whoFor(standing, window, bench), window.rule.verb].join(': ')),
          description: visible(thenWords(window, when.from, shop)),
          when,
          alarms: pings
            .filter((ping) => ping.about === 'window' && ping.window.key === window.key)
            .map((ping) => ({ at: ping.at, says: visible(wordsOf(ping, look)) })),
        },
      ];
    }),
  );
}

/** `1 Oak chest, drawers`, `Pot A, two-part polyurethane`; none of a timer that is for no piece. */
function whoFor({ piece, timer, pot }: Standing, { subject }: Window, bench: Bench): string[] {
  if (pot !== null) return [capital(potCalled(pot))];
  const about = piece ?? bench.pieces.get(timer?.piece ?? '');
  if (about === undefined) return [];
  const part = about.parts.find(({ id }) => id === subject.partId)?.name;
  const section = subject.section === null ? undefined : `section ${subject.section}`;
  return [[calledPiece(about), part, section].filter((word) => word !== undefined).join(', ')];
}

const wordsOf = (ping: BenchPing, { shop }: Look): string =>
  pingText({ pings: [ping], settles: [], loud: ping.loud, lateBy: 0 }, ping.at, shop, ping.at).text;

/** The "go" in force or the next one; null where there is none to come. */
function usableTime(window: Window, now: Instant): { from: Instant; to: Instant } | null {
  const go = window.stretches.find(
    ({ meaning, ends }) => meaning === 'go' && (ends === null || ends > now),
  );
  if (go === undefined) return null;
  // A window that is open and never closes asks for nothing that a calendar could show.
  if (go.ends === null && go.begins <= now) return null;
  return { from: go.begins, to: go.ends ?? go.begins + shownFor };
}

/** The hour at which a hold is asked about. */
const askAt = '09:00';

const holdEvents = (look: Look): readonly CalendarEvent[] =>
  piecesOnBench(look.bench).flatMap((piece): CalendarEvent[] => {
    const { hold } = piece;
    if (hold === null || hold.askAgain === null) return [];
    const from = look.sense.instantOf(hold.askAgain, askAt);
    const summary = visible(`${calledPiece(piece)}: ask again, ${hold.reason}`);
    return [
      {
        id: `hold/${piece.id}`,
        summary,
        description: '',
        when: { from, to: from + shownFor },
        alarms: [{ at: from, says: summary }],
      },
    ];
  });

const promiseEvents = (look: Look): readonly CalendarEvent[] =>
  piecesOnBench(look.bench).flatMap((piece): CalendarEvent[] => {
    if (piece.promised === null) return [];
    const startsAt = look.sense.instantOf(piece.promised, '00:00');
    const summary = visible(`${calledPiece(piece)}: promised`);
    return [
      {
        id: `promised/${piece.id}`,
        summary,
        description: '',
        when: { day: piece.promised, startsAt },
        // The morning of the day before there may still be time to do something about it.
        alarms: [{ at: look.sense.instantOf(dayBefore(piece.promised), askAt), says: summary }],
      },
    ];
  });

const dayBefore = (day: CalendarDay): CalendarDay =>
  new Date(Date.parse(`${day}T00:00:00Z`) - 86_400_000).toISOString().slice(0, 10);
