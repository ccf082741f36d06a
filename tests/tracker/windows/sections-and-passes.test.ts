import { describe, expect, test } from 'vitest';
import { stateAt, stretchAt, type WindowRule } from '../../../src/tracker/windows/index.ts';
import { hour } from '../../../src/tracker/time/index.ts';
import { at } from '../support/instants.ts';
import { after, aerosolRecoat, go, grows, last, nextPass, wait } from '../support/rules.ts';
import { aerosol, product, schedule, stainInSections, step } from '../support/schedules.ts';
import { expectStates } from '../support/walk.ts';
import { Workday } from '../support/workday.ts';

describe('stain wiped off in sections', () => {
  function staining(): { readonly day: Workday; readonly desk: string } {
    const day = new Workday();
    const desk = day.adds('Writing desk', stainInSections, at('8:00'));
    return { day: day.next(desk, at('9:00')), desk };
  }

  test('each section has a window of its own', () => {
    const { day, desk } = staining();
    day.next(desk, at('9:06')).next(desk, at('9:07'));
    expectStates(day.window(desk, 'wipe-off', 0), { '9:05': 'closing', '9:06': 'done' });
    expectStates(day.window(desk, 'wipe-off', 1), {
      '9:07': 'before',
      '9:12': 'closing',
      '9:22': 'late',
    });
    expect(day.windows(desk, 'wipe-off').map(({ subject }) => subject.section)).toEqual([1, 2]);
  });

  test('the next section takes the one before off, if that was not told', () => {
    const { day, desk } = staining();
    day.does({ do: 'next section', piece: desk, part: null }, at('9:08'));
    expectStates(day.window(desk, 'wipe-off', 0), { '9:07': 'closing', '9:08': 'done' });
    expect(day.piece(desk).stamps.map(({ event, section }) => `${event} ${section}`)).toEqual([
      'section-on 1',
      'section-off 1',
      'section-on 2',
    ]);
  });

  test('finishing the step takes the last section off, and only that', () => {
    const { day, desk } = staining();
    day.next(desk, at('9:06')).next(desk, at('9:07')).done(desk, at('9:14'));
    expectStates(day.window(desk, 'wipe-off', 0), { '9:06': 'done' });
    expectStates(day.window(desk, 'wipe-off', 1), { '9:13': 'closing', '9:14': 'done' });
  });

  test('the drying of the whole counts from the finish', () => {
    const { day, desk } = staining();
    day.next(desk, at('9:06')).done(desk, at('9:14'));
    expectStates(day.window(desk, 'recoat'), { '21:13': 'before', '21:14': 'open' });
  });

  test('the section that is lost first leads', () => {
    const { day, desk } = staining();
    day.next(desk, at('9:06')).next(desk, at('9:07'));
    expect(day.standing(desk, at('9:10'))).toMatchObject({ rank: 'spoils', orderAt: at('9:22') });
    expect(day.standing(desk, at('9:10')).window?.subject.section).toBe(2);
  });
});

describe('aerosol passes with a forbidden gap', () => {
  function spraying(): { readonly day: Workday; readonly stool: string } {
    const day = new Workday();
    const stool = day.adds('Beech stool', aerosol, at('8:00'));
    return { day: day.next(stool, at('9:00')).next(stool, at('9:04')), stool };
  }

  test('within the hour of the first stroke or two days after the last, not between', () => {
    const { day, stool } = spraying();
    const window = day.window(stool, 'next-pass');
    expectStates(window, {
      '9:04': 'before',
      '9:08': 'before',
      '9:09': 'closing',
      '9:59': 'closing',
      '10:00': 'barred',
      '57:03': 'barred',
      '57:04': 'open',
      '500:00': 'open',
    });
    expect(stretchAt(window, at('20:00'))).toMatchObject({
      meaning: 'keep off',
      ends: at('57:04'),
    });
  });

  test('the next pass closes it and begins its own', () => {
    const { day, stool } = spraying();
    day.next(stool, at('9:15')).next(stool, at('9:18'));
    expectStates(day.window(stool, 'next-pass', 0), { '9:14': 'closing', '9:15': 'done' });
    expectStates(day.window(stool, 'next-pass', 1), {
      '9:22': 'before',
      '9:23': 'closing',
      '10:15': 'barred',
    });
  });

  test('after the last pass there is none to wait for, but a coat', () => {
    const { day, stool } = spraying();
    day
      .next(stool, at('9:15'))
      .next(stool, at('9:18'))
      .next(stool, at('9:30'))
      .done(stool, at('9:33'));
    expect(day.windows(stool, 'next-pass')).toHaveLength(2);
    const live = day.windows(stool).filter((window) => stateAt(window, at('9:40')) !== 'done');
    expect(live.map(({ rule, subject }) => [rule.id, subject.pass])).toEqual([['recoat', 3]]);
    expectStates(live[0]!, {
      '9:37': 'before',
      '9:38': 'closing',
      '10:30': 'barred',
      '57:33': 'open',
    });
  });

  test('a finish is the last stroke of the pass it ends, and of no other', () => {
    const { day, stool } = spraying();
    const quick = day.adds('Chair', aerosol, at('8:00'));
    day.firstStroke(quick, at('9:30')).firstStroke(quick, at('9:40')).done(quick, at('9:50'));
    const meanings = (index: number) =>
      day.window(quick, 'recoat', index).stretches.map(({ meaning }) => meaning);
    expect(meanings(0)).toEqual(['wait']);
    expect(meanings(1)).toEqual(['wait', 'go', 'keep off', 'go']);
    expect(day.windows(stool, 'recoat')).toHaveLength(1);
  });

  test('a gap that the label puts no work on costs the wait all the same', () => {
    const [waiting, open, gap, again] = nextPass.stretches;
    const free: WindowRule = {
      ...nextPass,
      stretches: [waiting!, open!, { ...gap!, loss: 'costs nothing' }, again!],
    };
    const plan = schedule(
      'free-gap',
      [
        step('spray', 'coat, sprayed', {
          product: 'enamel',
          passes: 2,
          stamps: [{ event: 'first-stroke', says: 'first stroke on' }],
        }),
      ],
      [product('enamel', 'oxidative', [free])],
    );
    const day = new Workday();
    const stool = day.adds('Beech stool', plan, at('8:00'));
    day.next(stool, at('9:00')).next(stool, at('9:04')).does({ do: 'put down' }, at('9:05'));
    expect(day.standing(stool, at('9:20')).rank).toBe('costs work');
  });

  test('passes that are left out have no window left behind', () => {
    const { day, stool } = spraying();
    day.done(stool, at('9:20'));
    expectStates(day.window(stool, 'next-pass'), { '9:19': 'closing', '9:20': 'done' });
    expect(day.piece(stool).finishes[0]?.pass).toBe(1);
    expectStates(day.window(stool, 'recoat'), {
      '9:20': 'closing',
      '10:00': 'barred',
      '57:04': 'open',
    });
  });

  test('what counts from the last stroke of all counts from the finish', () => {
    const dry = {
      ...aerosolRecoat,
      id: 'dry',
      scope: 'step',
      stretches: [wait, go(after(last('last-stroke'), grows(hour)))],
    } as const;
    const plan = schedule(
      'two-passes',
      [
        step('spray', 'coat, sprayed', {
          product: 'enamel',
          passes: 2,
          stamps: [{ event: 'first-stroke', says: 'first stroke on' }],
        }),
      ],
      [product('enamel', 'oxidative', [dry])],
    );
    const day = new Workday();
    const stool = day.adds('Beech stool', plan, at('8:00'));
    day
      .next(stool, at('9:00'))
      .next(stool, at('9:04'))
      .next(stool, at('9:15'))
      .done(stool, at('9:20'));
    expectStates(day.window(stool, 'dry'), {
      '10:04': 'before',
      '10:19': 'before',
      '10:20': 'open',
    });
  });

  test('a pass that takes the whole hour leaves no open time before the gap', () => {
    const day = new Workday();
    const stool = day.adds('Beech stool', aerosol, at('8:00'));
    day.next(stool, at('9:00')).next(stool, at('10:10'));
    const window = day.window(stool, 'next-pass');
    expect(window.stretches.map(({ meaning }) => meaning)).toEqual(['wait', 'keep off', 'go']);
    expectStates(window, { '10:14': 'before', '10:15': 'barred', '58:10': 'open' });
  });

  test('while barred the piece stands at the foot, before a gap it is worth hurrying for', () => {
    const { day, stool } = spraying();
    day.does({ do: 'put down' }, at('9:05'));
    expect(day.standing(stool, at('9:30'))).toMatchObject({
      rank: 'costs work',
      orderAt: at('10:00'),
    });
    expect(day.standing(stool, at('12:00'))).toMatchObject({
      rank: 'keep off',
      orderAt: at('57:04'),
    });
  });
});
