import type {
  Loss,
  Meaning,
  Stretch,
  TimedStretch,
  Window,
  WindowKind,
  WindowRule,
} from '../../../src/tracker/windows/index.ts';

/** A stretch as a line: from when (ISO, or an instant), what it is good for, what it loses, in words. */
export type Drawn = readonly [from: string | number, meaning: Meaning, loss?: Loss, says?: string];

const instantOf = (from: string | number): number =>
  typeof from === 'number' ? from : Date.parse(from);

/** Stretches one after another; the last one has no end unless `ends` says so. */
export function stretchesOf(
  drawn: readonly Drawn[],
  ends: string | null = null,
): readonly TimedStretch[] {
  return drawn.map(([from, meaning, loss = 'costs nothing', says], index) => {
    const next = drawn[index + 1];
    const end = next === undefined ? ends : next[0];
    return {
      ...stretchOf(meaning, loss, says),
      begins: instantOf(from),
      ends: end === null ? null : instantOf(end),
    };
  });
}

const stretchOf = (meaning: Meaning, loss: Loss, says: string | undefined): Stretch =>
  says === undefined ? { meaning, loss } : { meaning, loss, says };

const begins = { events: ['last-stroke'], which: 'last' } as const;

/** A window with these stretches, as the tracker would work it out. */
export function windowOf(
  kind: WindowKind,
  verb: string,
  drawn: readonly Drawn[],
  more: {
    readonly closedBy?: WindowRule['closedBy'];
    readonly pass?: number;
    readonly closedAt?: string;
    readonly ends?: string;
  } = {},
): Window {
  const stretches = stretchesOf(drawn, more.ends ?? null);
  return {
    key: 'invented',
    rule: {
      id: 'invented',
      kind,
      verb,
      scope: 'step',
      begins,
      stretches: stretches.map(({ meaning, loss, says }) => stretchOf(meaning, loss, says)),
      closedBy: more.closedBy ?? { by: 'needing step' },
    },
    subject: { pieceId: 'p', stepId: 's', partId: null, pass: more.pass ?? 1, section: null },
    begunAt: stretches[0]?.begins ?? 0,
    hangsOn: 'f',
    assumed: false,
    stretches,
    foundReadyAt: null,
    closedAt: more.closedAt === undefined ? null : Date.parse(more.closedAt),
  };
}
