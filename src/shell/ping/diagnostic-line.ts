import type { Instant, Milliseconds } from '../../tracker/time/index.ts';

type PingEvents = {
  /** A ping fell due. */
  due: {
    readonly pings: readonly string[];
    readonly piece: string | null;
    readonly loud: boolean;
    readonly dueAt: Instant;
  };
  /** One process took it upon itself to send it. */
  claimed: {
    readonly claim: string;
    readonly pings: readonly string[];
    readonly lateMs: Milliseconds;
  };
  /** It left by these ways; for each way that failed a sentence. */
  sent: {
    readonly claim: string;
    readonly piece: string | null;
    readonly ways: readonly string[];
    readonly failures: readonly string[];
    readonly lateMs: Milliseconds;
  };
  acknowledged: { readonly claim: string };
  /** It was not sent, and why. */
  dropped: {
    readonly pings: readonly string[];
    readonly piece: string | null;
    readonly because: string;
  };
  /** It went out, but the store took no note of it. */
  unrecorded: { readonly claim: string; readonly because: string };
  /** The machine is kept awake from here on, or is not. */
  awake: { readonly kept: boolean; readonly why: string };
  /** A process that can ping began or ended. */
  began: { readonly by: string; readonly pid: number };
  ended: { readonly by: string; readonly pid: number };
};

/** What happened to a ping, or to what pings, and when. Of personal data it holds the piece's name only. */
export type PingDiagnostic = {
  [Kind in keyof PingEvents]: { readonly at: Instant; readonly what: Kind } & PingEvents[Kind];
}[keyof PingEvents];

const plainWord = /^[\w.:/@+-]+$/;
/** Control characters, line separators, marks that turn the writing direction, the byte order mark. */
const unseen = /[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}\ufeff]/gu;
const mostCharacters = 1000;

/**
 * One line for one event, in `name=value` pairs after the instant (UTC) and the event:
 * `2026-11-28T14:20:03.120Z sent claim=c12 piece="Oak chest" ways=bell,desktop late=12s`. No line break at its end.
 */
export function formatDiagnostic(event: PingDiagnostic): string {
  return [new Date(event.at).toISOString(), event.what, ...details(event)].join(' ');
}

function details(event: PingDiagnostic): readonly string[] {
  switch (event.what) {
    case 'due':
      return [
        list('pings', event.pings),
        ...piece(event.piece),
        `loud=${event.loud}`,
        `dueAt=${new Date(event.dueAt).toISOString()}`,
      ];
    case 'claimed':
      return [named('claim', event.claim), list('pings', event.pings), late(event.lateMs)];
    case 'sent':
      return [
        named('claim', event.claim),
        ...piece(event.piece),
        list('ways', event.ways),
        ...event.failures.map((failure) => named('failed', failure)),
        late(event.lateMs),
      ];
    case 'acknowledged':
      return [named('claim', event.claim)];
    case 'dropped':
      return [list('pings', event.pings), ...piece(event.piece), named('because', event.because)];
    case 'unrecorded':
      return [named('claim', event.claim), named('because', event.because)];
    case 'awake':
      return [`kept=${event.kept}`, named('why', event.why)];
    case 'began':
    case 'ended':
      return [named('by', event.by), `pid=${event.pid}`];
  }
}

const named = (name: string, text: string): string => `${name}=${word(text)}`;
const list = (name: string, texts: readonly string[]): string =>
  `${name}=${texts.length === 0 ? 'none' : texts.map(word).join(',')}`;
const piece = (name: string | null): readonly string[] =>
  name === null ? [] : [named('piece', name)];
const late = (ms: Milliseconds): string => `late=${Math.round(ms / 1000)}s`;

function word(text: string): string {
  const whole = text.toWellFormed();
  if (plainWord.test(whole) && whole.length <= mostCharacters) return whole;
  const quoted = JSON.stringify(whole.slice(0, mostCharacters).toWellFormed());
  return quoted.replace(unseen, (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`);
}
