import type { BenchFact } from './facts.ts';

/** A piece's facts, and which of them other pieces need too. */
export type PieceFacts = {
  readonly facts: readonly BenchFact[];
  readonly shared: ReadonlySet<string>;
};

/**
 * All facts that make up one piece's record, self-contained: what is about it, the sessions and corrections that touch
 * it, and the takings back of any of these. A session on several pieces, or a key press that touched another piece, is
 * shared: it goes along with one and stays with the other.
 */
export function factsOfPiece(facts: readonly BenchFact[], piece: string): PieceFacts {
  const ownerOfFact = new Map<string, Set<string>>();
  const ownerOfSession = new Map<string, Set<string>>();
  const groups = new Map<string, Set<string>>();
  const washed = new Set(
    facts.flatMap((fact) => (fact.kind === 'pot-washed' ? [fact.body.pot] : [])),
  );
  const ownerOfPot = new Map<string, Set<string>>();
  /** A pot goes along with the pieces that took from it, but never while it is still to be washed out. */
  const takersOf = (pot: string): Set<string> => {
    const known = ownerOfPot.get(pot) ?? new Set<string>();
    ownerOfPot.set(pot, known);
    return known;
  };
  const owners = (fact: BenchFact): Set<string> => {
    switch (fact.kind) {
      case 'picked-up': {
        const found = new Set(fact.body.targets.map((target) => target.piece));
        ownerOfSession.set(fact.body.session, found);
        return found;
      }
      case 'kept-from-learning':
        if (fact.body.session === null) return new Set([fact.body.piece]);
        return ownerOfSession.get(fact.body.session) ?? new Set([fact.body.piece]);
      case 'put-down':
        return ownerOfSession.get(fact.body.session) ?? new Set();
      case 'targets-changed':
      case 'session-corrected': {
        const known = ownerOfSession.get(fact.body.session) ?? new Set<string>();
        for (const target of fact.body.targets) known.add(target.piece);
        ownerOfSession.set(fact.body.session, known);
        return known;
      }
      case 'stamp-moved':
        return ownerOfFact.get(fact.body.fact) ?? new Set();
      case 'group-withdrawn':
        return groups.get(fact.body.withdrawn) ?? new Set();
      case 'group-restored':
        return groups.get(fact.body.restored) ?? new Set();
      case 'timer-closed':
        return ownerOfFact.get(fact.body.timer) ?? new Set();
      case 'pot-mixed':
      case 'pot-washed':
        return takersOf(fact.body.pot);
      case 'stamped': {
        const { pot, piece: taker } = fact.body;
        if (pot !== undefined && washed.has(pot)) takersOf(pot).add(taker);
        return new Set([taker]);
      }
      case 'hours-imported':
      case 'import-taken-out':
      case 'shop-shut':
      case 'rags-dealt-with':
      case 'clock-stepped':
        return new Set();
      case 'timer-started': {
        const found = new Set(fact.body.piece === null ? [] : [fact.body.piece]);
        ownerOfFact.set(fact.body.timer, found);
        return found;
      }
      default:
        return new Set([fact.body.piece]);
    }
  };
  for (const fact of facts) {
    const found = owners(fact);
    ownerOfFact.set(fact.id, found);
    const group = groups.get(fact.group) ?? new Set<string>();
    for (const owner of found) group.add(owner);
    groups.set(fact.group, group);
  }
  // A correction may have moved a session to another piece after its first facts were read.
  const own = facts.filter((fact) => ownsLate(fact, piece, ownerOfFact, ownerOfSession));
  const shared = own.filter((fact) => allOwners(fact, ownerOfFact, ownerOfSession).size > 1);
  return { facts: own, shared: new Set(shared.map((fact) => fact.id)) };
}

type Owners = ReadonlyMap<string, ReadonlySet<string>>;

const allOwners = (fact: BenchFact, ofFact: Owners, ofSession: Owners): ReadonlySet<string> =>
  'session' in fact.body && fact.body.session !== null
    ? (ofSession.get(fact.body.session) ?? new Set())
    : (ofFact.get(fact.id) ?? new Set());

const ownsLate = (fact: BenchFact, piece: string, ofFact: Owners, ofSession: Owners): boolean =>
  allOwners(fact, ofFact, ofSession).has(piece);
