import { expect, test } from 'vitest';
import { hour } from '../../../src/tracker/time/index.ts';
import { changed, lineOf, scheduleText, told, withSchedule } from './texts.ts';

/** The same two coats, after a question and a sample board. */
const asking = changed(
  scheduleText,
  'steps:\n',
  `steps:
  - id: old-finish
    name: find the old finish
    class: other
    minutes: {typical: 10, low: 5, high: 20}
    driver: fixed
    setup: 0
    asks:
      question: which solvent softened it?
      answers: {shellac: 'alcohol: shellac', varnish: 'neither: varnish'}
  - id: sample
    name: sample board
    class: other
    minutes: {typical: 10, low: 5, high: 20}
    driver: fixed
    setup: 0
    product: clear
    try first: {for: coat-1, judge after: 2 h}
  - id: strip
    name: strip
    class: strip
    minutes: {typical: 90, low: 50, high: 200}
    driver: area
    setup: 25
    only if: {made before: 1978, wood: hard, answers: {old-finish: [varnish, unknown]}}
    minutes times: {old-finish: {shellac: 0.6}}
`,
);

test('conditions, questions, figures by answer and trials are read', () => {
  const { problems, schedules } = withSchedule(asking);
  expect(problems).toEqual([]);
  const [oldFinish, sample, strip] = schedules[0]?.steps ?? [];
  expect(oldFinish?.asks).toEqual({
    question: 'which solvent softened it?',
    answers: [
      { id: 'shellac', says: 'alcohol: shellac' },
      { id: 'varnish', says: 'neither: varnish' },
    ],
  });
  expect(sample?.trialFor).toEqual(['coat-1']);
  expect(sample?.windows.map(({ id }) => id)).toEqual(['trial']);
  expect(JSON.stringify(sample?.windows)).toContain(`"ms":${2 * hour}`);
  expect(strip?.onlyIf).toEqual({
    madeBefore: 1978,
    wood: ['hard'],
    answers: { 'old-finish': ['varnish', 'unknown'] },
  });
  expect(strip?.minutesTimes).toEqual({ 'old-finish': { shellac: 0.6 } });
});

test('a trial is written in one word, for one step or several; a condition may have branches', () => {
  const { problems, schedules } = withSchedule(
    changed(
      changed(asking, '{for: coat-1, judge after: 2 h}', '[coat-1, coat-2]'),
      'only if: {made before: 1978, wood: hard, answers: {old-finish: [varnish, unknown]}}',
      'only if: {any: [{made since: 1978}, {wood: [soft, unknown]}]}',
    ),
  );
  expect(problems).toEqual([]);
  expect(schedules[0]?.steps[1]?.trialFor).toEqual(['coat-1', 'coat-2']);
  expect(schedules[0]?.steps[2]?.onlyIf).toEqual({
    any: [{ madeSince: 1978 }, { wood: ['soft', 'unknown'] }],
  });
});

/** What was written instead of what; the line and field it is found in, and what is said. */
const wrong: readonly (readonly [string, string, string, string, RegExp])[] = [
  [
    'answers: {old-finish: [varnish, unknown]}',
    'answers: {old-finsh: varnish}',
    'only if',
    'steps[strip].only if.answers.old-finsh',
    /"old-finsh" is no step before this one that asks. Write old-finish./,
  ],
  [
    'answers: {old-finish: [varnish, unknown]}',
    'answers: {sample: varnish}',
    'only if',
    'steps[strip].only if.answers.sample',
    /The step "sample" asks nothing. Write one of: old-finish./,
  ],
  [
    'answers: {old-finish: [varnish, unknown]}',
    'answers: {old-finish: vernish}',
    'only if',
    'steps[strip].only if.answers.old-finish',
    /"vernish" is no answer of the step "old-finish". Write varnish./,
  ],
  [
    '{shellac: 0.6}',
    '{shelac: 0.6}',
    'minutes times',
    'steps[strip].minutes times.old-finish',
    /"shelac" is no answer of the step "old-finish". Write shellac./,
  ],
  [
    '{shellac: 0.6}',
    '{shellac: 60}',
    'minutes times',
    'steps[strip].minutes times.old-finish.shellac',
    /is 60.* how many times the minutes, 0.1 to 10/,
  ],
  [
    'for: coat-1',
    'for: coat-9',
    'try first',
    'steps[sample].try first',
    /"coat-9" is no step after this one. Write coat-1 or coat-2./,
  ],
  [
    'for: coat-1',
    'for: old-finish',
    'try first',
    'steps[sample].try first',
    /"old-finish" is not a step after this one: a trial comes first./,
  ],
  [
    'for: coat-1',
    'for: sample',
    'try first',
    'steps[sample].try first',
    /"sample" is not a step after this one: a trial comes first./,
  ],
  [
    'driver: area\n    setup: 25',
    'driver: area\n    minutes for: 3\n    setup: 25',
    'minutes for',
    'steps[strip].minutes for',
    /counts nothing here: these minutes grow with the area. Take it out, or give the step a driver of fittings, joints or drawers./,
  ],
  [
    'driver: area\n    setup: 25',
    'driver: joints\n    minutes for: 0\n    setup: 25',
    'minutes for',
    'steps[strip].minutes for',
    /is 0. Write number of fittings, joints or drawers, 1 to 500/,
  ],
  [
    'made before: 1978',
    'made befor: 1978',
    'only if',
    'steps[strip].only if.made befor',
    /"made befor" is no field of a condition. Write made before/,
  ],
  [
    'made before: 1978',
    'made before: last century',
    'only if',
    'steps[strip].only if.made before',
    /is "last century".* 1000 to 2999/,
  ],
  [
    'wood: hard',
    'wood: oak',
    'only if',
    'steps[strip].only if.wood',
    /"oak" is no wood. Write one of: soft, hard, unknown./,
  ],
  [
    "varnish: 'neither: varnish'",
    "unknown: 'neither: varnish'",
    'answers: {shellac',
    'steps[old-finish].asks.answers.unknown',
    /"unknown" stands for no answer, so it can't be one./,
  ],
  [
    ", varnish: 'neither: varnish'",
    '',
    'answers: {shellac',
    'steps[old-finish].asks.answers',
    /at least two answers/,
  ],
];

test.each(wrong)('%s written as %s', (from, to, at, field, says) => {
  const text = changed(asking, from, to);
  const { problems, schedules } = withSchedule(text);
  expect(schedules).toEqual([]);
  const [problem] = told(problems);
  expect(problem).toMatchObject({ line: lineOf(text, at), field });
  expect(`${problem?.says} ${problem?.todo}`).toMatch(says);
});

test('a need that only a left-out step provides is told with the piece for which that is so', () => {
  const onlySoft = changed(
    asking,
    '    product: clear\n    stamps: [first stroke]\n    clean air: true\n',
    '    product: clear\n    stamps: [first stroke]\n    clean air: true\n    only if: {wood: [soft, unknown]}\n',
  );
  const { problems } = withSchedule(onlySoft);
  expect(told(problems)[0]).toEqual({
    line: lineOf(onlySoft, 'needs: [scuff]'),
    field: 'steps[scuff].needs[1]',
    says: 'For hardwood this step is in, but every step that starts "scuff" is left out: coat-1.',
    todo: 'Give this step the same "only if", or put in a step that starts it for the other pieces.',
  });
  // That the second coat starts what it waits for itself helps nobody.
  expect(told(problems).map(({ field }) => field)).toEqual([
    'steps[scuff].needs[1]',
    'steps[coat-2].needs[1]',
  ]);
  const bothSoft = onlySoft
    .replace('    needs: [scuff]', '    needs: [scuff]\n    only if: {wood: soft}')
    .replace('    needs: [recoat]', '    needs: [recoat]\n    only if: {wood: [unknown, soft]}');
  expect(withSchedule(bothSoft).problems).toEqual([]);
});

test('what is tried on a sample starts no milestone for a later step', () => {
  const text = changed(asking, '    product: clear\n    stamps: [first stroke]\n', '');
  const [problem] = told(withSchedule(text).problems);
  expect(problem?.says).toBe('No step before this one starts "scuff".');
});
