import { describe, expect, it } from 'vitest';
import { minute } from '../../../src/tracker/time/index.ts';
import { deskOf } from '../support/desk-of.ts';
import { afternoon, at, bleach, ping, step, Facts } from '../support/bench-of.ts';

const now = at('24 14:29');
const text = 'B on at 14:30, in 1 min. Open to 14:40. Late, A dry: rinse, dry, start over. Gloves.';

describe('at 80 columns', () => {
  it.each([true, false])('a ping (loud: %s) says what is lost, whatever its length', (loud) => {
    const pings = [ping('c1', '24 14:28:59', `1 Oak settle: ${text}`, { loud })];
    const driven = deskOf({ now, facts: afternoon().list, pings });
    const head = driven.rows().slice(1, 3).join(' ');
    expect(head).toContain('Late, A dry:');
    expect(head).toContain('start over');
    expect(head).not.toContain('…');
  });

  it('beside the large figures too the name is cut and never the time', () => {
    const name = 'Sideboard with a curved front, doors and a mirror';
    const facts = new Facts()
      .piece('24 09:00', 2, name, [step('bleach', 'bleach', { windows: [bleach] })])
      .stamp('24 14:20', 2, 'bleach', 'first-stroke', { agent: 'A' });
    const row = deskOf({ now, facts: facts.list }).rows()[1];
    expect(row).toMatch(/^next {5}2 Sideboard with .*…: B on from 14:30 /);
    expect(row).toMatch(/[▀▄█]$/);
  });

  it('a number of two digits leaves a space before the name, and every column where it was', () => {
    const facts = new Facts();
    for (let number = 1; number <= 11; number += 1)
      facts.piece('24 09:00', number, `Stool ${number}`, [step('sand', 'sand')]);
    facts.pickUp('24 14:00', 11, 'sand');
    const shown = deskOf({ now, facts: facts.list })
      .rows([80, 40])
      .find((row) => row.startsWith('▶'));
    expect(shown).toMatch(/^▶\[11\] Stool 11 +in hand since/);
    expect(shown?.indexOf('│')).toBe(50);
  });

  it('a hold stands in the row of the piece that is in hand', () => {
    const facts = afternoon().tell('24 14:20', 'hold-placed', {
      piece: 'p1',
      reason: 'hinge plates',
      askAgain: null,
    });
    expect(deskOf({ now, facts: facts.list }).text()).toContain('hold: hinge plates; expected');
  });

  it('marks where cautions go on beyond their rows, and says which key shows all of them', () => {
    const cautions = ['gloves', 'goggles', 'apron', 'mask', 'fan'].map((gear) =>
      `Wear ${gear}. ${'It burns and blinds, and water has to be within reach first. '.repeat(3)}`.trim(),
    );
    const facts = new Facts()
      .piece('24 09:00', 1, 'Stool', [step('bleach', 'bleach', { cautions })])
      .pickUp('24 14:00', 1, 'bleach');
    const rows = deskOf({ now, facts: facts.list }).rows();
    expect(rows.filter((row) => row.includes('all of it'))).toEqual([
      '         … all of it: p, then c',
    ]);
  });

  it('holds and cures are at least named by their number', () => {
    const snapshot = { awake: { kept: false, says: 'This machine may sleep: no ping then.' } };
    for (const columns of [40, 80]) {
      const shown = deskOf({ now, facts: afternoon().list, snapshot }).text([columns, 24]);
      expect(shown).toMatch(/hold 8/);
      expect(shown).toMatch(/curing 7/);
    }
  });

  it.each([
    [80, 'On battery: no pings if this closes or runs down.'],
    [40, 'no pings if this closes'],
  ])('says at %s columns what would end the pings while something spoils', (columns, says) => {
    const closing = 'On battery: no pings if this closes or runs down.';
    const snapshot = { awake: { kept: true, says: 'Kept awake for Ash chair.', closing } };
    const facts = new Facts().piece('24 09:00', 1, 'Ash chair', [step('look', 'look over')]);
    const driven = deskOf({ now, facts: facts.list, snapshot });
    expect(driven.text([columns, 24])).toContain(says);
    driven.port.wait(2 * minute);
    expect(driven.text([columns, 24])).toContain('the bench');
    expect(driven.text([columns, 24])).toContain(says);
    expect(deskOf({ now, facts: facts.list }).text([columns, 24])).not.toContain('no pings');
  });

  it('the foot names a key whole or not at all', () => {
    const name = 'look over, photos, mark the joints and what else there is';
    const facts = new Facts().piece('24 09:00', 1, 'Ash chair', [step('look', name)]);
    const foot = deskOf({ now, facts: facts.list }).rows().at(-2) ?? '';
    expect(foot).toContain(`Space: pick up ${name}`.slice(0, 50));
    expect(foot).not.toMatch(/Enter: \w+…/);
  });

  it.each([80, 40])('says at %s columns what to do where nothing can be stored', (columns) => {
    const says = 'Not stored: there is no room left for /home/me/recoat/bench.json.';
    const todo = 'Make room on that disk, then do this again. What was stored before is untouched.';
    const snapshot = { obstacle: { says, todo } };
    const rows = deskOf({ now, facts: afternoon().list, snapshot }).rows([columns, 24]);
    const text = rows.map((row) => row.trim()).join(' ');
    expect(text).toContain(says);
    expect(text).toContain(todo);
  });
});
