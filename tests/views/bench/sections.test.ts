import { expect, test } from 'vitest';
import { shippedProduct } from '../../support/shipped.ts';
import { afternoon, at, Facts, step } from '../support/bench-of.ts';
import { deskOf } from '../support/desk-of.ts';

const narrow = [40, 24] as const;

/** The hat rack's stain, wiped section by section. */
function staining() {
  const driven = deskOf({ now: at('24 15:00'), facts: afternoon().list, settings: { farView: 0 } });
  const { id: _, ...stain } = step('stain', 'stain', {
    stamps: [
      { event: 'section-on', perSection: true, says: 'on' },
      { event: 'section-off', perSection: true, says: 'wiped' },
    ],
  });
  const before = driven.port.piece('p8').steps[0]?.id ?? null;
  driven.port.act({ do: 'insert step', piece: 'p8', step: stain, before });
  driven.press('8');
  return driven;
}

test('at every section the foot says which is next, and that d ends the step', () => {
  const { press, rows } = staining();
  for (const next of ['section 1 on', 'section 1 wiped', 'section 2 on', 'section 2 wiped']) {
    expect(rows()[22]).toContain(`[8] Hat rack.  Space: ${next}.  d: done.  Enter:`);
    expect(rows(narrow)[22]).toBe(`[8]  Space: ${next}  d: done`);
    press('space');
  }
  press('d');
  expect(rows()[21]).toContain('stain done on 8 Hat rack');
  expect(rows()[22]).not.toContain('d: done');
});

test('a message too long for one row is broken, and names the piece to its end', () => {
  const { port, press, rows } = staining();
  const { id } = port.piece('p8').steps[0]!;
  const name = 'stain and wipe, back and sides first, the top and the front edges last of all';
  port.act({ do: 'reword step', piece: 'p8', step: id, name });
  press('space');
  expect(rows().slice(20, 22).join(' ')).toBe(`section 1 on, ${name} on 8 Hat rack`);
});

test('of a step with a long name the foot keeps that Space ends it', () => {
  const name = 'wash stripper residue off, wipe dry';
  const facts = new Facts()
    .piece('24 13:00', 1, 'Oak settle', [step('wash', name)])
    .pickUp('24 14:00', 1, 'wash');
  const drawn = deskOf({ now: at('24 14:07'), facts: facts.list });
  expect(drawn.rows(narrow)[22]).toBe('[1]  Space: wash stripper residue… done');
  expect(drawn.rows()[22]).toContain(`Space: ${name} done.`);
});

test('the row names the section that works', () => {
  const stain = step('stain', 'stain and wipe', { product: 'oil-stain' });
  const facts = new Facts()
    .piece('24 13:00', 1, 'Oak settle', [stain], [shippedProduct('oil-stain')])
    .pickUp('24 14:00', 1, 'stain')
    .stamp('24 14:01', 1, 'stain', 'section-on', { section: 1 })
    .stamp('24 14:05', 1, 'stain', 'section-off', { section: 1 })
    .stamp('24 14:06', 1, 'stain', 'section-on', { section: 2 });
  const rows = deskOf({ now: at('24 14:07'), facts: facts.list }).rows();
  expect(rows[5]).toContain('working, wipe    14:09');
  expect(rows[6]).toContain('section 2, stain and wipe; open to 14:21');
});
