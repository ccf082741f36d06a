import { expect, test } from 'vitest';
import { minute } from '../../../src/tracker/time/index.ts';
import { at } from '../support/instants.ts';
import { past, target, type Past } from '../support/past.ts';
import { clearCoat, milestone } from '../support/rules.ts';
import { product, schedule, step } from '../support/schedules.ts';
import { cautionsAt, idsOf, theOne } from './invented-rules.ts';

const clear = product('clear', 'waterborne', clearCoat, {
  productClass: 'waterborne polyurethane',
});
const lacquer = product('lacquer', 'evaporative', [milestone('recoat', 60 * minute)], {
  productClass: 'nitrocellulose lacquer',
});
const varnish = product('varnish', 'oxidative', [milestone('recoat', 600 * minute)], {
  productClass: 'traditional varnish',
});
const stain = product('stain', 'oxidative', [milestone('recoat', 120 * minute)], {
  productClass: 'oil stain',
});
const mine = product('mine', 'waterborne', [], { productClass: 'my own can' });

const plan = schedule(
  'plan',
  [
    step('test', 'lead test'),
    step('strip', 'strip'),
    step('sand', 'sand bare, first grit', { dusty: true }),
    step('stain', 'stain', { product: 'stain' }),
    step('varnish', 'coat, brushed', { product: 'varnish', cleanAir: true }),
    step('scuff', 'scuff', { dusty: true }),
    step('clear', 'coat, brushed', { product: 'clear', cleanAir: true }),
    step('spray', 'coat, sprayed', { product: 'lacquer', cleanAir: true, fumes: true }),
    step('mine', 'coat, brushed', { product: 'mine' }),
  ],
  [clear, lacquer, varnish, stain, mine],
);
const chest = past().added('chest', plan);
const ids = (told: Past, which: string, now = at('12:00')): readonly string[] =>
  idsOf(cautionsAt(told, 'chest', which, now).all);

test('lead: a piece of an unknown year or from before 1978 says it every time till it is tested', () => {
  expect(ids(chest, 'strip')).toContain('lead-not-tested');
  const old = chest.described('chest', { yearMade: 1977 });
  const again = old.done('chest', 'strip', at('9:00'));
  expect(idsOf(cautionsAt(again, 'chest', 'sand').full)).toContain('lead-not-tested');
  expect(ids(chest.described('chest', { yearMade: 1978 }), 'sand')).not.toContain(
    'lead-not-tested',
  );
});

test('lead: once tested, a negative kit is said to be no proof', () => {
  const tested = chest.done('chest', 'test', at('8:30'));
  expect(ids(tested, 'sand')).toContain('lead-kit');
  expect(ids(tested, 'sand')).not.toContain('lead-not-tested');
});

test('lead: scuffing a coat of ours on wood that was sanded bare is about no old paint', () => {
  const coated = chest.done('chest', 'sand', at('9:00')).done('chest', 'varnish', at('10:00'));
  expect(ids(coated, 'scuff')).not.toContain('lead-not-tested');
  const overOld = chest.done('chest', 'varnish', at('10:00'));
  expect(ids(overOld, 'scuff')).toContain('lead-not-tested');
});

test('gear is said in full the first time such work is done on a piece, then in one line', () => {
  const first = cautionsAt(chest, 'chest', 'sand');
  expect(idsOf(first.full)).toContain('sand-gear');
  const later = cautionsAt(chest.done('chest', 'sand', at('9:00')), 'chest', 'scuff');
  expect(idsOf(later.brief)).toContain('sand-gear');
});

test('sprayed and solvent work names what could light it; where the product says so it is said once', () => {
  expect(ids(chest, 'spray')).toContain('ignition');
  const said = schedule('said', [
    step('spray', 'coat, sprayed', { cautions: ['No heater, laptop or fan near.'] }),
  ]);
  expect(ids(past().added('chest', said), 'spray')).not.toContain('ignition');
});

test('over: lacquer over varnish says no and what to do instead; the label comes from the table', () => {
  const told = chest.done('chest', 'sand', at('9:00')).done('chest', 'varnish', at('10:00'));
  const now = told.pickedUp('s', at('11:00'), [target('chest', 'spray')]);
  const id = 'over: nitrocellulose lacquer over traditional varnish';
  const found = theOne(cautionsAt(now, 'chest', 'spray'), id);
  expect(found?.says).toMatch(/: no, its solvent lifts .* Instead: more of the same/);
  expect(found?.ofTheMoment).toBe(true);
});

test('over: what was tried on a patch lies nowhere on the piece', () => {
  const tried = schedule(
    'tried',
    [
      step('sand', 'sand bare, first grit'),
      step('try', 'other', { product: 'varnish', trialFor: ['spray'] }),
      step('spray', 'coat, sprayed', { product: 'lacquer' }),
    ],
    [lacquer, varnish],
  );
  const told = past().added('chest', tried).done('chest', 'try', at('9:00'));
  expect(ids(told, 'spray').join()).not.toContain('over traditional varnish');
});

test('washing off with warm water asks for no vapour mask, stripper does; what is sprayed asks for a particle filter', () => {
  const wash = schedule('wash', [
    step('wash', 'strip', { cautions: ['No more warm water than it takes.'] }),
    step('strip', 'strip'),
    step('spray a board', 'other'),
  ]);
  const piece = past().added('chest', wash);
  expect(ids(piece, 'wash')).not.toEqual(expect.arrayContaining(['strip-gear']));
  expect(ids(piece, 'wash')).not.toContain('ignition');
  expect(ids(piece, 'strip')).toEqual(expect.arrayContaining(['strip-gear', 'ignition']));
  expect(ids(piece, 'spray a board')).toContain('spray-gear');
});

test('over: a step that is still to come is held against what is planned before it', () => {
  expect(ids(chest.done('chest', 'sand', at('9:00')), 'clear')).toEqual(
    expect.not.arrayContaining(['over: waterborne polyurethane over bare wood']),
  );
  expect(ids(chest, 'mine').join()).toContain('my own can over nitrocellulose lacquer');
});

test('over: clear over oil stain waits till it is dry, and for the day the table wants', () => {
  const told = chest
    .done('chest', 'sand', at('9:00'))
    .done('chest', 'stain', at('10:00'))
    .pickedUp('s', at('11:00'), [target('chest', 'clear')]);
  const id = 'over: waterborne polyurethane over oil stain';
  expect(ids(told, 'clear', at('11:00'))).toContain(id);
  expect(ids(told, 'clear', at('33:00'))).toContain(id);
  expect(ids(told, 'clear', at('35:00'))).not.toContain(id);
});

test('over: what is in no row is said to be unknown', () => {
  const told = chest
    .done('chest', 'sand', at('9:00'))
    .pickedUp('s', at('11:00'), [target('chest', 'mine')]);
  expect(theOne(cautionsAt(told, 'chest', 'mine'), 'over: my own can over bare wood')?.says).toBe(
    'My own can over bare wood: not in the table: try it on a sample board.',
  );
});

test('dust: coats that are not dust-free on other pieces are named with the time', () => {
  const others = chest
    .added('two', plan, { number: 2 })
    .done('two', 'clear', at('11:40'))
    .added('six', plan, { number: 6 })
    .done('six', 'clear', at('11:50'));
  const tacky = theOne(cautionsAt(others, 'chest', 'sand'), 'tacky');
  expect(tacky).toMatchObject({ says: '2 and 6 tacky', until: at('12:20'), then: 'sand outside' });
  expect(ids(others, 'sand', at('12:20'))).not.toContain('tacky');
  expect(ids(others, 'strip')).not.toContain('tacky');
});

test('dust: it is said in full each time, also where the step was done before', () => {
  const again = chest
    .done('chest', 'sand', at('9:00'))
    .added('two', plan, { number: 2 })
    .done('two', 'clear', at('11:40'));
  const { full, brief } = cautionsAt(again, 'chest', 'sand');
  expect(idsOf(full)).toContain('tacky');
  expect(idsOf(brief)).toContain('sand-gear');
});

test('of a step that was skipped one line is enough', () => {
  const skipped = chest.told('step-skipped', { piece: 'chest', step: 'sand', skipped: true });
  expect(idsOf(cautionsAt(chest, 'chest', 'sand').full)).toContain('sand-gear');
  expect(idsOf(cautionsAt(skipped, 'chest', 'sand').brief)).toContain('sand-gear');
});

test('dust and fumes: what a helper is at is said where a coat needs clean air', () => {
  const told = chest
    .added('other', plan, { number: 7, name: 'Pine box' })
    .pickedUp('h', at('11:50'), [target('other', 'scuff')], 2);
  expect(theOne(cautionsAt(told, 'chest', 'varnish'), 'dust in the air')?.says).toBe(
    '7 Pine box makes dust now (scuff): wait till it has settled, or coat elsewhere',
  );
  expect(ids(told, 'sand')).not.toContain('dust in the air');
  const spraying = chest
    .added('other', plan, { number: 7 })
    .pickedUp('h', at('11:50'), [target('other', 'spray')], 2);
  expect(ids(spraying, 'sand')).toContain('fumes in the air');
});

test('lead: a test that asks what it showed counts by its answer; without one it is no test', () => {
  const asking = schedule('asking', [
    step('test', 'lead test', {
      asks: {
        question: 'what did it show?',
        answers: [
          { id: 'none', says: 'no lead' },
          { id: 'lead', says: 'lead' },
        ],
      },
    }),
    step('sand', 'sand bare, first grit'),
  ]);
  const done = past().added('chest', asking).done('chest', 'test', at('9:00'));
  const answered = (answer: string): Past =>
    done.told('question-answered', { piece: 'chest', step: 'test', answer });
  expect(ids(done, 'sand')).toContain('lead-not-tested');
  expect(ids(answered('none'), 'sand')).toContain('lead-kit');
  expect(idsOf(cautionsAt(answered('lead'), 'chest', 'sand').full)).toContain('lead-found');
});

test('lead: found at one spot it is there, whatever another test showed, before or after', () => {
  const asks = {
    question: 'what did it show?',
    answers: [
      { id: 'none', says: 'no lead' },
      { id: 'lead', says: 'lead' },
    ],
  };
  const twice = schedule('twice', [
    step('legs', 'lead test', { asks }),
    step('top', 'lead test', { asks }),
    step('sand', 'sand bare, first grit'),
  ]);
  const showed = (legs: string, top: string): readonly string[] =>
    ids(
      past()
        .added('chest', twice)
        .done('chest', 'legs', at('9:00'))
        .told('question-answered', { piece: 'chest', step: 'legs', answer: legs })
        .done('chest', 'top', at('9:10'))
        .told('question-answered', { piece: 'chest', step: 'top', answer: top }),
      'sand',
    );
  expect(showed('lead', 'none')).toContain('lead-found');
  expect(showed('none', 'lead')).toContain('lead-found');
  expect(showed('none', 'none')).not.toContain('lead-found');
});
