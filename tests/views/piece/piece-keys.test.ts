import { describe, expect, test } from 'vitest';
import { pieceKeys } from '../../../src/views/piece/index.ts';
import { key, at } from '../support/bench-of.ts';
import { deskOf, type DrivenDesk } from '../support/desk-of.ts';
import { rawStool, stool } from './invented-stool.ts';

const now = at('24 14:27');

/** The stool of an afternoon, opened. */
function opened(facts = stool()): DrivenDesk {
  const driven = deskOf({ now, facts: facts.list });
  driven.press('3', 'p');
  return driven;
}

const marked = ({ rows }: DrivenDesk): string | undefined =>
  rows()
    .find((row) => row.startsWith('>'))
    ?.slice(5, 36)
    .trim();

describe('the mark', () => {
  test('begins on the current step and moves with arrows, not past the ends', () => {
    const driven = opened();
    expect(marked(driven)).toBe('scuff 400');
    driven.press('up');
    expect(marked(driven)).toBe('clear coat 2 of 3');
    driven.press('down', 'down');
    expect(marked(driven)).toBe('clear coat 3 of 3');
    driven.press('end', 'down');
    expect(marked(driven)).toBe('refit, wrap');
    driven.press('home', 'up');
    expect(marked(driven)).toBe('look over, lead test');
    driven.press('page down');
    expect(marked(driven)).toBe('clear coat 2 of 3');
    driven.press('page up');
    expect(marked(driven)).toBe('look over, lead test');
    expect(driven.port.asked).toEqual([]);
  });

  test('two arrows in one delivery move it twice', () => {
    const driven = opened();
    driven.desk.press([{ name: 'up', text: '' }]);
    driven.desk.press([{ name: 'up', text: '' }]);
    expect(marked(driven)).toBe('scuff 320');
  });
});

describe('Enter', () => {
  test('picks the current step up and goes to the bench with the piece selected', () => {
    const driven = opened();
    expect(driven.text()).toContain('Enter: pick up scuff 400');
    driven.press('enter');
    expect(driven.desk.top()).toMatchObject({ is: 'bench', selected: 'p3' });
    expect(driven.port.bench.sessions.at(-1)).toMatchObject({
      end: null,
      targets: [{ piece: 'p3', step: 'scuff2' }],
    });
    expect(driven.text()).toContain('picked up 3 Beech stool, scuff 400');
  });

  test('picks up the marked step if that is to do', () => {
    const driven = opened();
    driven.press('down');
    expect(driven.text()).toContain('Enter: pick up clear coat 3 of 3');
    driven.press('enter');
    expect(driven.port.bench.sessions.at(-1)?.targets).toMatchObject([{ step: 'coat3' }]);
  });

  test('on a step that is done takes the current one', () => {
    const driven = opened();
    driven.press('home');
    expect(driven.text()).toContain('Enter: pick up scuff 400');
  });

  test('puts down what is in hand', () => {
    const driven = opened(stool().pickUp('24 14:20', 3, 'scuff2'));
    expect(driven.text()).toContain('Enter: put down scuff 400');
    driven.press('enter');
    expect(driven.desk.top().is).toBe('piece');
    expect(driven.port.bench.sessions.at(-1)?.end).toBe(driven.port.now);
    expect(driven.text()).toContain('put down 3 Beech stool');
  });

  test('with every step done says what can be done instead', () => {
    const facts = stool();
    for (const id of ['scuff2', 'coat3', 'wrap']) facts.done('24 14:00', 3, id);
    const driven = opened(facts);
    driven.press('enter');
    expect(driven.text()).toContain(
      'Not picked up: every step of 3 Beech stool is done. e repeats one, i inserts',
    );
    expect(driven.port.asked).toEqual([]);
  });
});

describe('the plan', () => {
  test('e repeats the marked step', () => {
    const driven = opened();
    driven.press('up', 'e');
    expect(driven.port.steps('p3')).toContain('clear coat 2 of 3, again');
    expect(driven.text()).toContain('clear coat 2 of 3, again, once more on 3 Beech stool');
  });

  test('x skips it and takes it in again', () => {
    const driven = opened();
    driven.press('x');
    expect(driven.port.steps('p3')).toContain('(scuff 400)');
    expect(marked(driven)).toBe('scuff 400');
    driven.press('x');
    expect(driven.port.steps('p3')).toContain('scuff 400');
    driven.press('home', 'x');
    expect(driven.text()).toContain('Not skipped: look over, lead test is done. 0 takes back.');
  });

  test('. and , move it, with ] and [ beside them, and the mark goes with it', () => {
    const driven = opened();
    driven.press('.');
    expect(driven.port.steps('p3').slice(-3)).toEqual([
      'clear coat 3 of 3',
      'scuff 400',
      'refit, wrap',
    ]);
    expect(marked(driven)).toBe('scuff 400');
    driven.press(']');
    expect(driven.port.steps('p3').slice(-3)).toEqual([
      'clear coat 3 of 3',
      'refit, wrap',
      'scuff 400',
    ]);
    driven.press('.');
    expect(driven.text()).toContain('Not moved: scuff 400 is the last.');
    driven.press(',', '[');
    expect(driven.port.steps('p3').slice(-3)).toEqual([
      'scuff 400',
      'clear coat 3 of 3',
      'refit, wrap',
    ]);
    driven.press(',');
    expect(driven.text()).toContain('Not moved: clear coat 2 of 3 is done;');
    driven.press('home', ',');
    expect(driven.text()).toContain('Not moved: look over, lead test is the first.');
  });

  test('w rewords it; an empty wording is refused and Esc leaves it', () => {
    const driven = opened();
    driven.press('w');
    expect(driven.text()).toContain('step    scuff 400_');
    for (let letter = 0; letter < 9; letter += 1) driven.press('backspace');
    driven.press('enter');
    expect(driven.text()).toContain('Not reworded: a step needs a name.');
    driven.press('escape');
    expect(driven.port.steps('p3')).toContain('scuff 400');
    driven.press('w');
    driven.type(', grey pad');
    driven.press('enter');
    expect(driven.port.steps('p3')).toContain('scuff 400, grey pad');
    expect(driven.text()).toContain('scuff 400 is now scuff 400, grey pad on 3 Beech stool');
  });

  test('every act can be taken back at the bench', () => {
    const driven = opened();
    const before = driven.port.steps('p3');
    driven.press('x', 'e', '.', 'escape', '0', '0', '0');
    expect(driven.port.steps('p3')).toEqual(before);
  });
});

describe('inserting', () => {
  test('asks for a name, then for its kind of work, and puts it before the marked step', () => {
    const driven = opened();
    driven.press('i');
    expect(driven.text()).toContain('before  scuff 400');
    driven.type('left rail reglued');
    driven.press('enter');
    expect(driven.text()).toContain('insert left rail reglued: what kind of work is it?');
    expect(driven.list()[0]).toBe('1 reglue');
    driven.pick(1);
    expect(driven.port.steps('p3').slice(5, 8)).toEqual([
      'clear coat 2 of 3',
      'left rail reglued',
      'scuff 400',
    ]);
    expect(driven.port.piece('p3').steps[6]).toMatchObject({
      stepClass: 'reglue',
      minutes: { typical: 30, low: 15, high: 60 },
    });
    expect(driven.desk.top().is).toBe('piece');
    expect(driven.text()).toContain('left rail reglued inserted before scuff 400');
  });

  test('takes product, windows and minutes from such a step of the piece', () => {
    const driven = opened(rawStool());
    driven.press('down', 'down', 'down', 'i');
    driven.type('second bleach round');
    driven.press('enter');
    expect(driven.list()[0]).toBe('1 bleach');
    driven.pick(1);
    const [, , first, second] = driven.port.piece('p3').steps;
    expect(second).toMatchObject({
      name: 'second bleach round',
      product: 'bleach',
      minutes: first?.minutes,
      stamps: first?.stamps,
      copyOf: null,
    });
    expect(second?.id).not.toBe(first?.id);
    expect(driven.text().replaceAll('\n', ' ')).toContain(
      '; minutes and windows as bleach A, then B',
    );
  });

  test('says what it is like in a sentence of its own after what may not lie under it', () => {
    const driven = opened(rawStool());
    driven.press('down', 'down', 'down', 'i');
    driven.type('second bleach round');
    driven.press('enter');
    const reply = { ok: true, says: 'inserted.  Not yet: strip first.', piece: 'p3' } as const;
    Object.assign(driven.port, { act: () => reply });
    driven.pick(1);
    expect(driven.text().replaceAll('\n', ' ')).toContain(
      'strip first.  Minutes and windows as bleach A, then B',
    );
  });

  test('a grit in the name is the grit of the step, not that of the one it is like', () => {
    const driven = opened();
    driven.press('i');
    driven.type('scuff 600');
    driven.press('enter');
    driven.pick(1);
    expect(driven.port.piece('p3').steps[6]).toMatchObject({ name: 'scuff 600', grit: 600 });
  });

  test('all kinds of work are on the pages of the list', () => {
    const driven = opened();
    driven.press('i');
    driven.type('odd job');
    driven.press('enter');
    const seen = new Set<string>();
    for (let page = 0; page < 6; page += 1) {
      for (const label of driven.list()) seen.add(label.replace(/^\d /, ''));
      driven.pick(driven.list().length);
      if (driven.desk.top().is !== 'piece' || driven.list().length === 0) break;
    }
    for (const kind of ['look over', 'coat, sprayed', 'deliver', 'other'])
      expect(seen).toContain(kind);
  });

  test('an empty name is refused; before a step that is done it comes back with the reason', () => {
    const driven = opened();
    driven.press('i', 'enter');
    expect(driven.text()).toContain('Not inserted: a step needs a name.');
    driven.press('escape', 'home', 'i');
    driven.type('too late');
    driven.press('enter');
    driven.pick(1);
    expect(driven.text()).toContain('Not inserted: look over, lead test is done;');
    expect(driven.text()).toContain('step    too late_');
    expect(driven.port.steps('p3')).toHaveLength(9);
  });

  test('Esc goes back from the list to the name, and from the name to the piece', () => {
    const driven = opened();
    driven.press('i');
    driven.type('scuff 600');
    driven.press('enter', 'escape');
    expect(driven.text()).toContain('step    scuff 600_');
    driven.press('escape');
    expect(marked(driven)).toBe('scuff 400');
    expect(driven.port.asked).toEqual([]);
  });

  test('with every step done it goes to the end', () => {
    const facts = stool();
    for (const id of ['scuff2', 'coat3', 'wrap']) facts.done('24 14:00', 3, id);
    const driven = opened(facts);
    driven.press('i');
    expect(driven.text()).toContain('at the end');
    driven.type('wax');
    driven.press('enter');
    driven.pick(1);
    expect(driven.port.steps('p3').at(-1)).toBe('wax');
  });
});

describe('what is known of it', () => {
  test('l names the parts that are worked apart', () => {
    const driven = opened();
    driven.press('l');
    driven.type('seat, legs ,');
    driven.press('enter');
    expect(driven.port.piece('p3').parts.map(({ name }) => name)).toEqual(['seat', 'legs']);
    expect(driven.rows()[1]).toContain('parts: seat, legs');
    driven.press('l');
    expect(driven.text()).toContain('parts  seat, legs_');
    driven.type(', seat');
    driven.press('enter');
    expect(driven.text()).toContain('Not noted: two parts are called "seat"');
    expect(driven.text()).toContain('parts  seat, legs, seat_');
  });

  test('o describes it in one line that begins with what is known', () => {
    const driven = opened();
    driven.press('o');
    expect(driven.text()).toContain('known  hardwood, 1.9 m2, made 1950, promised 28 Nov 2026_');
    driven.type(', kind stool');
    driven.press('enter');
    expect(driven.port.piece('p3')).toMatchObject({ kind: 'stool', areaM2: 1.9, wood: 'hard' });
    driven.press('o');
    driven.type(', blue');
    driven.press('enter');
    expect(driven.text()).toContain(
      'Not noted: "blue" is no wood, size, profile, count, year, date or kind.',
    );
    driven.press('escape', 'o', 'enter');
    expect(driven.text()).toContain('Not noted: nothing was given to note.');
  });

  test('n writes a note on the marked step, or on the piece while none was marked', () => {
    const driven = opened();
    driven.press('n');
    expect(driven.rows()[0]).toBe('note on 3 Beech stool');
    driven.press('escape', 'up', 'n');
    expect(driven.rows()[0]).toBe('note on 3 Beech stool, clear coat 2 of 3');
    driven.type('one run');
    driven.press('enter');
    expect(driven.desk.top().is).toBe('piece');
    expect(driven.port.piece('p3').notes).toMatchObject([{ step: 'coat2', text: 'one run' }]);
    expect(driven.text()).toMatch(/note {5}\d\d:\d\d: one run/);
  });

  test('c shows the cautions of the marked step in full', () => {
    const driven = opened();
    driven.press('up', 'c');
    expect(driven.rows()[0]).toBe('cautions: 3 Beech stool, clear coat 2 of 3, Waterborne clear');
    expect(driven.text()).toContain('Below 10 C it does not form a film.');
    driven.press('x', 'e', 'enter');
    expect(driven.port.asked).toEqual([]);
    driven.press('escape', 'home', 'c');
    expect(driven.text()).toContain('None is written for this step. The label comes first.');
    driven.press('c');
    expect(marked(driven)).toBe('look over, lead test');
  });

  test('j opens the job card, y asks whether to take it off the bench', () => {
    const driven = opened();
    driven.press('j');
    expect(driven.desk.top()).toMatchObject({ is: 'job card', piece: 'p3' });
    const other = opened();
    other.press('y');
    expect(other.desk.top()).toMatchObject({ is: 'confirm', asks: 'take off bench', piece: 'p3' });
  });
});

test('f notes that the piece came in from the cold', () => {
  const driven = opened();
  driven.press('f');
  expect(driven.port.asked).toEqual([{ do: 'carry in', piece: 'p3' }]);
});

describe('nothing changes by accident', () => {
  test.each(['space', 'd', 's', 'r', 't', '0', 'backspace', '1', '9', '+', '*', '/', 'q'])(
    '%s does nothing here',
    (name) => {
      const driven = opened();
      driven.press(name);
      expect(driven.port.asked).toEqual([]);
      expect(driven.desk.top().is).toBe('piece');
    },
  );

  test('several keys at once do nothing, a held key acts once', () => {
    const driven = opened();
    driven.desk.press([key('x'), key('e')]);
    expect(driven.port.asked).toEqual([]);
    driven.press('e');
    for (let repeat = 0; repeat < 20; repeat += 1) {
      driven.port.wait(40);
      driven.desk.press([key('e')]);
    }
    expect(driven.port.steps('p3')).toHaveLength(10);
  });

  test('skip and down, one after the other and fast, skip each step that is marked', () => {
    const driven = opened();
    for (const name of ['x', 'down', 'x', 'down', 'x']) {
      driven.port.wait(300);
      driven.desk.press([key(name)]);
    }
    expect(driven.port.asked.map((intent) => intent.do)).toEqual(Array(3).fill('skip step'));
  });

  test('a key that bounces within a second acts once', () => {
    const driven = opened();
    driven.press('x');
    driven.port.wait(300);
    driven.desk.press([key('x')]);
    expect(driven.port.steps('p3')).toContain('(scuff 400)');
    driven.port.wait(300);
    driven.desk.press([key('w')]);
    expect(driven.text()).toContain('Minutes, windows and what was recorded stay with it.');
  });

  test('Enter that ends a field does not pick up too', () => {
    const driven = opened();
    driven.press('w');
    driven.type('!');
    driven.press('enter');
    driven.port.wait(300);
    driven.desk.press([key('enter')]);
    driven.press('n');
    driven.type('a note');
    driven.press('enter');
    driven.port.wait(300);
    driven.desk.press([key('enter')]);
    expect(driven.desk.top().is).toBe('piece');
    expect(driven.port.bench.sessions.filter(({ end }) => end === null)).toEqual([]);
  });

  test('letters typed into a field are letters', () => {
    const driven = opened();
    driven.press('i');
    driven.type('xe.,[]jy q 0');
    expect(driven.text()).toContain('step    xe.,[]jy q 0_');
    expect(driven.port.asked).toEqual([]);
  });
});

test('Esc and left go back to the bench, with the piece selected', () => {
  for (const name of ['escape', 'left']) {
    const driven = opened();
    driven.press('up', name);
    expect(driven.desk.top()).toMatchObject({ is: 'bench', selected: 'p3' });
  }
});

test('every key of the table is told on the screen and belongs to one act', () => {
  const driven = opened();
  const text = driven.text();
  const all = pieceKeys.flatMap(({ keys }) => keys);
  expect(new Set(all).size).toBe(all.length);
  for (const { act, says } of pieceKeys) if (act !== 'pick up') expect(text).toContain(says);
});

test('a piece that has left the bench meanwhile lets go of the keys', () => {
  const driven = opened();
  driven.port.act({ do: 'take off bench', piece: 'p3' });
  const asked = driven.port.asked.length;
  driven.press('enter', 'x', 'i');
  expect(driven.port.asked).toHaveLength(asked);
  expect(driven.text()).toContain('That piece is not on the bench any more.');
  driven.press('escape');
  expect(driven.desk.top().is).toBe('bench');
});
