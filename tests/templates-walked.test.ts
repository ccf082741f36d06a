import { describe, expect, test } from 'vitest';
import { readScheduleFolders } from '../src/persist/schedules/index.ts';
import type { Wood } from '../src/tracker/bench/index.ts';
import { hour, minute } from '../src/tracker/time/index.ts';
import type { FinishingSchedule } from '../src/tracker/trade/index.ts';
import { opensAt, stateAt } from '../src/tracker/windows/index.ts';
import { walk } from './outside/walk.ts';
import { monday, Work } from './outside/work.ts';

const templates = new URL('../templates/', import.meta.url).pathname;
const { schedules } = await readScheduleFolders({ built: null, templates, own: null });

type Situation = {
  readonly wood: Wood | null;
  readonly yearMade: number | null;
  readonly answers: Readonly<Record<string, string>>;
};

/** Every wood and age, and every answer to every question; unanswered ones too. */
function situations({ steps }: FinishingSchedule): readonly Situation[] {
  const woods = ['soft', 'hard', null] as const;
  const asking = steps.flatMap(({ id, asks }) => (asks === undefined ? [] : [{ id, asks }]));
  const rest = (index: number) =>
    Object.fromEntries(asking.map(({ id, asks }) => [id, asks.answers.at(index)?.id ?? '']));
  return [
    ...woods.map((wood) => ({ wood, yearMade: null, answers: {} })),
    { wood: 'hard', yearMade: 1950, answers: rest(-1) },
    { wood: 'soft', yearMade: 1990, answers: rest(-1) },
    ...asking.flatMap(({ id, asks }, place) =>
      asks.answers.map((answer, index) => ({
        wood: woods[(place + index) % 3] ?? null,
        yearMade: null,
        answers: { ...rest(0), [id]: answer.id },
      })),
    ),
  ];
}

describe.each(schedules.map((schedule) => [schedule.id, schedule] as const))(
  '%s',
  (_, schedule) => {
    test('can be worked from its first step to its last, whatever the piece and the answers', () => {
      const worked = new Set<string>();
      for (const { wood, yearMade, answers } of situations(schedule)) {
        const work = new Work(schedule, wood);
        if (yearMade !== null)
          work.act({ do: 'describe piece', piece: work.piece.id, changes: { yearMade } }, monday);
        const done = walk(work, answers)
          .filter(({ pressed }) => pressed.startsWith('done'))
          .map(({ step }) => step);
        const kept = work.piece.steps.filter(({ skipped }) => !skipped);
        expect(done).toEqual(kept.map(({ id }) => id));
        for (const step of done) worked.add(step);
        // What is left running at the end is cure, nothing that waits for hands.
        const left = work.windows().filter((window) => window.closedAt === null);
        expect(left.filter(({ rule }) => rule.milestone === undefined)).toEqual([]);
        const cures = left.filter(({ rule }) => rule.milestone === 'full cure');
        const coats = kept.filter(
          ({ product, trialFor }) =>
            trialFor === undefined &&
            schedule.products[product ?? '']?.windows.some(
              (rule) => rule.milestone === 'full cure',
            ),
        );
        expect(cures.map((window) => window.subject.stepId)).toEqual(
          coats.slice(-1).map((step) => step.id),
        );
      }
      // No step is for no piece at all.
      expect([...worked].toSorted()).toEqual(schedule.steps.map(({ id }) => id).toSorted());
    });

    test('tests for lead where it may be, tries what can harm on a patch, and never sands lead dry', () => {
      const { steps } = schedule;
      expect(steps.find(({ stepClass }) => stepClass === 'lead test')?.onlyIf).toEqual({
        madeBefore: 1978,
      });
      const tried = new Set(steps.flatMap(({ trialFor = [] }) => trialFor));
      for (const { id, stepClass, product } of steps) {
        const harms =
          stepClass === 'bleach' || stepClass === 'stain' || product === 'solvent-stripper';
        if (harms && !id.startsWith('try-') && id !== 'sample-stain')
          expect([id, tried.has(id)]).toEqual([id, true]);
      }
      // What may lie on old paint: the finish that is scuffed, and the first grit after stripping.
      const oldFinishSanded = steps.filter(
        ({ id, stepClass, dusty }) =>
          dusty === true && (id === 'dull' || stepClass === 'sand bare, first grit'),
      );
      for (const step of oldFinishSanded)
        expect(step.onlyIf).toEqual({
          any: [{ madeSince: 1978 }, { answers: { 'lead-test': ['none'] } }],
        });
    });
  },
);

/**
 * Facts of the trade, common practice, no source: A stands 5 minutes on softwood and 10 on hardwood, and is still wet
 * when B goes on; B stays overnight; vinegar only after the last round; 220 once it is dry; a waterborne coat is scuffed
 * with 320 after two hours, dusted off, and gets its second coat. After stripping 120 comes first.
 */
describe('bleach and clear, as the trade does it', () => {
  const schedule = schedules.find(({ id }) => id === 'bleach-and-clear');
  if (schedule === undefined) throw new Error('no bleach and clear');
  const answers = { 'lead-test': 'none', 'old-finish': 'varnish' };
  const ids = schedule.steps.map(({ id }) => id);

  test.each([
    ['soft', 5],
    ['hard', 10],
  ] as const)('A on %swood stands %i minutes, and is still wet then', (wood, minutes) => {
    const work = new Work(schedule, wood);
    const presses = walk(work, answers);
    const aOn = presses.find(({ step, pressed }) => step === 'bleach' && pressed.startsWith('A,'));
    const dwell = work
      .windows()
      .find(({ rule, subject }) => rule.id === 'b-on' && subject.stepId === 'bleach');
    if (aOn === undefined || dwell === undefined) throw new Error('A was not put on');
    expect(opensAt(dwell)).toBe(aOn.at + minutes * minute);
    const open = { ...dwell, closedAt: null };
    expect(stateAt(open, aOn.at + minutes * minute)).toMatch(/open|closing/);
    // Dry is lost: rinse and start over.
    const dry = dwell.stretches.find(({ meaning }) => meaning === 'late');
    expect(dry).toMatchObject({ loss: 'spoils' });
    expect((dry?.begins ?? 0) - aOn.at).toBeGreaterThan(minutes * minute);
  });

  test('B stays overnight, vinegar waits for it, 220 for the vinegar, and 120 comes after stripping', () => {
    const work = new Work(schedule, 'hard');
    const presses = walk(work, answers);
    const at = (step: string, which: 'first' | 'last'): number =>
      (which === 'first'
        ? presses.find((each) => each.step === step)
        : presses.findLast((each) => each.step === step)
      )?.at ?? Number.NaN;
    expect(at('neutralise', 'first') - at('bleach', 'last')).toBeGreaterThanOrEqual(12 * hour);
    expect(at('sand-220', 'first') - at('neutralise', 'last')).toBeGreaterThanOrEqual(24 * hour);
    expect(at('sand-120', 'first') - at('wash-residue', 'last')).toBeGreaterThanOrEqual(24 * hour);
    const worked = [...new Set(presses.map(({ step }) => step))];
    expect(worked[worked.indexOf('wash-residue') + 1]).toBe('sand-120');
    expect(at('scuff-1', 'first') - at('clear-1', 'last')).toBeGreaterThanOrEqual(2 * hour);
    expect(at('scuff-1', 'first') - at('clear-1', 'last')).toBeLessThan(2 * hour + 5 * minute);
    expect(schedule.steps.find(({ id }) => id === 'scuff-1')).toMatchObject({ grit: 320 });
    expect(ids.indexOf('clear-2')).toBe(ids.indexOf('scuff-1') + 1);
    expect(schedule.steps.find(({ id }) => id === 'sand-220')).toMatchObject({ grit: 220 });
  });

  test('a second round is neutralised after it, not before', () => {
    expect(ids.filter((id) => id === 'neutralise')).toHaveLength(1);
    const work = new Work(schedule, 'hard');
    work.act({ do: 'repeat step', piece: work.piece.id, step: 'bleach' }, monday);
    const presses = walk(work, answers);
    const rounds = work.piece.steps.filter((step) => step.stepClass === 'bleach');
    expect(rounds).toHaveLength(2);
    const worked = [...new Set(presses.map(({ step }) => step))];
    expect(worked.indexOf('neutralise')).toBe(worked.indexOf(rounds[1]?.id ?? '') + 1);
  });
});

/** Facts of the trade, common practice, no source, but for what stands beside the check. */
describe('other schedules, as the trade does them', () => {
  type Which = 'first' | 'last';
  function timesOf(id: string, answers: Readonly<Record<string, string>>, wood: Wood = 'hard') {
    const schedule = schedules.find((each) => each.id === id);
    if (schedule === undefined) throw new Error(`no schedule ${id}`);
    const presses = walk(new Work(schedule, wood), { 'lead-test': 'none', ...answers });
    const at = (step: string, which: Which): number => {
      const own = presses.filter((each) => each.step === step);
      return (which === 'first' ? own.at(0) : own.at(-1))?.at ?? Number.NaN;
    };
    return {
      /** Hours between the end of a step and the beginning of a later one. */
      between: (one: string, other: string): number =>
        (at(other, 'first') - at(one, 'last')) / hour,
      steps: [...new Set(presses.map(({ step }) => step))],
    };
  }

  test.each(['open', 'closed'])(
    'French polish on %s grain: a night between sessions, two days before fittings, a week before it is wrapped',
    (grain) => {
      const { between } = timesOf('french-polish', { 'old-finish': 'shellac', grain });
      const nights = [
        ...(grain === 'open' ? [['pore-fill', 'body-1'] as const] : []),
        ['body-1', 'body-2'],
        ['body-3', 'spirit-off'],
      ] as const;
      for (const [one, other] of nights) expect(between(one, other)).toBeGreaterThanOrEqual(12);
      expect(between('spirit-off', 'hardware-on')).toBeGreaterThanOrEqual(48);
      expect(between('spirit-off', 'wrap')).toBeGreaterThanOrEqual(7 * 24);
    },
  );

  test('hide glue that was washed out dries overnight before glue goes in; other glue is scraped dry', () => {
    const hide = timesOf('glue-up-repair', { 'take-apart': 'hide', 'look-over': 'sound' });
    expect(hide.between('wash-joints', 'glue-up-hide')).toBeGreaterThanOrEqual(12);
    const other = timesOf('glue-up-repair', { 'take-apart': 'other', 'look-over': 'sound' });
    expect(other.steps).not.toContain('wash-joints');
  });

  test('end grain outdoors gets its second epoxy while the first is green, and is sanded a day later', () => {
    const { between } = timesOf('outdoor-varnish', { 'old-finish': 'varnish' });
    expect(between('seal-feet', 'seal-feet-2')).toBeGreaterThanOrEqual(3);
    expect(between('seal-feet', 'seal-feet-2')).toBeLessThan(8);
    expect(between('seal-feet-2', 'scuff-feet')).toBeGreaterThanOrEqual(24);
  });

  test.each([
    ['soft', {}, true],
    ['hard', {}, false],
    ['hard', { blotch: 'blotches' }, true],
    ['soft', { blotch: 'even' }, false],
  ] as const)('stain on %swood, spirit test %j: wash coat %s', (wood, answers, washed) => {
    const { steps } = timesOf('strip-stain-varnish', { 'old-finish': 'varnish', ...answers }, wood);
    expect(steps.includes('wash-coat')).toBe(washed);
  });

  test('fills set before they are levelled, paint is a day old before tape lies on it', () => {
    const { between } = timesOf('stencil-between-coats', { 'bleed-test': 'clean' });
    expect(between('fill', 'dull')).toBeGreaterThanOrEqual(1);
    expect(between('paint-2', 'lay-out')).toBeGreaterThanOrEqual(24);
  });
});
