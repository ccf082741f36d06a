import { describe, expect, it } from 'vitest';
import { hour, minute } from '../../../src/tracker/time/index.ts';
import { width } from '../../../src/views/drawing/index.ts';
import { plainBench, spokenBench, type PlainInput } from '../../../src/views/plain/index.ts';
import { shippedProduct } from '../../support/shipped.ts';
import { deskOf } from '../support/desk-of.ts';
import {
  afternoon,
  at,
  Facts,
  ping,
  recoat,
  shop,
  snapshotOf,
  step,
  tense,
} from '../support/bench-of.ts';

const reading = { at: at('24 13:40'), tempC: 15, rh: 65 };

const input = (facts: Facts, when: string, more: Partial<PlainInput> = {}): PlainInput => ({
  ...snapshotOf(facts.bench(), { readings: [reading] }),
  now: at(when),
  ...more,
});

const loud = ping('a', '12-03 16:40', '2 Wall shelf: B on, by 16:42. Late: rinse.', { loud: true });

/** A coat of shellac that went on at 8:00, and nothing else is to be done to it. */
const curing = () =>
  new Facts()
    .piece(
      '24 07:00',
      1,
      'Oak settle',
      [step('coat', 'shellac coat', { product: 'shellac' })],
      [shippedProduct('shellac')],
    )
    .done('24 08:00', 1, 'coat');

it('of a piece that cures says from when it may be used lightly, as long as that is to come', () => {
  const told = (when: string) => plainBench(input(curing(), when, { readings: [] }));
  expect(told('24 14:29')).toContain(
    'curing till Tue 1 Dec  shellac coat; light use from Wed 08:00',
  );
  expect(told('25 09:00')).toMatch(/curing till Tue 1 Dec 08:00 +shellac coat$/m);
  const foot = (when: string) => deskOf({ now: at(when), facts: curing().list }).text();
  expect(foot('24 14:29')).toContain('curing 1 Oak settle till 1 Dec (light use from Wed 08:00)');
  expect(foot('25 09:00')).toMatch(/curing 1 Oak settle till Tue 08:00$/m);
});

describe('the bench as text', () => {
  it('is a table of the pieces in their order, under the day, what is next and what is in hand', () => {
    expect(plainBench(input(afternoon(), '24 14:29')).split('\n')).toEqual([
      'Bench, Tue 24 Nov 2026 14:29, 15 C 65 % read 13:40, dew point 8 C',
      'Next: 2 Plant stand: try it, till 18:30; after 18:30 scuff 320 first',
      'In hand: 1 Oak settle, sand 120 grit, 27 min since 14:02',
      '',
      '1  Oak settle    in hand since 14:02             sand 120 grit',
      '2  Plant stand   try it till 18:30               varnish coat 1; after 18:30 scuff 320 first',
      '3  Beech stool   drying, try it 15:10            clear coat 2 of 3; open to 23:00',
      '4  Side table    in clamps till 15:20            glue-up, left rail; nothing lost after',
      '5  Garden bench  keep off till Wed 25 Nov 08:55  aerosol pass 2; recoating now wrinkles it',
      '6  Cane rocker   waits for hands                 look over, lead test',
      '8  Hat rack      hold: hinge plates              ask Thu 26 Nov',
      '7  Walnut tray   curing till Mon 14 Dec          oil coat',
      '',
      'Oily rags from 2 Plant stand: dealt with? Singly outdoors, or under water in a lidded metal can.',
    ]);
  });

  it("follows the shop's clock and units", () => {
    const american = { ...shop, hours: '12', temperature: 'F' } as const;
    const lines = plainBench(input(afternoon(), '24 14:29', { shop: american })).split('\n');
    expect(lines[0]).toBe('Bench, Tue 24 Nov 2026 2:29 pm, 59 F 65 % read 1:40 pm, dew point 47 F');
    expect(lines[5]).toContain('try it till 6:30 pm');
  });

  it('says what calls loudly, and what stands in the way of recording', () => {
    const text = plainBench(
      input(tense(), '12-03 16:41', {
        pings: [loud],
        obstacle: { says: 'Not recorded, nothing lost: disk full.', todo: 'Free 1 MB.' },
      }),
    );
    expect(text).toContain(
      '\nLoud: 2 Wall shelf: B on, by 16:42. Late: rinse.\nNext: 2 Wall shelf: B on, by 16:42; late: rinse, dry, start over\n',
    );
    expect(text).toMatch(/\nNot recorded, nothing lost: disk full\. Free 1 MB\.$/);
    const silenced = { ...loud, seenAt: at('12-03 16:41') };
    expect(plainBench(input(tense(), '12-03 16:41', { pings: [silenced] }))).not.toContain('Loud');
  });

  it('says what is late once', () => {
    const text = plainBench(input(tense(), '12-03 16:45'));
    expect(text).toContain('\nNext: 2 Wall shelf: late: rinse, dry, start over\n');
  });

  it('says so where nothing is on it, and where nobody has read the air', () => {
    expect(plainBench(input(new Facts(), '24 14:29', { readings: [] }))).toBe(
      'Bench, Tue 24 Nov 2026 14:29, no reading yet\nThe bench is empty.',
    );
  });

  it('keeps its columns straight under wide names, and sends nothing that acts on a terminal', () => {
    const facts = new Facts()
      .piece('24 09:00', 1, '桐の箪笥', [step('look', 'look over')])
      .piece('24 09:01', 12, 'Oak\u001b[2Jsettle', [step('sand', 'sand 120')]);
    const lines = plainBench(input(facts, '24 14:29')).split('\n').slice(-2);
    expect(lines[0]).toMatch(/^ 1 {2}桐/);
    expect(lines[1]).toContain('Oak\\x1b[2Jsettle');
    const at1 = (line: string | undefined): number => width((line ?? '').split('waits')[0] ?? '');
    expect(at1(lines[0])).toBe(at1(lines[1]));
  });

  it('names the part that a row is about', () => {
    const facts = new Facts()
      .piece('24 09:00', 3, 'Beech stool', [
        step('coat', 'clear coat', { windows: [recoat(2 * hour, null)] }),
        step('next', 'next coat', { needs: ['recoat'] }),
      ])
      .tell('24 09:01', 'parts-named', { piece: 'p3', parts: [{ id: 'a', name: 'seat' }] })
      .done('24 14:00', 3, 'coat', 'a');
    expect(plainBench(input(facts, '24 14:29'))).toContain(
      '3  Beech stool  drying, try it 16:00  seat: clear coat; nothing lost after',
    );
  });

  it('has odd timers that belong to no piece', () => {
    const facts = new Facts().tell('24 14:00', 'timer-started', {
      timer: 't',
      piece: null,
      label: 'soak',
      ms: 35 * minute,
    });
    expect(plainBench(input(facts, '24 14:29'))).toMatch(/soak {2}timer till 14:35/);
  });
});

describe('the bench as it is spoken', () => {
  it('is one sentence a piece, with times that can be spoken', () => {
    const lines = spokenBench(input(afternoon(), '24 14:29')).split('\n');
    expect(lines).toEqual([
      '1 Oak settle, sand 120 grit: in hand since 14 02, 27 minutes.',
      '2 Plant stand, varnish coat 1: try it till 18 30, 4 hours 1 minute left; after 18 30 scuff 320 first. Not in hand.',
      '3 Beech stool, clear coat 2 of 3: drying, try it 15 10, 41 minutes left; open to 23 00. Not in hand.',
      '4 Side table, glue-up, left rail: in clamps till 15 20, 51 minutes left; nothing lost after. Not in hand.',
      '5 Garden bench, aerosol pass 2: keep off till Wed 25 Nov 08 55, 18 hours 26 minutes left; recoating now wrinkles it. Not in hand.',
      '6 Cane rocker, look over, lead test: waits for hands. Not in hand.',
      '8 Hat rack: hold: hinge plates; ask Thu 26 Nov. Not in hand.',
      '7 Walnut tray, oil coat: curing till Mon 14 Dec, 19 days left. Not in hand.',
    ]);
  });

  it('says the same for a whole minute', () => {
    const said = ['16:40:00', '16:40:20', '16:40:59'].map((time) =>
      spokenBench(input(tense(), `12-03 ${time}`)),
    );
    expect(said[0]).toContain('B now, till 16 42, 2 minutes left');
    expect(said[1]).toContain('1 minute left');
    expect(said[2]).toBe(said[1]);
    expect(spokenBench(input(tense(), '12-03 16:41:20'))).toContain('less than a minute left');
  });

  it('says first what calls, and what is in hand of what spoils', () => {
    const held = tense().pickUp('12-03 16:30', 2, 'bleach');
    const lines = spokenBench(input(held, '12-03 16:41', { pings: [loud] })).split('\n');
    expect(lines[0]).toBe('Loud: 2 Wall shelf: B on, by 16 42. Late: rinse.');
    expect(lines[1]).toMatch(/^2 Wall shelf, bleach: B now, .* In hand\.$/);
  });

  it('says so where the bench is empty', () => {
    expect(spokenBench(input(new Facts(), '24 14:29'))).toBe('The bench is empty.');
  });

  it('draws nothing', () => {
    expect(spokenBench(input(afternoon(), '24 14:29'))).not.toMatch(/[│┊█▒·×─]/);
  });
});
