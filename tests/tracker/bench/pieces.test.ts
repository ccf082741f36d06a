import { describe, expect, test } from 'vitest';
import { foldBench, freeNumber } from '../../../src/tracker/bench/index.ts';
import { given } from '../support/given-when-then.ts';
import { at } from '../support/instants.ts';
import { past, target } from '../support/past.ts';
import { bleachAndClear, schedule, twoCoats } from '../support/schedules.ts';
import { Workday } from '../support/workday.ts';

const chest = past().added('chest', twoCoats, { name: 'Oak chest' });

describe('adding a piece', () => {
  test('takes a name and a finishing schedule, and gives it the lowest free number', () => {
    given(past().added('a', twoCoats, { number: 1 }).added('b', twoCoats, { number: 3 }))
      .when({ do: 'add piece', name: ' Side table ', schedule: bleachAndClear }, at('9:00'))
      .then({
        kind: 'piece-added',
        body: {
          piece: 'this-press',
          number: 2,
          name: 'Side table',
          schedule: {
            id: 'bleach-and-clear',
            name: 'bleach and clear',
            hash: 'hash of bleach-and-clear',
          },
          steps: bleachAndClear.steps,
          products: bleachAndClear.products,
        },
      });
  });

  test('takes what else is known', () => {
    given(past())
      .when(
        {
          do: 'add piece',
          name: 'Chest',
          schedule: twoCoats,
          describe: { wood: 'hard', promised: '2026-05-09' },
        },
        at('9:00'),
      )
      .then(
        { kind: 'piece-added', body: { number: 1 } },
        {
          kind: 'piece-described',
          body: { piece: 'this-press', changes: { wood: 'hard', promised: '2026-05-09' } },
        },
      );
  });

  test.each([
    ['', 'Not added: a piece needs a name.'],
    ['   ', 'Not added: a piece needs a name.'],
    ['x'.repeat(81), 'Not added: a name has at most 80 letters; this one has 81.'],
  ])('needs a name that fits: %j', (name, words) => {
    given(past())
      .when({ do: 'add piece', name, schedule: twoCoats }, at('9:00'))
      .thenRefused(words);
  });

  test('needs a schedule with steps', () => {
    given(past())
      .when({ do: 'add piece', name: 'Chest', schedule: schedule('nothing', []) }, at('9:00'))
      .thenRefused(/finishing schedule nothing has no steps/);
  });

  test('does not take half of a wrong description', () => {
    given(past())
      .when(
        { do: 'add piece', name: 'Chest', schedule: twoCoats, describe: { areaM2: -2 } },
        at('9:00'),
      )
      .thenRefused(/^Not added: a show surface of -2 m2/);
  });
});

describe('describing a piece', () => {
  test('changes what was told and nothing else', () => {
    const day = new Workday();
    const piece = day.adds('Oak chest', twoCoats, at('8:00'));
    const before = day.piece(piece);
    day.does(
      { do: 'describe piece', piece, changes: { wood: 'soft', yearMade: 1911 } },
      at('8:05'),
    );
    day.does(
      { do: 'describe piece', piece, changes: { yearMade: null, name: '  Pine chest ' } },
      at('8:06'),
    );
    expect(day.piece(piece)).toEqual({
      ...before,
      wood: 'soft',
      yearMade: null,
      name: 'Pine chest',
    });
  });

  test.each([
    [{ name: ' ' }, 'Not noted: a piece needs a name.'],
    [{ name: 'x'.repeat(99) }, /at most 80 letters; this one has 99/],
    [{ areaM2: 0 }, /show surface of 0 m2/],
    [{ areaM2: Number.NaN }, /show surface/],
    [{ areaM2: 101 }, /give 0\.05 to 100/],
    [{ yearMade: 2027 }, 'Not noted: made in 2027? Give a year up to 2026.'],
    [{ yearMade: 999 }, /made in 999/],
    [{ yearMade: 1900.5 }, /made in 1900\.5/],
    [{ promised: 'Saturday' }, 'Not noted: "Saturday" is no date; write it as 2026-05-04.'],
    [{ promised: '2026-02-30' }, /"2026-02-30" is no date/],
    [{}, 'Not noted: nothing was given to note.'],
  ])('refuses %j', (changes, words) => {
    given(chest)
      .when({ do: 'describe piece', piece: 'chest', changes }, at('9:00'))
      .thenRefused(words);
  });
});

describe('naming parts', () => {
  test('parts keep their ids by name', () => {
    const day = new Workday();
    const piece = day.adds('Oak chest', twoCoats, at('8:00'));
    day.does({ do: 'name parts', piece, names: ['case', ' drawers ', ''] }, at('8:01'));
    const [box, drawers] = day.piece(piece).parts;
    expect(day.piece(piece).parts.map(({ name }) => name)).toEqual(['case', 'drawers']);
    day.does({ do: 'name parts', piece, names: ['doors', 'drawers', 'case'] }, at('8:02'));
    const [doors, ...others] = day.piece(piece).parts;
    expect(others).toEqual([drawers, box]);
    expect([box?.id, drawers?.id]).not.toContain(doors?.id);
  });

  test('two of one name are refused', () => {
    given(chest)
      .when({ do: 'name parts', piece: 'chest', names: ['door', 'top', 'door'] }, at('9:00'))
      .thenRefused('Not noted: two parts are called "door"; give each a name of its own.');
  });

  test('a part with work recorded stays', () => {
    given(chest.parts('chest', 'top', 'case').done('chest', 'coat 1', at('9:00'), { part: 'top' }))
      .when({ do: 'name parts', piece: 'chest', names: ['case'] }, at('9:10'))
      .thenRefused('Not noted: top has work recorded on it; keep it in the list.');
  });

  test('a part that was or is in hand stays', () => {
    given(
      chest
        .parts('chest', 'top', 'case')
        .pickedUp('s', at('9:00'), [target('chest', 'coat 1', 'top')]),
    )
      .when({ do: 'name parts', piece: 'chest', names: [] }, at('9:10'))
      .thenRefused(/top has work recorded on it/);
  });

  test('a part without work may go', () => {
    given(chest.parts('chest', 'top', 'case'))
      .when({ do: 'name parts', piece: 'chest', names: [] }, at('9:10'))
      .then({ kind: 'parts-named', body: { piece: 'chest', parts: [] } });
  });
});

describe('holds', () => {
  test('say what for, since when, and when to ask again', () => {
    const day = new Workday();
    const piece = day.adds('Oak chest', twoCoats, at('8:00'));
    day.does({ do: 'place hold', piece, reason: ' a hinge ', askAgain: '2026-05-04' }, at('9:00'));
    expect(day.piece(piece).hold).toMatchObject({
      reason: 'a hinge',
      since: at('9:00'),
      askAgain: '2026-05-04',
    });
    expect(day.standing(piece, at('9:01')).rank).toBe('hold');
    day.does({ do: 'lift hold', piece }, at('10:00'));
    expect(day.piece(piece).hold).toBeNull();
  });

  test('may be placed anew with another reason', () => {
    given(chest.told('hold-placed', { piece: 'chest', reason: 'hinge', askAgain: null }))
      .when({ do: 'place hold', piece: 'chest', reason: 'a dry day', askAgain: null }, at('9:00'))
      .then({ kind: 'hold-placed', body: { reason: 'a dry day' } });
  });

  test.each([
    ['', null, /say what it waits for/],
    ['hinge', '2026-05-03', 'Not on hold: 2026-05-03 has passed; ask again on a day to come.'],
    ['hinge', 'tomorrow', 'Not on hold: "tomorrow" is no date; write it as 2026-05-04.'],
    ['hinge', '2026-06-31', /"2026-06-31" is no date/],
  ])('refuse reason %j, ask again %j', (reason, askAgain, words) => {
    given(chest)
      .when({ do: 'place hold', piece: 'chest', reason, askAgain }, at('9:00'))
      .thenRefused(words);
  });

  test('that are not there are not lifted', () => {
    given(chest)
      .when({ do: 'lift hold', piece: 'chest' }, at('9:00'))
      .thenRefused('Not lifted: 1 Oak chest is not on hold.');
  });
});

describe('off the bench and back', () => {
  test('taking it off puts it down and frees its number', () => {
    given(chest.pickedUp('s', at('9:00'), [target('chest', 'coat 1')]))
      .when({ do: 'take off bench', piece: 'chest' }, at('9:10'))
      .then(
        { kind: 'put-down', body: { session: 's' } },
        { kind: 'piece-left-bench', body: { piece: 'chest' } },
      );
  });

  test('a time before it was picked up is refused', () => {
    given(chest.pickedUp('s', at('9:00'), [target('chest', 'coat 1')]))
      .when({ do: 'take off bench', piece: 'chest' }, at('9:10'), { at: at('8:50') })
      .thenRefused('Not taken off: 1 Oak chest was picked up after that. Give a later time.');
  });

  test('it comes back under the lowest free number', () => {
    const day = new Workday();
    const first = day.adds('Oak chest', twoCoats, at('8:00'));
    const second = day.adds('Side table', twoCoats, at('8:01'));
    day.does({ do: 'take off bench', piece: first }, at('9:00'));
    expect(day.piece(first)).toMatchObject({ place: 'past', number: null, leftAt: at('9:00') });
    const third = day.adds('Stool', twoCoats, at('9:01'));
    day.does({ do: 'put back on bench', piece: first }, at('9:02'));
    expect([first, second, third].map((id) => day.piece(id).number)).toEqual([3, 2, 1]);
    expect(day.said).toBe('3 Oak chest back on the bench');
    expect(day.piece(first).leftAt).toBeNull();
  });

  test('removing hides it and keeps the record', () => {
    const day = new Workday();
    const piece = day.adds('Oak chest', twoCoats, at('8:00'));
    day.firstStroke(piece, at('9:00')).does({ do: 'remove piece', piece }, at('9:30'));
    expect(day.piece(piece)).toMatchObject({ place: 'removed', number: null });
    expect(day.piece(piece).stamps).toHaveLength(1);
    expect(day.bench.sessions[0]?.end).toBe(at('9:30'));
    expect(day.standings(at('9:31'))).toEqual([]);
    day.does({ do: 'put back on bench', piece }, at('9:40'));
    expect(day.piece(piece)).toMatchObject({ place: 'bench', number: 1 });
  });

  test('a removed past piece is removed once', () => {
    const gone = chest.told('piece-left-bench', { piece: 'chest' });
    given(gone)
      .when({ do: 'remove piece', piece: 'chest' }, at('9:00'))
      .then({ kind: 'piece-removed', body: {} });
    given(gone.told('piece-removed', { piece: 'chest' }))
      .when({ do: 'remove piece', piece: 'chest' }, at('9:00'))
      .thenRefused('Not removed: Oak chest is removed already.');
  });

  test('what is on the bench is not put back', () => {
    given(chest)
      .when({ do: 'put back on bench', piece: 'chest' }, at('9:00'))
      .thenRefused('Not put back: 1 Oak chest is on the bench.');
  });

  test('nothing is done to a piece that has left', () => {
    const gone = chest.told('piece-left-bench', { piece: 'chest' });
    for (const intent of [
      { do: 'place hold', piece: 'chest', reason: 'hinge', askAgain: null },
      { do: 'first stroke', piece: 'chest', part: null },
      { do: 'take off bench', piece: 'chest' },
      { do: 'move stamp', piece: 'chest', earlier: true },
      { do: 'pick up', targets: [{ piece: 'chest', part: null }] },
    ] as const) {
      given(gone)
        .when(intent, at('9:00'))
        .thenRefused(/Oak chest is not on the bench\. Put it back first\./);
    }
  });
});

describe('numbers', () => {
  test('the lowest free one, however many have gone', () => {
    const numbered = (...numbers: number[]) =>
      foldBench(
        numbers.reduce((facts, number) => facts.added(`p${number}`, twoCoats, { number }), past())
          .facts,
      );
    expect(freeNumber(numbered())).toBe(1);
    expect(freeNumber(numbered(1, 2, 3))).toBe(4);
    expect(freeNumber(numbered(2, 3))).toBe(1);
    expect(freeNumber(numbered(1, 2, 4, 5, 9))).toBe(3);
    expect(freeNumber(numbered(...Array.from({ length: 12 }, (_, index) => index + 1)))).toBe(13);
  });
});

describe('notes', () => {
  test('are on the piece or on a step, also of a past piece', () => {
    const day = new Workday();
    const piece = day.adds('Oak chest', twoCoats, at('8:00'));
    day.does({ do: 'write note', piece, step: null, text: ' runner replaced ' }, at('8:10'));
    day.does({ do: 'take off bench', piece }, at('8:20'));
    day.does({ do: 'write note', piece, step: 'coat 1', text: 'can 3' }, at('8:30'), {
      at: at('8:25'),
    });
    expect(day.piece(piece).notes.map(({ step, text, at: when }) => [step, text, when])).toEqual([
      [null, 'runner replaced', at('8:10')],
      ['coat 1', 'can 3', at('8:25')],
    ]);
  });

  test('say something', () => {
    given(chest)
      .when({ do: 'write note', piece: 'chest', step: null, text: ' ' }, at('9:00'))
      .thenRefused('Not noted: the note is empty.');
  });

  test('are on a step that is there', () => {
    given(chest)
      .when({ do: 'write note', piece: 'chest', step: 'caot 1', text: 'x' }, at('9:00'))
      .thenRefused('Not noted: 1 Oak chest has no step "caot 1".', ['coat 1']);
  });
});

describe('shutting up shop', () => {
  test('keeps the answers', () => {
    const day = new Workday();
    day.does(
      { do: 'shut up shop', answers: { rags: 'yes', gun: 'does not apply' }, backAt: at('31:00') },
      at('18:00'),
    );
    expect(day.bench.lastShut).toEqual({
      at: at('18:00'),
      answers: { rags: 'yes', gun: 'does not apply' },
    });
  });

  test('is not from before now', () => {
    given(past())
      .when({ do: 'shut up shop', answers: {}, backAt: at('8:00') }, at('9:00'))
      .thenRefused(/back before now/);
  });
});
