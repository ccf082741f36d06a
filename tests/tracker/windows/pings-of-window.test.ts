import { describe, expect, test } from 'vitest';
import { minute } from '../../../src/tracker/time/index.ts';
import { windowsOfPot } from '../../../src/tracker/bench/index.ts';
import { pingsOf, type TimedStretch, type Window } from '../../../src/tracker/windows/index.ts';
import { at } from '../support/instants.ts';
import { after, bleachB, first, go, grows, shrinks, spoils, wait } from '../support/rules.ts';
import {
  aerosol,
  bleachAndClear,
  glueUp,
  product,
  schedule,
  stainInSections,
  step,
  strip,
  twoCoats,
  twoPart,
} from '../support/schedules.ts';
import { labelSense } from '../support/sense.ts';
import { Workday } from '../support/workday.ts';

const clockOf = (instant: number): string => {
  const minutes = (instant - at('0:00')) / minute;
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
};

/** `9:10 opens, loud`. */
const told = (window: Window): readonly string[] =>
  pingsOf(window).map((ping) => `${clockOf(ping.at)} ${ping.reason}${ping.loud ? ', loud' : ''}`);

function begun(name: keyof typeof schedules): { readonly day: Workday; readonly piece: string } {
  const day = new Workday();
  return { day, piece: day.adds('Oak chest', schedules[name], at('8:00')) };
}
/** With its end put off, so that it is open for so long. */
const wetFor =
  (ms: number) =>
  (stretch: TimedStretch): TimedStretch => {
    const end = at('9:15') + ms;
    if (stretch.meaning === 'go') return { ...stretch, ends: end };
    return stretch.meaning === 'late' ? { ...stretch, begins: end } : stretch;
  };
const schedules = { bleachAndClear, twoCoats, stainInSections, aerosol, glueUp, twoPart, strip };

test('a stretch that loses all its time renames no other ping', () => {
  const keys = (opensAfter: number) => {
    const day = new Workday({
      sense: {
        ...labelSense,
        spanEnd: ({ ms, may }, from) => from + (may === 'grow' ? opensAfter * 60 * minute : ms),
      },
    });
    const piece = day.adds('Oak chest', twoCoats, at('8:00'));
    day.firstStroke(piece, at('9:00')).done(piece, at('9:30'));
    const pings = pingsOf(day.window(piece, 'recoat'));
    return new Map(pings.map(({ reason, key }) => [reason, key]));
  };
  const [usual, cold] = [keys(2), keys(30)];
  expect([...usual.keys()]).toEqual(['opens', 'closes soon', 'closed']);
  expect([...cold.keys()]).toEqual(['closed']);
  expect(cold.get('closed')).toBe(usual.get('closed'));
});

describe('what each kind of window tells, and when', () => {
  test('a dwell: three minutes and one before it, when it opens, a minute before the end, when it is lost', () => {
    const { day, piece } = begun('bleachAndClear');
    day.done(piece, at('8:40')).next(piece, at('9:00'));
    expect(told(day.window(piece, 'b-on'))).toEqual([
      '9:07 soon',
      '9:09 soon',
      '9:10 opens, loud',
      '9:19 closes soon, loud',
      '9:20 late, loud',
    ]);
  });

  test('a stain section the same', () => {
    const { day, piece } = begun('stainInSections');
    day.next(piece, at('9:00'));
    expect(told(day.window(piece, 'wipe-off'))).toEqual([
      '9:02 soon',
      '9:04 soon',
      '9:05 opens, loud',
      '9:14 closes soon, loud',
      '9:15 late, loud',
    ]);
  });

  test('a coat: when it may be tried, half an hour before it must be scuffed, and then; never loud', () => {
    const { day, piece } = begun('twoCoats');
    day.firstStroke(piece, at('9:00')).done(piece, at('9:30'));
    expect(told(day.window(piece, 'recoat'))).toEqual([
      '11:30 opens',
      '32:30 closes soon',
      '33:00 closed',
    ]);
    expect(told(day.window(piece, 'dust-free'))).toEqual(['10:00 opens']);
    expect(told(day.window(piece, 'light-use'))).toEqual(['33:30 opens']);
  });

  test('a forbidden gap: before it, at it, and when it is over', () => {
    const { day, piece } = begun('aerosol');
    day.next(piece, at('9:00')).next(piece, at('9:04'));
    expect(told(day.window(piece, 'next-pass'))).toEqual([
      '9:09 opens',
      '9:50 closes soon',
      '10:00 keep off',
      '57:04 opens',
    ]);
  });

  test('a gap is told before it shuts, also where it costs nothing but the wait', () => {
    const { day, piece } = begun('aerosol');
    day.next(piece, at('9:00')).next(piece, at('9:04'));
    const window = day.window(piece, 'next-pass');
    const stretches = window.stretches.map((each) => ({ ...each, loss: 'costs nothing' as const }));
    expect(told({ ...window, stretches })).toEqual(told(window));
  });

  test('the longer a coat is open, the earlier its closing is told: 3, 10 and 30 minutes before', () => {
    const { day, piece } = begun('twoCoats');
    day.firstStroke(piece, at('9:00')).done(piece, at('9:30'));
    const window = day.window(piece, 'recoat');
    const warnedBefore = (ms: number): number => {
      const ends = at('11:30') + ms;
      const stretches = window.stretches.map((each) =>
        each.meaning === 'go' ? { ...each, ends } : each,
      );
      const warning = pingsOf({ ...window, stretches }).find(
        ({ reason }) => reason === 'closes soon',
      );
      return (ends - (warning?.at ?? 0)) / minute;
    };
    expect(warnedBefore(39 * minute)).toBe(3);
    expect(warnedBefore(40 * minute)).toBe(10);
    expect(warnedBefore(179 * minute)).toBe(10);
    expect(warnedBefore(180 * minute)).toBe(30);
  });

  test('nothing that was to be told until somebody tried it and found it not yet', () => {
    const { day, piece } = begun('strip');
    day.next(piece, at('9:00'));
    const scrape = day.window(piece, 'scrape');
    expect(told({ ...scrape, heldBackAt: at('9:12') }).slice(0, 2)).toEqual([
      '9:14 soon',
      '9:15 opens, loud',
    ]);
  });

  test('what stays wet for long warns in time to get there', () => {
    const { day, piece } = begun('strip');
    day.next(piece, at('9:00'));
    expect(told(day.window(piece, 'scrape'))).toEqual([
      '9:12 soon',
      '9:14 soon',
      '9:15 opens, loud',
      '9:29 closes soon, loud',
      '9:30 late, loud',
    ]);
    const scrape = day.window(piece, 'scrape');
    const long = { ...scrape, stretches: scrape.stretches.map(wetFor(45 * minute)) };
    expect(told(long).slice(-2)).toEqual(['9:50 closes soon, loud', '10:00 late, loud']);
  });

  test('glue: before it skins over, when it has, and when the clamps may come off', () => {
    const { day, piece } = begun('glueUp');
    day.next(piece, at('9:00'));
    expect(told(day.window(piece, 'assemble'))).toEqual([
      '9:02 closes soon, loud',
      '9:05 late, loud',
    ]);
    day.next(piece, at('9:03'));
    expect(told(day.window(piece, 'clamps-off'))).toEqual(['9:33 opens']);
  });

  test('a pot: half an hour before it gels, and when it has; nothing at its beginning', () => {
    const { day, piece } = begun('twoPart');
    day.next(piece, at('9:00'));
    expect(told(windowsOfPot(day.bench.pots[0]!, day.sense)[0]!)).toEqual([
      '12:30 closes soon, loud',
      '13:00 late, loud',
    ]);
  });

  test('an odd timer: once, when it has run', () => {
    const day = new Workday();
    day.does({ do: 'start timer', label: 'clamps', ms: 35 * minute, piece: null }, at('9:00'));
    expect(told(day.standings(at('9:01'))[0]!.window!)).toEqual(['9:35 opens']);
  });

  test('a surface that was never open tells only that it is lost', () => {
    const { day, piece } = begun('twoCoats');
    day.firstStroke(piece, at('9:00')).done(piece, at('31:30'));
    expect(told(day.window(piece, 'recoat'))).toEqual(['33:30 closed']);
  });
});

describe('what would fall before the beginning is dropped', () => {
  const dwellOf = (opens: number, slack = 5) => {
    const strokeOn = { ...first('first-stroke') };
    const rule = {
      ...bleachB,
      begins: strokeOn,
      stretches: [
        wait,
        go(after(strokeOn, grows(opens * minute))),
        spoils(after(strokeOn, shrinks((opens + slack) * minute)), 'start over'),
      ],
    };
    const day = new Workday();
    const quick = schedule(
      'quick',
      [step('dip', 'other', { product: 'dip', stamps: [{ event: 'first-stroke', says: 'on' }] })],
      [product('dip', 'reaction', [rule])],
    );
    const piece = day.adds('Sample board', quick, at('8:00'));
    return told(day.next(piece, at('9:00')).window(piece, 'b-on'));
  };

  test('a dwell of two minutes tells only the last one', () => {
    expect(dwellOf(2)).toEqual([
      '9:01 soon',
      '9:02 opens, loud',
      '9:06 closes soon, loud',
      '9:07 late, loud',
    ]);
  });

  test('a dwell of one minute tells neither', () => {
    expect(dwellOf(1)).toEqual(['9:01 opens, loud', '9:05 closes soon, loud', '9:06 late, loud']);
  });

  test('an open time of a minute is not said to close before it opens', () => {
    expect(dwellOf(2, 1)).toEqual(['9:01 soon', '9:02 opens, loud', '9:03 late, loud']);
  });

  test('a dwell of three minutes does not tell of three minutes at the stroke itself', () => {
    expect(dwellOf(3)[0]).toBe('9:02 soon');
  });
});

describe('the surface was tried', () => {
  const coated = () => {
    const { day, piece } = begun('twoCoats');
    return { day: day.firstStroke(piece, at('9:00')).done(piece, at('9:30')), piece };
  };

  test('"not yet" names the pings anew, and tells nothing that lies before it', () => {
    const { day, piece } = coated();
    const before = pingsOf(day.window(piece, 'recoat')).map(({ key }) => key);
    day.checks(piece, 'not yet', at('11:40'));
    const window = day.window(piece, 'recoat');
    expect(told(window)).toEqual(['12:10 opens', '32:30 closes soon', '33:00 closed']);
    for (const { key } of pingsOf(window)) expect(before).not.toContain(key);
  });

  test('"ready" does not tell the person who pressed it', () => {
    const { day, piece } = coated();
    day.checks(piece, 'ready', at('11:00'));
    expect(told(day.window(piece, 'recoat'))).toEqual(['32:30 closes soon', '33:00 closed']);
  });

  test('"trouble" changes no name', () => {
    const { day, piece } = coated();
    day.checks(piece, 'not yet', at('11:40'));
    const before = pingsOf(day.window(piece, 'recoat'));
    day.checks(piece, 'trouble', at('11:50'));
    expect(pingsOf(day.window(piece, 'recoat')).map(({ key }) => key)).toEqual(
      before.map(({ key }) => key),
    );
  });
});

test('every ping of a bench has a name of its own', () => {
  const day = new Workday({ hands: 2 });
  const keys: string[] = [];
  for (const plan of Object.values(schedules)) {
    const piece = day.adds(plan.name, plan, at('8:00'));
    for (const clock of ['9:00', '9:03', '9:06', '9:09']) {
      day.tries({ do: 'next stamp', piece, part: null }, at(clock));
    }
    keys.push(...day.windows(piece).flatMap((window) => pingsOf(window).map(({ key }) => key)));
  }
  expect(keys.length).toBeGreaterThan(15);
  expect(new Set(keys).size).toBe(keys.length);
});
