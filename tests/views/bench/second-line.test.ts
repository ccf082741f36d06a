import { describe, expect, it } from 'vitest';
import { benchStart } from '../../../src/views/bench/bench-state.ts';
import { benchScreen } from '../../../src/views/bench/index.ts';
import { hoursOfPiece } from '../../../src/tracker/estimate/index.ts';
import { hour } from '../../../src/tracker/time/index.ts';
import { at, Facts, recoat, rowsOf, snapshotOf, step, viewOf } from '../support/bench-of.ts';

const longName = 'find the old finish: alcohol, thinner, water, and what lies under it';

const rows = (facts: Facts, when: string): readonly string[] =>
  rowsOf(
    benchScreen.draw(
      { ...benchStart(at(when)), selected: 'p1' },
      viewOf(snapshotOf(facts.bench()), at(when)),
    ),
  );

describe('the line under a row, where a step has a long name', () => {
  const added = () => new Facts().piece('24 09:00', 1, 'Oak settle', [step('find', longName)]);

  it('tells place and expected minutes whole', () => {
    expect(rows(added(), '24 09:10')).toContainEqual(
      expect.stringMatching(/^ {5}find the old finish: .*…, 1 of 1; expected 20 to 45 min$/),
    );
    expect(rows(added().pickUp('24 09:10', 1, 'find'), '24 09:20')).toContainEqual(
      expect.stringMatching(/^ {5}find the old finish: .*…, 1 of 1; expected 20 to 45 min$/),
    );
  });

  it('tells whole what comes after its window', () => {
    const facts = new Facts()
      .piece('24 09:00', 1, 'Oak settle', [
        step('find', longName, { windows: [recoat(2 * hour, 12 * hour)] }),
        step('next', 'next', { needs: ['recoat'] }),
      ])
      .pickUp('24 09:10', 1, 'find')
      .stamp('24 09:15', 1, 'find', 'first-stroke')
      .stamp('24 09:30', 1, 'find', 'last-stroke')
      .done('24 09:30', 1, 'find')
      .tell('24 09:35', 'put-down', { session: 's1-24 09:10' });
    expect(rows(facts, '24 12:00').join('\n')).toMatch(
      /\n {5}find the old finish: .*…[;,].*scuff 320 first\n/,
    );
  });
});

describe('what was spent on a step that is begun', () => {
  const sanded = new Facts()
    .piece('24 09:00', 1, 'Oak settle', [
      step('sand', 'sand 120', {
        minutes: { typical: 45, low: 25, high: 90 },
        setupMinutes: 15,
      }),
    ])
    .pickUp('24 09:10', 1, 'sand')
    .putDown('24 09:50', 's1-24 09:10');

  it('is hands-on, as what is expected, and as the opened piece and the hours have it', () => {
    // Of 40 minutes a quarter is setup, as the schedule has 15 beside 45.
    expect(rows(sanded, '24 10:00')).toContain(
      '     sand 120, 1 of 1; 30 min so far, expected 25 to 90 min',
    );
    const [own] = hoursOfPiece(
      sanded.bench(),
      sanded.bench().pieces.get('p1')!,
      at('24 10:00'),
    ).steps;
    expect(own?.minutes).toBe(30);
  });

  it('on a large screen all that was recorded is called so, as in the hours', () => {
    const drawn = rowsOf(
      benchScreen.draw(
        { ...benchStart(at('24 10:00')), selected: 'p1' },
        viewOf(snapshotOf(sanded.bench()), at('24 10:00'), [120, 40]),
      ),
    ).join('\n');
    expect(drawn).toMatch(/step 1 of 1 {2}recorded 40 min/);
  });
});
