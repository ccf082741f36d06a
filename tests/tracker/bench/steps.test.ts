import { describe, expect, test } from 'vitest';
import { currentStep, stepPlace } from '../../../src/tracker/bench/index.ts';
import type { Step } from '../../../src/tracker/trade/index.ts';
import { given } from '../support/given-when-then.ts';
import { at } from '../support/instants.ts';
import { past } from '../support/past.ts';
import { bleachAndClear, step, twoCoats } from '../support/schedules.ts';
import { Workday } from '../support/workday.ts';

const chest = past().added('chest', bleachAndClear, { name: 'Oak chest' });
const bleached = chest.done('chest', 'sand', at('9:00')).done('chest', 'bleach', at('10:00'));

const withoutId = ({ id: _, ...rest }: Step): Omit<Step, 'id'> => rest;
const patch = withoutId(step('patch', 'patch veneer', { name: ' Patch veneer ' }));

const order = (day: Workday, piece: string): readonly string[] =>
  day.piece(piece).steps.map(({ name }) => name);

describe('inserting a step', () => {
  test('before another, under an id of its own', () => {
    given(bleached)
      .when({ do: 'insert step', piece: 'chest', step: patch, before: 'coat 1' }, at('10:10'))
      .then({
        kind: 'step-inserted',
        body: {
          piece: 'chest',
          before: 'coat 1',
          step: { ...patch, id: 'this-press', name: 'Patch veneer' },
        },
      });
  });

  test('stands where it was put, also at the end', () => {
    const day = new Workday();
    const piece = day.adds('Side table', twoCoats, at('8:00'));
    day.does({ do: 'insert step', piece, step: patch, before: 'coat 2' }, at('8:10'));
    day.does(
      { do: 'insert step', piece, step: { ...patch, name: 'wax' }, before: null },
      at('8:11'),
    );
    expect(order(day, piece)).toEqual(['coat 1', 'Patch veneer', 'coat 2', 'scuff 2', 'wax']);
    expect(day.said).toBe('wax inserted at the end on 1 Side table');
  });

  test('never before one that is done', () => {
    given(bleached)
      .when({ do: 'insert step', piece: 'chest', step: patch, before: 'sand' }, at('10:10'))
      .thenRefused('Not inserted: sand is done; put it before one that is still to do.');
  });

  test('needs a name, a place that is there, and a product that the piece has', () => {
    const insert = { do: 'insert step', piece: 'chest', step: patch, before: null } as const;
    given(chest)
      .when({ ...insert, step: { ...patch, name: ' ' } }, at('9:00'))
      .thenRefused(/a step needs a name/);
    given(chest)
      .when({ ...insert, before: 'scuf 1' }, at('9:00'))
      .thenRefused('Not inserted: 1 Oak chest has no step "scuf 1".', ['scuff 1']);
    given(chest)
      .when({ ...insert, step: { ...patch, product: 'clear coad' } }, at('9:00'))
      .thenRefused('Not inserted: 1 Oak chest has no product "clear coad".', ['clear coat']);
    given(chest)
      .when({ ...insert, step: { ...patch, product: 'constructor' } }, at('9:00'))
      .thenRefused(/no product/);
  });
});

describe('repeating a step', () => {
  test('puts it once more right after itself', () => {
    const day = new Workday();
    const piece = day.adds('Side table', twoCoats, at('8:00'));
    day.does({ do: 'repeat step', piece, step: 'coat 1' }, at('8:10'));
    expect(order(day, piece)).toEqual(['coat 1', 'coat 1, again', 'coat 2', 'scuff 2']);
  });

  test('a done one comes before the first that is still to do', () => {
    const day = new Workday();
    const piece = day.adds('Oak chest', bleachAndClear, at('8:00'));
    for (const clock of ['9:00', '10:00', '11:00']) day.done(piece, at(clock));
    day.does({ do: 'repeat step', piece, step: 'bleach' }, at('11:10'));
    expect(order(day, piece).slice(0, 5)).toEqual([
      'sand',
      'bleach',
      'rinse',
      'bleach, again',
      'coat 1',
    ]);
    const again = currentStep(day.piece(piece), null);
    expect(again).toMatchObject({
      name: 'bleach, again',
      copyOf: 'bleach',
      product: 'two-part bleach',
      skipped: false,
    });
    expect(again?.id).not.toBe('bleach');
  });

  test('again and again it is counted, also from a copy', () => {
    const day = new Workday();
    const piece = day.adds('Side table', twoCoats, at('8:00'));
    day.does({ do: 'repeat step', piece, step: 'coat 1' }, at('8:10'));
    const copy = day.piece(piece).steps[1]!.id;
    day
      .does({ do: 'repeat step', piece, step: copy }, at('8:11'))
      .does({ do: 'repeat step', piece, step: 'coat 1' }, at('8:12'));
    expect(order(day, piece).slice(0, 4)).toEqual([
      'coat 1',
      'coat 1, again 3',
      'coat 1, again',
      'coat 1, again 2',
    ]);
    expect(
      day
        .piece(piece)
        .steps.map(({ copyOf }) => copyOf)
        .slice(0, 4),
    ).toEqual([null, 'coat 1', 'coat 1', 'coat 1']);
  });

  test('has its own stamps and windows', () => {
    const day = new Workday();
    const piece = day.adds('Oak chest', bleachAndClear, at('8:00'));
    day
      .done(piece, at('8:30'))
      .next(piece, at('9:00'))
      .next(piece, at('9:12'))
      .done(piece, at('9:30'));
    day.does({ do: 'repeat step', piece, step: 'bleach' }, at('9:31')).next(piece, at('33:00'));
    expect(day.windows(piece, 'b-on').map(({ begunAt }) => begunAt)).toEqual([
      at('9:00'),
      at('33:00'),
    ]);
  });
});

describe('moving a step', () => {
  test('before another, or last', () => {
    const day = new Workday();
    const piece = day.adds('Side table', twoCoats, at('8:00'));
    day.does({ do: 'move step', piece, step: 'scuff 2', before: 'coat 2' }, at('8:10'));
    expect(order(day, piece)).toEqual(['coat 1', 'scuff 2', 'coat 2']);
    day.does({ do: 'move step', piece, step: 'coat 1', before: null }, at('8:11'));
    expect(order(day, piece)).toEqual(['scuff 2', 'coat 2', 'coat 1']);
  });

  test.each([
    ['sand', null, 'Not moved: sand is done.'],
    ['coat 1', 'coat 1', 'Not moved: coat 1 stands there already.'],
    ['coat 1', 'sand', 'Not moved: sand is done; put it before one that is still to do.'],
    ['coat 9', null, 'Not moved: 1 Oak chest has no step "coat 9".'],
    ['coat 1', 'nowhere', 'Not moved: 1 Oak chest has no step "nowhere".'],
  ])('refuses %j before %j', (which, before, words) => {
    given(bleached)
      .when({ do: 'move step', piece: 'chest', step: which, before }, at('10:10'))
      .thenRefused(words);
  });
});

describe('skipping a step', () => {
  test('it is passed over and can be put back', () => {
    const day = new Workday();
    const piece = day.adds('Side table', twoCoats, at('8:00'));
    day.does({ do: 'skip step', piece, step: 'coat 1', skipped: true }, at('8:10'));
    expect(currentStep(day.piece(piece), null)?.id).toBe('coat 2');
    expect(stepPlace(day.piece(piece), 'coat 2')).toEqual({ place: 1, of: 2 });
    day.does({ do: 'skip step', piece, step: 'coat 1', skipped: false }, at('8:11'));
    expect(currentStep(day.piece(piece), null)?.id).toBe('coat 1');
    expect(day.said).toBe('coat 1 in the list again on 1 Side table');
  });

  test('chemistry that has begun does not stop for it', () => {
    const day = new Workday();
    const piece = day.adds('Oak chest', bleachAndClear, at('8:00'));
    day.done(piece, at('8:30')).next(piece, at('9:00'));
    day.does({ do: 'skip step', piece, step: 'bleach', skipped: true }, at('9:01'));
    expect(day.state(piece, 'b-on', at('9:25'))).toBe('late');
    expect(day.standing(piece, at('9:25')).rank).toBe('spoils');
  });

  test.each([
    ['sand', true, 'Not skipped: sand is done. 0 takes back.'],
    ['coat 1', false, 'Not put back: coat 1 is in the list already.'],
    ['coad 1', true, 'Not skipped: 1 Oak chest has no step "coad 1".'],
  ])('refuses %j, skipped %j', (which, skipped, words) => {
    given(bleached)
      .when({ do: 'skip step', piece: 'chest', step: which, skipped }, at('10:10'))
      .thenRefused(words);
  });

  test('twice is once too often', () => {
    given(chest.told('step-skipped', { piece: 'chest', step: 'rinse', skipped: true }))
      .when({ do: 'skip step', piece: 'chest', step: 'rinse', skipped: true }, at('9:00'))
      .thenRefused('Not skipped: rinse is skipped already.');
  });
});

describe('rewording a step', () => {
  test('changes its name and nothing else', () => {
    const day = new Workday();
    const piece = day.adds('Side table', twoCoats, at('8:00'));
    day.does({ do: 'reword step', piece, step: 'coat 2', name: ' gloss coat ' }, at('8:10'));
    expect(order(day, piece)).toEqual(['coat 1', 'gloss coat', 'scuff 2']);
    expect(day.piece(piece).steps[1]).toEqual({
      ...day.piece(piece).steps[0],
      id: 'coat 2',
      name: 'gloss coat',
      needs: ['recoat'],
    });
  });

  test('needs a name and a step', () => {
    given(chest)
      .when({ do: 'reword step', piece: 'chest', step: 'rinse', name: '' }, at('9:00'))
      .thenRefused(/a step needs a name/);
    given(chest)
      .when({ do: 'reword step', piece: 'chest', step: 'rinze', name: 'wash' }, at('9:00'))
      .thenRefused('Not reworded: 1 Oak chest has no step "rinze".', ['rinse']);
  });
});

test('editing a schedule afterwards changes no piece', () => {
  const day = new Workday();
  const steps = [...twoCoats.steps];
  const plan = { ...twoCoats, steps };
  const piece = day.adds('Side table', plan, at('8:00'));
  const later = day.adds('Stool', { ...plan, steps: steps.slice(0, 1) }, at('8:01'));
  expect(day.piece(piece).steps).toHaveLength(3);
  expect(day.piece(later).steps).toHaveLength(1);
});
