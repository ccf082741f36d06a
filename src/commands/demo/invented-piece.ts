import { headFacts } from '../../shell/head-facts.ts';
import {
  currentStep,
  decide,
  expectedAhead,
  foldBench,
  lockOn,
  nextStamp,
  questionOf,
  stampsOf,
  windowsOfPiece,
  type BenchFact,
  type Intent,
  type PieceDescription,
  type PingSense,
} from '../../tracker/bench/index.ts';
import { expectedMinutes } from '../../tracker/estimate/index.ts';
import { minute, type Instant } from '../../tracker/time/index.ts';
import { trialWindow, type FinishingSchedule } from '../../tracker/trade/index.ts';
import { opensAt } from '../../tracker/windows/index.ts';
import { shopDay, type Zone } from '../../views/format/index.ts';
import type { Chance } from './chance.ts';
import type { Hands } from './working-hours.ts';

export type InventedPiece = {
  readonly name: string;
  readonly schedule: FinishingSchedule;
  readonly describe: PieceDescription;
  readonly addedAt: Instant;
};

export type Invention = {
  readonly sense: PingSense;
  readonly zone: Zone;
  readonly chance: Chance;
  readonly hands: Hands;
  /** How many times as long as its label says the coats of a product take; only these are tried. */
  readonly slowness?: Readonly<Record<string, number>>;
};

/** How this invented refinisher runs against the schedules' minutes, by class of step. */
const leanings: Readonly<Record<string, number>> = {
  'look over': 0.7,
  clean: 1.2,
  strip: 1.5,
  'sand bare, first grit': 1.3,
  'sand bare, next grit': 1.3,
  scuff: 0.7,
  'coat, brushed': 0.8,
  'hardware on': 0.8,
  bleach: 0.95,
  reglue: 1.2,
  'photograph, list': 1.4,
};

const varnishDriesSlowly: Readonly<Record<string, number>> = { varnish: 1.3 };

/** What the steps with a question showed, where it isn't the first answer. */
const answers: Readonly<Record<string, string>> = {
  'old-finish': 'varnish',
  'take-apart': 'other',
};

/** Writes the facts of one invented piece, as if its keys had been pressed, through the same door as everything else. */
export function inventPiece(
  piece: InventedPiece,
  number: number,
  { sense, zone, chance, hands, slowness = varnishDriesSlowly }: Invention,
) {
  const id = `demo${number}`;
  let facts: readonly BenchFact[] = [];
  let presses = 0;
  const clockAt = (at: Instant) => ({ told: at, uptimeMs: null, bootId: null });

  const act = (intent: Intent, at: Instant): void => {
    presses += 1;
    const group = presses === 1 ? id : `${id}-${presses}`;
    const outcome = decide(foldBench(facts), intent, {
      now: at,
      group,
      hands: 1,
      air: { tempC: 17 + 3 * chance.part(), rh: 48 + 14 * chance.part(), readAt: at - 40 * minute },
      sense,
      today: shopDay(at, zone),
    });
    if (!outcome.ok) throw new Error(`${piece.name}: ${outcome.refusal.says}`);
    facts = [...facts, ...headFacts(outcome.facts, group, clockAt(at))];
  };
  const state = () => {
    const found = foldBench(facts).pieces.get(id);
    if (found === undefined) throw new Error(`${piece.name} was not added`);
    return found;
  };

  /** When the step's windows let it begin. */
  const reachedAt = (from: Instant): Instant => {
    const step = currentStep(state(), null);
    const windows = windowsOfPiece(state(), foldBench(facts).sessions, sense).filter(
      ({ rule, closedAt }) =>
        closedAt === null && rule.milestone !== undefined && step?.needs.includes(rule.milestone),
    );
    return Math.max(from, ...windows.map((window) => opensAt(window) ?? from));
  };

  /** Does the current step in one session; returns when it was put down. */
  const workStep = (from: Instant): Instant => {
    const step = currentStep(state(), null);
    if (step === null) return from;
    const lean = leanings[step.stepClass] ?? 1;
    const minutes = Math.max(3, expectedMinutes(step, state()).minutes * lean * chance.factor(0.3));
    const setup = step.setupMinutes * chance.factor(0.2);
    const found = coatsFound(reachedAt(trialFound(from)));
    const begins = hands.book(found, (minutes + setup) * minute);
    act({ do: 'pick up', targets: [{ piece: id, part: null }] }, begins);
    const ends = begins + (minutes + setup) * minute;
    let at = begins + (setup / 2) * minute;
    let left = Math.min(60, stampsLeft());
    const gap = (minutes * minute) / (left + 1);
    while (left > 0) {
      act({ do: 'next stamp', piece: id, part: null }, Math.min(at, ends));
      at += gap;
      left = sectional() && left > 1 ? left - 1 : Math.min(left - 1, stampsLeft());
    }
    act({ do: 'done', piece: id, part: null }, begins + (minutes + setup / 2) * minute);
    act({ do: 'put down', piece: id }, ends);
    const asks = questionOf(state(), step.id);
    const answer = answers[step.id] ?? asks?.asks.answers[0]?.id ?? null;
    if (asks !== null) act({ do: 'answer', piece: id, step: asks.id, answer }, ends);
    return ends;
  };
  /** Finds the trial ready that the current step waits for; returns when. */
  const trialFound = (from: Instant): Instant => {
    const step = currentStep(state(), null);
    const trial = step === null ? undefined : lockOn(state(), step)?.trial;
    const window = windowsOfPiece(state(), foldBench(facts).sessions, sense).find(
      ({ rule, subject }) => rule.id === trialWindow && subject.stepId === trial?.id,
    );
    if (window === undefined) return from;
    const found = Math.max(from, opensAt(window) ?? from);
    act({ do: 'check', piece: id, part: null, finding: 'ready', window: window.key }, found);
    return found;
  };
  /** Tries the slow coats that the current step waits for until they are ready; returns when. */
  const coatsFound = (from: Instant): Instant => {
    const { steps, finishes } = state();
    const needs = currentStep(state(), null)?.needs ?? [];
    let at = from;
    for (const window of windowsOfPiece(state(), foldBench(facts).sessions, sense)) {
      const { rule, subject, closedAt } = window;
      const slow = slowness[steps.find((each) => each.id === subject.stepId)?.product ?? ''];
      const [on, opens] = [
        finishes.findLast(({ step }) => step === subject.stepId)?.at,
        opensAt(window),
      ];
      if (slow === undefined || on === undefined || opens === null || closedAt !== null) continue;
      if (rule.milestone !== 'scuff' || !needs.includes('scuff')) continue;
      const finds = (finding: 'ready' | 'not yet', when: Instant): void =>
        act({ do: 'check', piece: id, part: null, finding, window: window.key }, when);
      const ready = on + (opens - on) * slow * chance.factor(0.08);
      at = hands.book(at, minute);
      if (at < ready) {
        finds('not yet', at);
        at = hands.book(ready, minute);
      }
      finds('ready', at);
    }
    return at;
  };
  const sectional = (): boolean =>
    currentStep(state(), null)?.stamps.some((planned) => planned.perSection === true) ?? false;
  /** Stamps until the step is done; six for one that is worked in three sections. */
  const stampsLeft = (): number => {
    const step = currentStep(state(), null);
    if (step === null) return 0;
    if (sectional()) return 6;
    const next = nextStamp(step, stampsOf(state(), step.id, null));
    return next.kind === 'done' ? 0 : expectedAhead(step, stampsOf(state(), step.id, null));
  };

  act(
    { do: 'add piece', name: piece.name, schedule: piece.schedule, describe: piece.describe },
    piece.addedAt,
  );
  return {
    id,
    act,
    state,
    workStep,
    /** Works on until that step is next (null: until every step is done). */
    workUntil: (step: string | null, from: Instant): Instant => {
      let at = from;
      for (
        let next = currentStep(state(), null);
        next !== null && next.id !== step;
        next = currentStep(state(), null)
      ) {
        at = workStep(at);
      }
      return trialFound(at);
    },
    /** All facts, wearing that number. */
    facts: (worn: number): readonly BenchFact[] =>
      facts.map((fact) =>
        fact.kind === 'piece-added' ? { ...fact, body: { ...fact.body, number: worn } } : fact,
      ),
  };
}

export type InventedRecord = ReturnType<typeof inventPiece>;
