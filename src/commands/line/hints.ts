/** What refusals tell a person at the screen to press, and what does the same here. */
const hints: readonly (readonly [keys: RegExp, command: string])[] = [
  [/ Enter puts it down\.$/, ' put-down puts it down.'],
  [/ Enter puts all of it down\.$/, ' put-down puts all of it down.'],
  [/ Enter puts all of it down; d when it is done\.$/, ' put-down puts all of it down.'],
  [/ Enter: pick up\.$/, ' pick-up takes it in hand.'],
  [/ Enter on (\d+)\.$/, ' put-down $1 puts that down.'],
  [/ Space: next stamp\.$/, ' next-stamp makes the one that is next.'],
  [/ d when it is all on\.$/, ' done when it is all on.'],
  [/ i inserts one\.$/, ' insert-step puts one in.'],
  [/ 0 takes back\.$/, ' take-back takes it back.'],
  [/ Name the one to put down for it\.$/, ' Name the one to put down for it: --put-down PIECE.'],
  [/ The same key again: without it, and why\.$/, ' pick-up PIECE --anyway REASON goes without.'],
  [/ \(m, then w\)\.$/, ' with correct-session.'],
];

/** A refusal for somebody who types commands. */
export const withoutKeys = (says: string): string =>
  hints.reduce((told, [keys, command]) => told.replace(keys, command), says);
