import { describe, expect, it } from 'vitest';
import { hoursOfPiece } from '../../../src/tracker/estimate/index.ts';
import { minute } from '../../../src/tracker/time/index.ts';
import { inventShop, monday, scheduleOf, step } from './invented-shop.ts';

const at = (minutes: number): number => monday + minutes * minute;

const strip = step('strip', {
  stepClass: 'strip',
  minutes: { typical: 90, low: 50, high: 200 },
  driver: 'area',
  setupMinutes: 25,
  stamps: [{ event: 'first-stroke', says: 'stripper on' }],
});
const sand = (grit: number) =>
  step(`sand-${grit}`, {
    stepClass: grit === 100 ? 'sand bare, first grit' : 'sand bare, next grit',
    minutes: { typical: 45, low: 25, high: 90 },
    driver: 'area',
    setupMinutes: 15,
  });
const look = step('look', { stepClass: 'look over', minutes: { typical: 20, low: 10, high: 40 } });

describe('hours of one piece', () => {
  it('holds what a step took against what was expected when it was done', () => {
    const shop = inventShop();
    const stool = shop.add('Beech stool', scheduleOf([look, sand(100)]));
    shop.work(stool, 0, 18);
    // The size comes later; it must not change what was expected before.
    shop.act({ do: 'describe piece', piece: stool, changes: { areaM2: 0.5 } }, at(20));
    const hours = hoursOfPiece(shop.bench(), shop.piece(stool), at(30));
    const [first, second] = hours.steps;
    expect(first).toMatchObject({
      state: 'done',
      minutes: 18,
      verdict: 'inside',
      expected: { minutes: 20, low: 10, high: 40, chance: 0.8 },
    });
    expect(second).toMatchObject({ state: 'to do', minutes: null, verdict: null });
    // 45 min x (0.5 / 1.9) ^ 0.85
    expect(second?.expected.minutes).toBeCloseTo(14.47, 1);
    expect(hours.toGo).toEqual(second?.expected);
    expect(hours.recorded).toBe(18);
  });

  it('tells setup and cleanup apart by the first stroke and the put-down', () => {
    const shop = inventShop();
    const stool = shop.add('Beech stool', scheduleOf([strip]));
    shop.act({ do: 'pick up', targets: [{ piece: stool, part: null }] }, at(0));
    shop.act({ do: 'first stroke', piece: stool, part: null }, at(12));
    shop.act({ do: 'done', piece: stool, part: null }, at(80));
    shop.act({ do: 'put down', piece: stool }, at(95));
    const hours = hoursOfPiece(shop.bench(), shop.piece(stool), at(200));
    expect(hours.steps[0]).toMatchObject({ minutes: 68, setup: 27, about: false });
    expect(hours.setup).toEqual({ minutes: 27, expected: 25, about: false });
    expect(hours.recorded).toBe(95);
  });

  it("takes the schedule's share where no stroke was told, half for each end, and says so", () => {
    const shop = inventShop();
    const stool = shop.add('Beech stool', scheduleOf([sand(100)]));
    shop.act({ do: 'pick up', targets: [{ piece: stool, part: null }] }, at(0));
    shop.act({ do: 'done', piece: stool, part: null }, at(60));
    shop.act({ do: 'put down', piece: stool }, at(68));
    const hours = hoursOfPiece(shop.bench(), shop.piece(stool), at(200));
    // 15 of 15 + 45 min are a quarter, of 68 min more than the 15; half of these before the work, and 8 min between done
    // and put down.
    expect(hours.steps[0]?.setup).toBeCloseTo(15 / 2 + 8, 9);
    expect(hours.steps[0]?.about).toBe(true);
    expect(hours.setup.about).toBe(true);
  });

  it('takes no more setup of a session than the schedule has, however long or often the step was worked', () => {
    const shop = inventShop();
    const stool = shop.add('Beech stool', scheduleOf([sand(100)]));
    for (let session = 0; session < 8; session += 1) {
      shop.act({ do: 'pick up', targets: [{ piece: stool, part: null }] }, at(session * 100));
      shop.act({ do: 'put down', piece: stool }, at(session * 100 + 80));
    }
    // Half of 15 min before the work and half after it, each time, as no stamp tells either.
    const [sanding] = hoursOfPiece(shop.bench(), shop.piece(stool), at(900)).steps;
    expect(sanding).toMatchObject({ sessions: 8, setup: 8 * 15, about: true });
  });

  it('takes no setup for an end that is still to come, and says of none that it was about so much', () => {
    const shop = inventShop();
    const stool = shop.add('Beech stool', scheduleOf([sand(100), look]));
    shop.act({ do: 'pick up', targets: [{ piece: stool, part: null }] }, at(0));
    const running = hoursOfPiece(shop.bench(), shop.piece(stool), at(40));
    // A quarter of the 40 min is setup, and half of that lies before the work.
    expect(running.setup).toMatchObject({ minutes: 5, about: true });
    shop.act({ do: 'pick up', targets: [{ piece: stool, part: null, step: 'look' }] }, at(40));
    shop.act({ do: 'put down', piece: stool }, at(60));
    const looked = hoursOfPiece(shop.bench(), shop.piece(stool), at(90)).steps[1];
    expect(looked).toMatchObject({ minutes: 20, setup: 0, about: false });
  });

  it('counts no session that was taken away', () => {
    const shop = inventShop();
    const stool = shop.add('Beech stool', scheduleOf([look]));
    shop.work(stool, 0, 18);
    const [session] = shop.bench().sessions;
    shop.act({ do: 'correct session', session: session?.id ?? '', dropped: true }, at(30));
    const hours = hoursOfPiece(shop.bench(), shop.piece(stool), at(40));
    expect(hours).toMatchObject({ sessions: 0, recorded: 0, steps: [{ sessions: 0, setups: 0 }] });
  });

  it('still shows the minutes of a step that was skipped after all', () => {
    const shop = inventShop();
    const stool = shop.add('Beech stool', scheduleOf([look, sand(100)]));
    shop.act({ do: 'pick up', targets: [{ piece: stool, part: null }] }, at(0));
    shop.act({ do: 'put down', piece: stool }, at(7));
    for (const id of ['look', 'sand-100'])
      shop.act({ do: 'skip step', piece: stool, step: id, skipped: true }, at(8));
    const { steps } = hoursOfPiece(shop.bench(), shop.piece(stool), at(9));
    expect(steps).toMatchObject([{ step: { id: 'look' }, state: 'skipped', minutes: 7 }]);
  });

  it('holds the steps of a class that are done against what was expected of these', () => {
    const shop = inventShop();
    const again = { ...look, id: 'look-again' };
    const stool = shop.add('Beech stool', scheduleOf([look, again]));
    shop.work(stool, 0, 41);
    const [ofLooks] = hoursOfPiece(shop.bench(), shop.piece(stool), at(60)).classes;
    expect(ofLooks).toMatchObject({ done: 1, minutes: 41, verdict: 'over' });
  });

  it('shares setup out to each session of a step', () => {
    const shop = inventShop();
    const stool = shop.add('Beech stool', scheduleOf([sand(100)]));
    shop.act({ do: 'pick up', targets: [{ piece: stool, part: null }] }, at(0));
    shop.act({ do: 'put down', piece: stool }, at(30));
    shop.act({ do: 'pick up', targets: [{ piece: stool, part: null }] }, at(60));
    shop.act({ do: 'put down', piece: stool }, at(90));
    const hours = hoursOfPiece(shop.bench(), shop.piece(stool), at(200));
    expect(hours.steps[0]?.sessions).toBe(2);
    expect(hours.setup.expected).toBe(30);
    // Two setups of 15 beside 45 min of work: two fifths of the 60 min.
    expect(hours.setup.minutes).toBeCloseTo(24, 9);
    expect(hours.begun).toBeCloseTo(36, 9);
  });

  it('accounts for every minute recorded', () => {
    const shop = inventShop();
    const stool = shop.add('Beech stool', scheduleOf([look, strip, sand(100)]));
    shop.work(stool, 0, 18);
    shop.work(stool, 20, 110);
    shop.act({ do: 'pick up', targets: [{ piece: stool, part: null }] }, at(120));
    shop.act({ do: 'put down', piece: stool }, at(141));
    shop.act({ do: 'pick up', targets: [{ piece: stool, part: null, step: null }] }, at(150));
    const now = at(157);
    const hours = hoursOfPiece(shop.bench(), shop.piece(stool), now);
    const parts = (hours.done?.minutes ?? 0) + hours.begun + hours.setup.minutes + hours.other;
    expect(hours.recorded).toBe(18 + 90 + 21 + 7);
    expect(parts).toBeCloseTo(hours.recorded, 9);
    expect(hours.other).toBeCloseTo(7, 9);
    expect(hours.sessions).toBe(4);
  });

  it('says over and under by whole minutes, as they are told', () => {
    const shop = inventShop();
    const steps = ['a', 'b', 'c', 'd'].map((id) => step(id));
    const stool = shop.add('Beech stool', scheduleOf(steps));
    shop.work(stool, 0, 50.4);
    shop.work(stool, 60, 110.6);
    shop.work(stool, 120, 139.4);
    shop.work(stool, 150, 169.6);
    const { steps: told } = hoursOfPiece(shop.bench(), shop.piece(stool), at(300));
    expect(told.map(({ verdict }) => verdict)).toEqual(['inside', 'over', 'under', 'inside']);
  });

  it('folds steps by class: what is done against the estimate of what is done', () => {
    const shop = inventShop();
    const coats = [1, 2, 3].map((coat) =>
      step(`coat-${coat}`, {
        stepClass: 'coat, brushed',
        minutes: { typical: 30, low: 20, high: 50 },
      }),
    );
    const stool = shop.add('Beech stool', scheduleOf(coats));
    shop.work(stool, 0, 33);
    shop.work(stool, 40, 80);
    const { classes, done } = hoursOfPiece(shop.bench(), shop.piece(stool), at(300));
    expect(classes).toHaveLength(1);
    const [coat] = classes;
    expect(coat).toMatchObject({ stepClass: 'coat, brushed', done: 2, minutes: 73 });
    // Two steps of 20 to 50 don't make 40 to 100: that both are slow is unlikelier than that one is.
    expect(coat?.expected.low).toBeGreaterThan(42);
    expect(coat?.expected.high).toBeLessThan(98);
    expect(coat?.expected).toEqual(done?.expected);
  });

  it('leaves out of the comparison what was done without picking up', () => {
    const shop = inventShop();
    const stool = shop.add('Beech stool', scheduleOf([look, sand(100)]));
    shop.act({ do: 'done', piece: stool, part: null }, at(5));
    const hours = hoursOfPiece(shop.bench(), shop.piece(stool), at(10));
    expect(hours.steps[0]).toMatchObject({ state: 'done', minutes: null, verdict: null });
    expect(hours.done).toBeNull();
  });

  it('counts the expectation of a step once, however many parts were finished', () => {
    const shop = inventShop();
    const stool = shop.add('Beech stool', scheduleOf([look]));
    shop.act({ do: 'name parts', piece: stool, names: ['case', 'doors'] }, at(0));
    const parts = shop.piece(stool).parts.map(({ id }) => id);
    for (const [index, part] of parts.entries()) {
      shop.act({ do: 'pick up', targets: [{ piece: stool, part }] }, at(index * 30));
      shop.act({ do: 'done', piece: stool, part }, at(index * 30 + 10));
      shop.act({ do: 'put down', piece: stool }, at(index * 30 + 10));
      const [first] = hoursOfPiece(shop.bench(), shop.piece(stool), at(200)).steps;
      expect(first?.state).toBe(index === 0 ? 'begun' : 'done');
    }
    const hours = hoursOfPiece(shop.bench(), shop.piece(stool), at(200));
    expect(hours.done).toMatchObject({ minutes: 20, expected: { minutes: 20, low: 10, high: 40 } });
  });

  it('gives what is still to do, less what was spent on a begun step, but no more than its estimate', () => {
    const shop = inventShop();
    const stool = shop.add('Beech stool', scheduleOf([step('a'), step('b'), step('c')]));
    shop.act({ do: 'skip step', piece: stool, step: 'c', skipped: true }, at(0));
    const whole = hoursOfPiece(shop.bench(), shop.piece(stool), at(0)).toGo;
    shop.act({ do: 'pick up', targets: [{ piece: stool, part: null }] }, at(0));
    shop.act({ do: 'put down', piece: stool }, at(20));
    const later = hoursOfPiece(shop.bench(), shop.piece(stool), at(30)).toGo;
    expect(later?.minutes).toBeCloseTo((whole?.minutes ?? 0) - 20, 9);
    shop.act({ do: 'pick up', targets: [{ piece: stool, part: null }] }, at(40));
    shop.act({ do: 'put down', piece: stool }, at(140));
    const last = hoursOfPiece(shop.bench(), shop.piece(stool), at(150)).toGo;
    expect(last?.minutes).toBeCloseTo((whole?.minutes ?? 0) - 30, 9);
  });

  it('drops and moves minutes with a corrected session, and takes them back', () => {
    const shop = inventShop();
    const schedule = scheduleOf([look]);
    const stool = shop.add('Beech stool', schedule);
    const rack = shop.add('Book rack', schedule);
    shop.work(stool, 0, 18);
    const [session] = shop.bench().sessions;
    if (session === undefined) throw new Error('there is a session');
    const minutesOf = (piece: string) =>
      hoursOfPiece(shop.bench(), shop.piece(piece), at(100)).recorded;
    const targets = [{ piece: rack, part: null, step: 'look' }];
    shop.act({ do: 'correct session', session: session.id, targets }, at(60));
    expect([minutesOf(stool), minutesOf(rack)]).toEqual([0, 18]);
    shop.act({ do: 'correct session', session: session.id, end: at(10) }, at(61));
    expect([minutesOf(stool), minutesOf(rack)]).toEqual([0, 10]);
    shop.act({ do: 'correct session', session: session.id, dropped: true }, at(62));
    expect([minutesOf(stool), minutesOf(rack)]).toEqual([0, 0]);
    for (let press = 0; press < 3; press += 1) shop.act({ do: 'take back' }, at(70));
    expect([minutesOf(stool), minutesOf(rack)]).toEqual([18, 0]);
    expect(shop.bench().sessions[0]?.first).toBeNull();
  });
});
