import { describe, expect, it } from 'vitest';
import { benchStart } from '../../../src/views/bench/bench-state.ts';
import { benchScreen } from '../../../src/views/bench/index.ts';
import { leaveScreen } from '../../../src/views/leave/index.ts';
import type { LeaveState } from '../../../src/views/screens.ts';
import {
  afternoon,
  at,
  Facts,
  key,
  portOf,
  rowsOf,
  sizes,
  snapshotOf,
  step,
  tense,
  viewOf,
  withSettings,
} from '../support/bench-of.ts';

const draw = (facts: Facts, when: string, size = sizes[0]) =>
  leaveScreen.draw({ is: 'leave' }, viewOf(snapshotOf(facts.bench()), at(when), size));

describe('leaving with a window running', () => {
  it.each(sizes)('fits %i x %i', (columns, rows) => {
    const drawn = rowsOf(draw(afternoon(), '24 14:29', [columns, rows]));
    expect(drawn).toHaveLength(rows);
    for (const row of drawn) expect(row.length).toBeLessThanOrEqual(columns);
    expect(drawn.join(' ')).toContain('Esc: stay');
  });

  it('says what will not ping, worst first', () => {
    const frame = draw(tense(), '12-03 16:35');
    expect(rowsOf(frame).slice(0, 8)).toEqual([
      'leave   Thu 3 Dec 16:35',
      '',
      'none of these pings while recoat is closed',
      ' 2 Wall shelf      16:42        B on ends, spoils: rinse, dry, start over',
      ' 3 Book rack       23:00        try it ends: scuff 320 first',
      ' 2 Wall shelf      16:40        B on; open to 16:42',
      'spoils  2 Wall shelf: B on by 16:42. See to it before you go.',
      'Windows go on by the clock; what was missed is told when it opens.',
    ]);
    expect(frame.lines[3]?.[1]?.role).toBe('spoils');
  });

  it('says what is in hand', () => {
    expect(rowsOf(draw(afternoon(), '24 14:29')).join('\n')).toContain(
      'In hand since 14:02: 1 Oak settle. Its minutes run on till it is put down.',
    );
  });
});

describe('keys on the leave screen', () => {
  const openedAt = at('24 14:29');
  const press = (name: string, after: number, keys = {}) => {
    const snapshot = snapshotOf(afternoon().bench(), { settings: withSettings({ keys }) });
    const state: LeaveState = { is: 'leave', openedAt };
    const view = viewOf(snapshot, openedAt + after, [40, 20]);
    return leaveScreen.press(
      state,
      key(name),
      view,
      portOf(() => snapshot),
    );
  };

  it('leave, or stay', () => {
    expect(press('enter', 300)).toEqual({ leave: true });
    expect(press('q', 1500)).toEqual({ leave: true });
    expect(press('escape', 300)).toEqual({ back: true });
  });

  it('take no key for an answer that is only held down', () => {
    expect(press('q', 500).leave).toBeUndefined();
    expect(press('q', 999).leave).toBeUndefined();
    // The clock was set back since: that is no key held down.
    expect(press('q', -60_000)).toEqual({ leave: true });
  });

  it("hear a person's own key", () => {
    expect(press('l', 1500, { leave: ['l'] })).toEqual({ leave: true });
    expect(press('q', 1500, { leave: ['l'] }).leave).toBeUndefined();
  });

  it('move through a long list', () => {
    expect(press('down', 300).state).toEqual({ is: 'leave', openedAt, from: 1 });
  });
});

describe('the question whether a keeper shall ping', () => {
  const asked = (keeper: 'there' | 'none' | 'cannot', choice: 'ask' | 'yes' | 'no' = 'ask') => {
    const snapshot = {
      ...snapshotOf(afternoon().bench(), { settings: { ...withSettings({}), keeper: choice } }),
      keeper,
    };
    const view = viewOf(snapshot, at('24 14:29'));
    const chosen: string[] = [];
    const port = {
      ...portOf(() => snapshot),
      choose: (name: string, text: string) => {
        chosen.push(`${name} ${text}`);
        return { ok: true as const, says: 'set', piece: null };
      },
    };
    const state: LeaveState = { is: 'leave', openedAt: at('24 14:00') };
    return {
      rows: rowsOf(leaveScreen.draw(state, view)).join('\n'),
      press: (name: string) => leaveScreen.press(state, key(name), view, port),
      chosen,
      bench: benchScreen.press(benchStart(view.now - 5000), key('q'), view, port),
    };
  };

  it('is asked where one can be, answered by one key, and remembered', () => {
    const yes = asked('none');
    expect(yes.rows).toContain('Shall a keeper go on pinging');
    expect(yes.press('y')).toEqual({ leave: true });
    expect(yes.chosen).toEqual(['keeper yes']);
    const no = asked('none');
    expect(no.press('n')).toEqual({ leave: true });
    expect(no.chosen).toEqual(['keeper no']);
  });

  it('is not asked again, nor where none can be', () => {
    for (const each of [asked('none', 'no'), asked('none', 'yes'), asked('cannot')]) {
      expect(each.rows).not.toContain('Shall a keeper');
      each.press('y');
      expect(each.chosen).toEqual([]);
    }
  });

  it('says who pings while recoat is closed', () => {
    expect(asked('none', 'yes').rows).toContain('the keeper pings these');
    // Started by hand or by a supervisor.
    expect(asked('there').rows).toContain('the keeper pings these');
    expect(asked('cannot', 'yes').rows).toContain('none of these pings');
    expect(asked('none', 'no').rows).toContain('none of these pings');
  });
});

describe('leaving from the bench', () => {
  const leave = (facts: Facts, when = '24 14:29') => {
    const snapshot = snapshotOf(facts.bench());
    const now = at(when);
    return benchScreen.press(
      benchStart(now - 5000),
      key('q'),
      viewOf(snapshot, now),
      portOf(() => snapshot),
    );
  };

  it('asks while a window is to open or to close', () => {
    expect(leave(afternoon()).open).toEqual({ is: 'leave', openedAt: at('24 14:29') });
    expect(leave(tense(), '12-03 16:35').open?.is).toBe('leave');
  });

  it('asks while minutes are running', () => {
    const facts = new Facts().piece('24 09:00', 1, 'Oak settle', [step('sand', 'sand')]);
    expect(leave(facts).leave).toBe(true);
    expect(leave(facts.pickUp('24 14:00', 1, 'sand')).open?.is).toBe('leave');
  });

  it('is at once where a keeper pings and no minutes run', () => {
    const leaving = (facts: Facts) => {
      const snapshot = {
        ...snapshotOf(facts.bench(), { settings: { ...withSettings({}), keeper: 'yes' as const } }),
        keeper: 'there' as const,
      };
      return benchScreen.press(
        benchStart(at('12-03 16:34')),
        key('q'),
        viewOf(snapshot, at('12-03 16:35')),
        portOf(() => snapshot),
      );
    };
    const timer = new Facts().tell('12-03 16:00', 'timer-started', {
      timer: 't',
      piece: null,
      label: 'soak',
      ms: 7_200_000,
    });
    expect(leaving(timer).leave).toBe(true);
    expect(leaving(afternoon()).open?.is).toBe('leave');
  });

  it('is at once where nothing runs', () => {
    expect(leave(new Facts())).toMatchObject({ leave: true });
    // Only a window that stands open and loses nothing is left.
    const open = new Facts().tell('24 09:00', 'timer-started', {
      timer: 't',
      piece: null,
      label: 'soak',
      ms: 60_000,
    });
    expect(leave(open).leave).toBe(true);
  });
});
