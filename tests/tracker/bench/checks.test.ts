import { describe, expect, test } from 'vitest';
import { given } from '../support/given-when-then.ts';
import { at } from '../support/instants.ts';
import { past } from '../support/past.ts';
import { aerosolRecoat } from '../support/rules.ts';
import { product, schedule, step, stainInSections, twoCoats } from '../support/schedules.ts';
import { Workday } from '../support/workday.ts';

const coated = past()
  .added('table', twoCoats, { name: 'Side table' })
  .stamped('table', 'coat 1', 'first-stroke', at('9:00'))
  .done('table', 'coat 1', at('9:30'));
const check = (finding: 'ready' | 'not yet' | 'trouble', more: object = {}) =>
  ({ do: 'check', piece: 'table', part: null, finding, ...more }) as const;
const recoat = 'table/coat 1/recoat//1/';

describe('trying the surface', () => {
  test('is about the window that the row shows', () => {
    const air = { tempC: 21, rh: 50, readAt: at('9:00') };
    given(coated)
      .when(check('not yet'), at('11:40'), { air })
      .then({
        kind: 'checked',
        body: {
          piece: 'table',
          part: null,
          step: 'coat 1',
          window: recoat,
          finding: 'not yet',
          air,
        },
      });
    given(coated)
      .when(check('not yet'), at('11:40'))
      .thenSays('not yet, next coat on 1 Side table');
  });

  test('keeps what was shown', () => {
    given(coated)
      .when(check('trouble', { shown: 'nibs' }), at('11:40'))
      .then({ kind: 'checked', body: { finding: 'trouble', shown: 'nibs' } });
  });

  test('of a window that is named', () => {
    given(coated)
      .when(check('ready', { window: recoat }), at('11:40'))
      .then({ kind: 'checked', body: { window: recoat } });
    given(coated)
      .when(check('ready', { window: 'table/coat 1/full-cure//1/' }), at('11:40'))
      .thenRefused(/nothing on 1 Side table is drying or setting/);
  });

  test('may be told later for an earlier instant', () => {
    given(coated)
      .when(check('ready'), at('11:40'), { at: at('11:20') })
      .then({ kind: 'checked', body: {}, at: at('11:20') });
  });

  test('not for one before anything was on', () => {
    given(coated)
      .when(check('ready'), at('11:40'), { at: at('8:55') })
      .thenRefused('Not noted: 1 Side table had nothing on it then. Give a later time.');
  });

  test('where nothing dries there is nothing to try', () => {
    given(past().added('table', twoCoats, { name: 'Side table' }))
      .when(check('ready'), at('9:00'))
      .thenRefused(
        'Not noted: nothing on 1 Side table is drying or setting, so there is nothing to try.',
      );
  });

  test('what cannot be tried is not', () => {
    const day = new Workday();
    const piece = day.adds('Writing desk', stainInSections, at('8:00'));
    day.next(piece, at('9:00'));
    expect(day.tries({ do: 'check', piece, part: null, finding: 'ready' }, at('9:03'))).toMatch(
      /nothing to try/,
    );
  });
});

describe('a forbidden gap', () => {
  const tried = { ...aerosolRecoat, notYetAdds: 600_000 };
  const gap = schedule(
    'gap',
    [
      step('spray 1', 'coat, sprayed', {
        product: 'enamel',
        stamps: [{ event: 'first-stroke', says: 'on' }],
      }),
      step('spray 2', 'coat, sprayed', { product: 'enamel', needs: ['recoat'] }),
    ],
    [product('enamel', 'oxidative', [tried])],
  );
  const sprayed = past()
    .added('table', gap, { name: 'Side table' })
    .stamped('table', 'spray 1', 'first-stroke', at('9:00'))
    .done('table', 'spray 1', at('9:10'));

  test('is not ended by a finger', () => {
    given(sprayed)
      .when(check('ready'), at('12:00'))
      .thenRefused(/1 Side table is to be kept off now/);
  });

  test('but trouble in it is noted', () => {
    given(sprayed)
      .when(check('trouble'), at('12:00'))
      .then({ kind: 'checked', body: { finding: 'trouble' } });
    given(sprayed)
      .when(check('ready'), at('9:20'))
      .then({ kind: 'checked', body: { finding: 'ready' } });
  });
});
