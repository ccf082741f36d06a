/** How a command ends, for scripts. Part of what other programs rely on: a code keeps its meaning. */
export const exitCodes = {
  done: 0,
  /** It could not be done as things stand, or what was checked has problems. */
  refused: 1,
  /** A piece, part, step, timer, schedule or setting of that name isn't there; the nearest names are offered. */
  unknown: 2,
  /** The store can't be read or written. */
  store: 3,
  /** The command line itself is wrong (EX_USAGE of BSD's sysexits). */
  usage: 64,
  /** The program broke down (EX_SOFTWARE of the same). */
  broke: 70,
} as const;

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];
