import { leanOf, type ComparedStep, type FinishedHours, type Lean } from '../estimate/index.ts';

export type ScheduleLean = Lean & { readonly id: string; readonly name: string };

/** How pieces went by the finishing schedule that they were given, those that most pieces tell of first. */
export function bySchedule({ whole }: Pick<FinishedHours, 'whole'>): readonly ScheduleLean[] {
  const groups = Map.groupBy(whole.steps, ({ piece }) => piece.schedule.id);
  return [...groups]
    .map(([id, steps]) => ({
      id,
      // An edited schedule keeps its id: it is called as it was last.
      name: steps.reduce(latest).piece.schedule.name,
      ...leanOf(steps),
    }))
    .sort((a, b) => b.pieces - a.pieces || (a.name < b.name ? -1 : 1));
}

const latest = (one: ComparedStep, other: ComparedStep): ComparedStep =>
  other.piece.addedAt > one.piece.addedAt ? other : one;
