import { describe, expect, test } from 'vitest';
import {
  nextPingAt,
  pingsOfBench,
  sendingsDue,
  spoilsRunning,
  type BenchPing,
  type Sending,
} from '../../../src/tracker/bench/index.ts';
import { day, hour, minute, type Instant } from '../../../src/tracker/time/index.ts';
import type { WindowRule } from '../../../src/tracker/windows/index.ts';
import { at } from '../support/instants.ts';
import { labelSense } from '../support/sense.ts';
import { aerosolRecoat, scrape } from '../support/rules.ts';
import {
  bleachAndClear,
  glueUp,
  product,
  schedule,
  step,
  strip,
  twoCoats,
} from '../support/schedules.ts';
import { Workday } from '../support/workday.ts';

/** Sends what is due at an instant and remembers what was claimed, as whoever pings would. */
class Pinging {
  readonly day: Workday;
  readonly claimed = new Set<string>();

  constructor(day: Workday) {
    this.day = day;
  }

  due(clock: string): readonly Sending[] {
    return sendingsDue(this.day.bench, this.claimed, at(clock), this.day.sense);
  }

  /** `Oak chest opens` of every sending; several in one sending are joined by +. */
  sends(clock: string): readonly string[] {
    return this.due(clock).map((sending) => {
      for (const key of sending.settles) {
        expect(this.claimed.has(key)).toBe(false);
        this.claimed.add(key);
      }
      return sending.pings.map(words).join(' + ') + (sending.loud ? ' (loud)' : '');
    });
  }
}

const on = { event: 'first-stroke', says: 'on' } as const;

const words = (ping: BenchPing): string =>
  `${ping.piece?.name ?? 'timer'} ${ping.about === 'hold' ? 'hold' : ping.reason}`;

function bleaching(day: Workday, name: string, clock: string): string {
  const piece = day.adds(name, bleachAndClear, at('8:00'));
  day.done(piece, at('8:40')).next(piece, at(clock));
  return piece;
}

function coated(day: Workday, name: string, from: string, till: string): string {
  const piece = day.adds(name, twoCoats, at('8:00'));
  day.firstStroke(piece, at(from)).done(piece, at(till));
  return piece;
}

describe('pings go out at their instants', () => {
  test('each once, in their order', () => {
    const pinging = new Pinging(new Workday());
    bleaching(pinging.day, 'Chest', '9:00');
    const sent: string[] = [];
    for (let second = 0; second <= 30 * 60; second += 1) {
      const clock = `9:${String(Math.floor(second / 60))}:${second % 60}`;
      for (const text of pinging.sends(clock)) sent.push(`${clock} ${text}`);
    }
    expect(sent).toEqual([
      '9:7:0 Chest soon',
      '9:9:0 Chest soon',
      '9:10:0 Chest opens (loud)',
      '9:19:0 Chest closes soon (loud)',
      '9:20:0 Chest late (loud)',
    ]);
  });

  test('none is due before', () => {
    const pinging = new Pinging(new Workday());
    bleaching(pinging.day, 'Chest', '9:00');
    expect(pinging.due('9:06:59')).toEqual([]);
  });

  test('the next one is known beforehand', () => {
    const pinging = new Pinging(new Workday());
    bleaching(pinging.day, 'Chest', '9:00');
    const next = (clock: string) =>
      nextPingAt(pinging.day.bench, pinging.claimed, at(clock), pinging.day.sense);
    expect(next('9:00')).toBe(at('9:07'));
    expect(next('9:07')).toBe(at('9:09'));
    expect(next('9:20')).toBeNull();
  });

  test('a window that is done tells nothing more', () => {
    const pinging = new Pinging(new Workday());
    const chest = bleaching(pinging.day, 'Chest', '9:00');
    expect(pinging.sends('9:07')).toHaveLength(1);
    pinging.day.next(chest, at('9:08')).done(chest, at('9:08:30'));
    expect(pinging.due('9:30')).toEqual([]);
  });

  test('a hold silences none', () => {
    const pinging = new Pinging(new Workday());
    const chest = bleaching(pinging.day, 'Chest', '9:00');
    pinging.day.does(
      { do: 'place hold', piece: chest, reason: 'hinge', askAgain: null },
      at('9:01'),
    );
    expect(pinging.sends('9:07')).toEqual(['Chest soon']);
  });

  test('a piece that has left tells nothing', () => {
    const pinging = new Pinging(new Workday());
    const chest = bleaching(pinging.day, 'Chest', '9:00');
    pinging.day.does({ do: 'take off bench', piece: chest }, at('9:01'));
    expect(pinging.due('9:30')).toEqual([]);
  });
});

describe('never twice', () => {
  test('a claim holds after stamps were moved, and after a take back and bring back', () => {
    const pinging = new Pinging(new Workday());
    const chest = bleaching(pinging.day, 'Chest', '9:00');
    expect(pinging.sends('9:10')).toEqual(['Chest opens (loud)']);
    pinging.day.does({ do: 'move stamp', piece: chest, earlier: false }, at('9:10'));
    expect(pinging.due('9:11')).toEqual([]);
    pinging.day.takesBack(at('9:12')).does({ do: 'bring back' }, at('9:12'));
    expect(pinging.due('9:12')).toEqual([]);
  });

  test('a "not yet" asks again, once', () => {
    const pinging = new Pinging(new Workday());
    const table = coated(pinging.day, 'Table', '9:00', '9:30');
    expect(pinging.sends('11:30')).toEqual(['Table opens']);
    pinging.day.checks(table, 'not yet', at('11:35'));
    expect(pinging.due('11:36')).toEqual([]);
    expect(pinging.sends('12:05')).toEqual(['Table opens']);
    expect(pinging.due('12:06')).toEqual([]);
    pinging.day.checks(table, 'not yet', at('12:10')).checks(table, 'trouble', at('12:15'));
    expect(pinging.sends('12:40')).toEqual(['Table opens']);
  });

  test('a "ready" is not told to the person who found it', () => {
    const pinging = new Pinging(new Workday());
    const table = coated(pinging.day, 'Table', '9:00', '9:30');
    pinging.day.checks(table, 'ready', at('11:00'));
    expect(pinging.due('11:00')).toEqual([]);
    expect(pinging.due('11:30')).toEqual([]);
    expect(pinging.sends('32:30')).toEqual(['Table closes soon']);
  });
});

describe('quiet hours', () => {
  /** From 22:00 to 7:00. */
  const night = {
    ...labelSense,
    quietTill: (instant: Instant) => {
      const ofDay = (instant - at('0:00')) % day;
      if (ofDay >= 22 * hour) return instant - ofDay + 31 * hour;
      return ofDay < 7 * hour ? instant - ofDay + 7 * hour : null;
    },
  };
  const quietly = () => new Pinging(new Workday({ sense: night }));

  test('hold back what loses nothing till they end, then tell it as one and not as late', () => {
    const pinging = quietly();
    coated(pinging.day, 'Table', '20:00', '20:30');
    coated(pinging.day, 'Stool', '21:00', '21:30');
    expect(pinging.due('22:30')).toEqual([]);
    expect(pinging.due('30:59')).toEqual([]);
    expect(nextPingAt(pinging.day.bench, new Set(), at('22:10'), night)).toBe(at('31:00'));
    expect(pinging.due('31:00')).toMatchObject([{ lateBy: 0, loud: false }]);
    expect(pinging.sends('31:00').map((told) => told.split(' + ').toSorted())).toEqual([
      ['Stool opens', 'Table opens'],
    ]);
  });

  test('begin on their minute and end on it', () => {
    const pinging = quietly();
    coated(pinging.day, 'Table', '19:00', '19:59');
    coated(pinging.day, 'Stool', '19:00', '20:00');
    expect(pinging.sends('21:59')).toEqual(['Table opens']);
    expect(pinging.due('22:00')).toEqual([]);
    expect(pinging.sends('31:00')).toEqual(['Stool opens']);
  });

  test('hold back nothing that would be lost by the time somebody is there', () => {
    const pinging = quietly();
    coated(pinging.day, 'Table', '7:25', '20:30');
    coated(pinging.day, 'Stool', '7:35', '20:30');
    // The table closes at 7:25 of the next day, the stool later.
    expect(pinging.sends('22:30')).toEqual(['Table opens']);
    expect(pinging.sends('30:55')).toEqual(['Table closes soon']);
    expect(pinging.sends('31:05').join()).toContain('Stool');
  });

  test('tell before a coat closes at night, and that it has closed in the morning: more is not lost', () => {
    const pinging = quietly();
    coated(pinging.day, 'Table', '1:00', '1:30');
    expect(pinging.sends('7:00')).toEqual(['Table opens']);
    // It closes at 1:00 of the next day.
    expect(pinging.sends('24:30')).toEqual(['Table closes soon']);
    expect(pinging.due('25:00')).toEqual([]);
    expect(pinging.sends('31:00')).toEqual(['Table closed']);
  });

  test('hold back nothing that a gap shuts before somebody is there, though it costs only the wait', () => {
    const gap = aerosolRecoat.stretches.map((each) => ({
      ...each,
      loss: 'costs nothing' as const,
    }));
    const sprayed = schedule(
      'sprayed',
      [
        step('spray 1', 'coat, sprayed', { product: 'enamel', stamps: [on] }),
        step('spray 2', 'coat, sprayed', { product: 'enamel', stamps: [on], needs: ['recoat'] }),
      ],
      [product('enamel', 'oxidative', [{ ...aerosolRecoat, stretches: gap }])],
    );
    const pinging = quietly();
    const table = pinging.day.adds('Table', sprayed, at('8:00'));
    pinging.day.firstStroke(table, at('21:58')).done(table, at('22:00'));
    expect(pinging.sends('22:05')).toEqual(['Table opens']);
    expect(pinging.sends('22:48')).toEqual(['Table closes soon']);
    expect(pinging.due('22:58')).toEqual([]);
  });

  test('never hold back a dwell', () => {
    const sentBy = (pinging: Pinging) => {
      bleaching(pinging.day, 'Chest', '23:00');
      return Array.from({ length: 30 }, (_, index) => pinging.sends(`23:${index}`));
    };
    const sent = sentBy(quietly());
    expect(sent).toEqual(sentBy(new Pinging(new Workday())));
    expect(sent.flat().some((told) => told.endsWith('(loud)'))).toBe(true);
  });
});

describe('quiet hours that go on in the morning', () => {
  const lateRiser = {
    ...labelSense,
    quietTill: (instant: Instant) => {
      const ofDay = (instant - at('0:00')) % day;
      return ofDay < 10 * hour ? instant - ofDay + 10 * hour : null;
    },
  };

  test('hold back the question of a hold till they end', () => {
    const pinging = new Pinging(new Workday({ sense: lateRiser }));
    const table = pinging.day.adds('Table', twoCoats, at('11:00'));
    pinging.day.does(
      { do: 'place hold', piece: table, reason: 'hinge', askAgain: '2026-05-05' },
      at('11:30'),
    );
    expect(pinging.due('33:59')).toEqual([]);
    expect(pinging.sends('34:00')).toEqual(['Table hold']);
  });

  test('hold back no chemical, though nothing is lost by it: whoever put it on stands by', () => {
    const soak: WindowRule = { ...scrape, stretches: scrape.stretches.slice(0, 2) };
    const soaking = schedule(
      'soaking',
      [step('soak', 'strip', { product: 'soak', stamps: [on] }), step('sand', 'scuff')],
      [product('soak', 'reaction', [soak])],
    );
    const pinging = new Pinging(new Workday({ sense: lateRiser }));
    const table = pinging.day.adds('Table', soaking, at('8:00'));
    pinging.day.firstStroke(table, at('9:00'));
    expect(pinging.sends('9:12')).toEqual(['Table soon']);
    expect(pinging.sends('9:14')).toEqual(['Table soon']);
    expect(pinging.sends('9:15')).toEqual(['Table opens']);
  });
});

describe('what falls together goes out together', () => {
  test('within 45 seconds', () => {
    const pinging = new Pinging(new Workday());
    coated(pinging.day, 'Table', '9:00', '9:30');
    coated(pinging.day, 'Stool', '9:31', '9:30:45');
    expect(pinging.due('11:30')).toMatchObject([
      { pings: [{ at: at('11:30') }, { at: at('11:30:45') }], lateBy: 0 },
    ]);
    expect(pinging.sends('11:30')).toEqual(['Table opens + Stool opens']);
    expect(pinging.due('11:31')).toEqual([]);
  });

  test('not over 45 seconds', () => {
    const pinging = new Pinging(new Workday());
    coated(pinging.day, 'Table', '9:00', '9:30');
    coated(pinging.day, 'Stool', '9:31', '9:30:46');
    expect(pinging.sends('11:30')).toEqual(['Table opens']);
    expect(pinging.sends('11:30:46')).toEqual(['Stool opens']);
  });

  test("what is loud or a dwell's is never told before its time", () => {
    const pinging = new Pinging(new Workday({ hands: 3 }));
    coated(pinging.day, 'Table', '6:00', '7:10');
    bleaching(pinging.day, 'Chest', '9:00:30');
    expect(pinging.sends('9:10')).toEqual(['Chest soon + Table opens']);
    expect(pinging.sends('9:10:30')).toEqual(['Chest opens (loud)']);
  });

  test('a loud one takes along what is quiet and near', () => {
    const pinging = new Pinging(new Workday({ hands: 3 }));
    coated(pinging.day, 'Table', '6:00', '7:10:30');
    bleaching(pinging.day, 'Chest', '9:00');
    pinging.sends('9:09:30');
    expect(pinging.sends('9:10')).toEqual(['Chest opens + Table opens (loud)']);
    expect(pinging.due('9:10:30')).toEqual([]);
  });

  test('looked at late, what is far apart stays apart', () => {
    const pinging = new Pinging(new Workday());
    coated(pinging.day, 'Table', '9:00', '9:30');
    coated(pinging.day, 'Stool', '9:31', '9:31:30');
    expect(pinging.sends('11:31:40')).toEqual(['Table opens', 'Stool opens']);
  });

  test('nor is what is loud, whatever it is', () => {
    const pinging = new Pinging(new Workday({ hands: 3 }));
    coated(pinging.day, 'Table', '6:00', '7:31:40');
    const chair = pinging.day.adds('Chair', glueUp, at('8:00'));
    pinging.day.next(chair, at('9:30'));
    // Skins over at 9:35, which is told three minutes before.
    expect(pinging.sends('9:31:40')).toEqual(['Table opens']);
    expect(pinging.sends('9:32')).toEqual(['Chair closes soon (loud)']);
  });

  test('what was overtaken does not bring together what is far apart', () => {
    const pinging = new Pinging(new Workday({ hands: 3 }));
    bleaching(pinging.day, 'Chest', '9:00');
    bleaching(pinging.day, 'Desk', '9:00:10');
    // Chest opens at 9:10, 50 seconds after the last of Desk.
    expect(pinging.sends('9:10:05')).toEqual(['Desk soon', 'Chest opens (loud)']);
  });

  test('a later ping of one window does not hide what another tells between', () => {
    const pinging = new Pinging(new Workday({ hands: 3 }));
    bleaching(pinging.day, 'Chest', '9:00');
    bleaching(pinging.day, 'Desk', '9:00:50');
    pinging.sends('9:08:59');
    // Chest: soon 9:09, opens 9:10. Desk: soon 9:09:50.
    expect(pinging.sends('9:10:20')).toEqual(['Chest opens + Desk soon (loud)']);
    expect(pinging.due('9:10:20')).toEqual([]);
  });
});

describe('of several due pings of one window only the last is told', () => {
  test('and the others are settled with it', () => {
    const pinging = new Pinging(new Workday());
    bleaching(pinging.day, 'Chest', '9:00');
    const [sending] = pinging.due('9:10:30');
    expect(sending?.pings.map(words)).toEqual(['Chest opens']);
    expect(sending?.settles).toHaveLength(3);
    pinging.sends('9:10:30');
    expect(pinging.due('9:18')).toEqual([]);
  });
});

describe('after a sleep', () => {
  function asleep(): Pinging {
    const pinging = new Pinging(new Workday({ hands: 5 }));
    const { day } = pinging;
    coated(day, 'Table', '9:00', '9:30');
    const chair = day.adds('Chair', glueUp, at('8:00'));
    day.next(chair, at('9:30')).next(chair, at('9:32'));
    bleaching(day, 'Chest', '9:40');
    const door = day.adds('Door', strip, at('8:00'));
    day.next(door, at('9:45'));
    return pinging;
  }

  test('what was missed is one summary, worst first, and says how late it is', () => {
    const pinging = asleep();
    const sendings = pinging.due('13:00');
    expect(sendings).toHaveLength(1);
    // Chest dry since 10:00, door since 10:15; then what loses nothing, oldest first.
    expect(sendings[0]?.pings.map(words)).toEqual([
      'Chest late',
      'Door late',
      'Chair opens',
      'Table opens',
    ]);
    expect(sendings[0]).toMatchObject({ loud: true, lateBy: at('13:00') - at('10:00') });
    pinging.sends('13:00');
    expect(pinging.due('13:00')).toEqual([]);
  });

  test('what falls due at the waking is told beside the summary', () => {
    const pinging = asleep();
    const stool = coated(pinging.day, 'Stool', '9:50', '10:59');
    expect(pinging.day.piece(stool).number).toBe(5);
    expect(pinging.sends('13:00')).toEqual([
      'Chest late + Door late + Chair opens + Table opens (loud)',
      'Stool opens',
    ]);
  });

  test('two minutes late is no sleep', () => {
    const pinging = new Pinging(new Workday());
    coated(pinging.day, 'Table', '9:00', '9:30');
    expect(pinging.due('11:32')[0]?.lateBy).toBe(2 * minute);
    expect(pinging.sends('11:32')).toEqual(['Table opens']);
  });
});

describe('the question of a hold', () => {
  test('comes at nine on its day, once', () => {
    const pinging = new Pinging(new Workday());
    const table = pinging.day.adds('Table', twoCoats, at('8:00'));
    pinging.day.does(
      { do: 'place hold', piece: table, reason: 'hinge', askAgain: '2026-05-05' },
      at('10:00'),
    );
    expect(pinging.due('32:59')).toEqual([]);
    expect(pinging.sends('33:00')).toEqual(['Table hold']);
    expect(pinging.due('34:00')).toEqual([]);
  });

  test('asked for today after nine it comes when the hold was placed', () => {
    const pinging = new Pinging(new Workday());
    const table = pinging.day.adds('Table', twoCoats, at('8:00'));
    pinging.day.does(
      { do: 'place hold', piece: table, reason: 'hinge', askAgain: '2026-05-04' },
      at('10:00'),
    );
    expect(
      pingsOfBench(pinging.day.bench, at('10:00'), pinging.day.sense).map((ping) => ping.at),
    ).toEqual([at('10:00')]);
  });

  test('a hold without a day asks nothing, and a lifted one no more', () => {
    const pinging = new Pinging(new Workday());
    const table = pinging.day.adds('Table', twoCoats, at('8:00'));
    const hold = { do: 'place hold', piece: table, reason: 'hinge' } as const;
    pinging.day.does({ ...hold, askAgain: null }, at('10:00'));
    expect(pinging.due('40:00')).toEqual([]);
    pinging.day
      .does({ ...hold, askAgain: '2026-05-05' }, at('10:01'))
      .does({ do: 'lift hold', piece: table }, at('10:02'));
    expect(pinging.due('40:00')).toEqual([]);
  });
});

describe('what can still spoil keeps the machine awake', () => {
  const running = (day: Workday, clock: string) =>
    spoilsRunning(day.bench, at(clock), day.sense).map(({ rule }) => rule.id);

  test('from its beginning until a while after it is lost', () => {
    const day = new Workday();
    bleaching(day, 'Chest', '9:00');
    expect(running(day, '9:00')).toEqual(['b-on']);
    expect(running(day, '9:29')).toEqual(['b-on']);
    expect(running(day, '9:30')).toEqual([]);
  });

  test('a coat does not, nor a dwell that is done', () => {
    const day = new Workday();
    coated(day, 'Table', '9:00', '9:30');
    const chest = bleaching(day, 'Chest', '9:40');
    day.next(chest, at('9:52'));
    expect(running(day, '9:53')).toEqual([]);
  });
});
