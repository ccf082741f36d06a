import { describe, expect, it } from 'vitest';
import { benchStart } from '../../../src/views/bench/bench-state.ts';
import { benchScreen } from '../../../src/views/bench/index.ts';
import { createDesk, type Desk } from '../../../src/views/desk.ts';
import { plain } from '../../../src/views/drawing/index.ts';
import { readPresses } from '../../../src/views/keys/press.ts';
import { hour, minute, second } from '../../../src/tracker/time/index.ts';
import {
  afternoon,
  at,
  Facts,
  key,
  ping,
  recoat,
  snapshotOf,
  step,
  tense,
  viewOf,
} from '../support/bench-of.ts';
import { FakePort, type FakePortOptions } from '../support/fake-port.ts';

const now = at('24 14:29');

/** A desk on the invented afternoon; presses come a comfortable time apart. */
function deskOn(options: Partial<FakePortOptions> = {}) {
  const port = new FakePort({ now, facts: afternoon().list, ...options });
  const desk: Desk = createDesk({
    port,
    ticks: port.ticks,
    theme: () => ({ colour: 'none', glyphs: 'blocks' }),
    leave: () => undefined,
  });
  const rows = (): readonly string[] =>
    desk.frame(80, 24).lines.map((line) => plain(line).trimEnd());
  return {
    port,
    desk,
    rows,
    /** What the last key did, and what the next ones will do. */
    told: () => rows()[21] ?? '',
    foot: () => rows()[22] ?? '',
    press: (...names: readonly string[]) => {
      for (const name of names) {
        port.wait(2 * second);
        desk.press([key(name)]);
      }
    },
  };
}

const inHand = (port: FakePort): readonly string[] =>
  port.bench.sessions
    .filter(({ end }) => end === null)
    .map(({ targets }) => targets[0]?.piece ?? '');

describe('keys on the bench', () => {
  it('select a piece by its digit, wherever its row is', () => {
    const { press, foot } = deskOn();
    press('6');
    expect(foot()).toContain('[6] Cane rocker.');
    press('8');
    expect(foot()).toContain('[8] Hat rack.');
  });

  it('pick up and put down with one key, and picking up one puts the other down', () => {
    const { press, port, rows } = deskOn();
    press('6', 'enter');
    expect(inHand(port)).toEqual(['p6']);
    expect(rows().some((row) => row.startsWith('▶[6] Cane rocker    in hand since'))).toBe(true);
    press('enter');
    expect(inHand(port)).toEqual([]);
  });

  it('switch back to what was in hand before', () => {
    const { press, port } = deskOn();
    press('6', 'enter', 'b');
    expect(inHand(port)).toEqual(['p1']);
  });

  it('take another piece along into what is in hand, and out of it', () => {
    const { press, foot, port, rows } = deskOn();
    press('6', 'enter', '8');
    expect(foot()).toContain('e: take along');
    press('e');
    const targets = () => port.bench.sessions.find(({ end }) => end === null)?.targets ?? [];
    expect(targets().map(({ piece }) => piece)).toEqual(['p6', 'p8']);
    expect(foot()).toContain('Enter: put all down');
    expect(rows()[3]).toMatch(/^in hand {2}6 Cane rocker: .* and 8 Hat rack: /);
    expect(rows().filter((row) => row.startsWith('▶'))).toHaveLength(2);
    press('e');
    expect(targets().map(({ piece }) => piece)).toEqual(['p6']);
  });

  it('go from part to part with Space alone, each stamped and finished by itself', () => {
    const { press, foot, port } = deskOn();
    port.act({ do: 'name parts', piece: 'p6', names: ['seat', 'back'] });
    const [seat, back] = port.piece('p6').parts.map(({ id }) => id);
    press('6', 'tab');
    expect(foot()).toContain('[6] Cane rocker, seat.');
    press('space', 'space');
    expect(port.piece('p6').finishes.map(({ part }) => part)).toEqual([seat]);
    expect(foot()).toContain('[6] Cane rocker, back.');
    press('space', 'space');
    expect(port.piece('p6').finishes.map(({ part }) => part)).toEqual([seat, back]);
  });

  it('do with Space just what the foot line says', () => {
    const { press, foot, port } = deskOn();
    press('1');
    expect(foot()).toContain('Space: sand 120 grit done.');
    press('space');
    expect(port.piece('p1').finishes.map(({ step }) => step)).toEqual(['sand']);
    press('up');
    press('1');
    expect(foot()).toContain('Space: pick up sand 150 grit.');
  });

  it('start a dwell from the bench itself with one key, which also picks the piece up', () => {
    const { press, port, rows } = deskOn({
      now: at('12-03 16:45'),
      facts: tense().list.slice(0, -1),
    });
    press('2', 'f');
    expect(port.piece('p2').stamps.map(({ event, agent }) => `${agent} ${event}`)).toEqual([
      'A first-stroke',
    ]);
    expect(inHand(port)).toEqual(['p2']);
    expect(rows().join('\n')).toContain('working, B on');
    expect(rows().join('\n')).toContain('Space: B, first stroke on.');
  });

  it('leave standing what a key did while its repeats are held back', () => {
    const { press, told, desk, port } = deskOn();
    press('3', 'r');
    expect(told()).toBe('ready, next coat on 3 Beech stool');
    for (let repeat = 0; repeat < 5; repeat += 1) {
      port.wait(40);
      desk.press([key('r')]);
    }
    expect(port.piece('p3').checks).toHaveLength(1);
    expect(told()).toBe('ready, next coat on 3 Beech stool');
  });

  it('end a quiet ping also where what was pressed is moved to before it', () => {
    const called = '2 Wall shelf: B on at 16:40, in 1 min.';
    const { press, rows } = deskOn({
      now: at('12-03 16:39:02'),
      facts: tense().list.slice(0, -1),
      pings: [ping('q', '12-03 16:39:01', called, { piece: 'p2' })],
    });
    expect(rows().join('\n')).toContain(called);
    press('2', 'space');
    expect(rows().join('\n')).not.toContain(called);
    press(',');
    expect(rows().join('\n')).toContain('1 min earlier');
    expect(rows().join('\n')).not.toContain(called);
  });

  it('take back and bring back, again and again, each saying what', () => {
    const { press, told, port } = deskOn();
    press('6', 'enter', '0');
    expect(told()).toBe('taken back: pick up 6 Cane rocker, look over, lead test.  g: bring back');
    expect(inHand(port)).toEqual(['p1']);
    press('g');
    expect(inHand(port)).toEqual(['p6']);
    press('0', '0');
    expect(inHand(port)).toEqual([]);
    press('g', 'g');
    expect(inHand(port)).toEqual(['p6']);
  });

  it('refuse in plain words, which stand until the next key', () => {
    const { press, rows, told, foot } = deskOn();
    press('6', 'r');
    // What is too long for one row is broken, not cut: what to do stands at its end.
    expect(told()).toMatch(/^Not noted: nothing on 6 Cane rocker is drying/);
    expect(foot()).toMatch(/try\.$/);
    expect(rows()[23]).toContain('k all keys');
    press('1');
    expect(foot()).toMatch(/^\[1\]/);
    press('9');
    expect(foot()).toBe('Not selected: no piece has number 9.');
  });

  it('note what trying the surface showed', () => {
    const { press, port, rows } = deskOn({ now: at('24 15:20') });
    press('3', 'n');
    expect(port.piece('p3').checks.map(({ finding }) => finding)).toEqual(['not yet']);
    expect(rows().find((row) => row.includes('Beech stool'))).toBeDefined();
  });

  it('move the last stamp earlier by a minute, never past what came before it', () => {
    const { press, port } = deskOn();
    press('6', 'enter', ',');
    const [, session] = port.bench.sessions;
    expect((session?.start ?? 0) % minute).not.toBe(0);
    expect(session?.start).toBe(port.bench.sessions[0]?.end);
    expect(session?.start).toBe(now + 4 * second - minute);
  });

  it('open the list of the numeric pad, and act by two presses', () => {
    const { press, port, rows } = deskOn();
    press('1', '/');
    expect(rows().join('\n')).toContain('3  done');
    press('3');
    expect(port.piece('p1').finishes).toHaveLength(1);
    expect(rows()[5]).toContain('Oak settle');
  });
});

describe('a step with cautions', () => {
  const lead = 'Cut to bare wood and test every layer. A negative kit is no proof.';
  const facts = () =>
    afternoon().piece('24 10:00', 9, 'Pine shelf', [
      step('lead', 'lead test, 3 spots', { cautions: [lead] }),
    ]).list;

  it('shows them on the bench from the pick-up on, also where every row is taken', () => {
    const { press, desk } = deskOn({ facts: facts() });
    const lines = (rows: number): string =>
      desk
        .frame(80, rows)
        .lines.map((line) => plain(line).trimEnd())
        .join('\n');
    press('9', 'enter');
    for (const rows of [24, 18, 14]) {
      expect(lines(rows)).toContain(`caution  ${lead}`);
      // And nothing of the foot is pushed off for it.
      expect(lines(rows).split('\n').at(-1)).toMatch(/^1-9 piece/);
      expect(lines(rows)).toContain('▶[9] Pine shelf');
    }
    press('6');
    expect(lines(24)).not.toContain(lead);
  });
});

describe('a step with several cautions', () => {
  it('tells them one after the other, and leaves the rows that saves to the pieces', () => {
    const cautions = ['No metal.', 'No bristle.', 'A pad for each.'];
    const facts = afternoon().piece('24 10:00', 9, 'Pine shelf', [
      step('wash', 'wash it', { cautions }),
    ]).list;
    const { press, desk } = deskOn({ facts });
    press('9', 'enter');
    const shown = desk.frame(80, 24).lines.map((line) => plain(line).trimEnd());
    expect(shown).toContain('caution  No metal. No bristle. A pad for each.');
  });
});

describe('an odd timer', () => {
  const timed = () =>
    afternoon().tell('24 14:20', 'timer-started', {
      timer: 't1',
      piece: 'p1',
      label: 'heat lamp',
      ms: 60 * minute,
    }).list;

  it('for a piece in hand has a row of its own, which says how to close it', () => {
    const { press, rows, foot, port } = deskOn({ facts: timed() });
    const row = rows().findIndex((line) => line.includes('heat lamp'));
    expect(rows()[row]).toContain('timer till');
    expect(rows()[row + 1]).toContain('odd timer on 1 Oak settle');
    press('1');
    for (let down = 0; down < 9 && !foot().startsWith('[-]'); down += 1) press('down');
    expect(foot()).toBe('[-] heat lamp.  Space: close it');
    press('enter', 'r', 'n', 'f', 's', 'h');
    expect(port.bench.timers[0]?.closedAt).toBeNull();
    press('space');
    expect(port.bench.timers[0]?.closedAt).not.toBeNull();
  });

  it('once closed leaves nothing selected, so that the next key acts on no piece', () => {
    const { press, foot, port } = deskOn({ facts: timed() });
    press('1');
    for (let down = 0; down < 9 && !foot().startsWith('[-]'); down += 1) press('down');
    press('space');
    expect(foot()).toBe('Nothing is selected.  1-9 or the arrows: select a piece');
    const before = port.asked.length;
    press('d', 'enter', 'space');
    expect(port.asked).toHaveLength(before);
    press('up');
    expect(foot()).toMatch(/^\[\d\]/);
  });
});

describe('a step picked up before its window is open', () => {
  it('says in its row until when it should wait', () => {
    const { press, rows } = deskOn();
    press('3', 'enter');
    const row = rows().findIndex((line) => line.startsWith('▶[3] Beech stool'));
    expect(rows()[row + 1]).toContain('next coat, 2 of 2; not before 15:10, expected');
  });

  it('is called early by the foot before a key begins it, and by what the key did', () => {
    const { press, foot, told } = deskOn();
    press('3');
    expect(foot()).toMatch(/^\[3\] Beech stool\. {2}Space: pick up next coat, 41 min early\. /);
    press('space');
    expect(told()).toBe('picked up 3 Beech stool, next coat, 41 min early');
    press('0', 'r');
    expect(foot()).toContain('Space: pick up next coat.');
  });

  it('waits for nothing that it has begun itself', () => {
    const itself = new Facts()
      .piece('24 09:00', 3, 'Beech stool', [
        step('oil', 'oil coat', { windows: [recoat(2 * hour, null)], needs: ['recoat'] }),
        step('wax', 'wax', { needs: ['recoat'] }),
      ])
      .pickUp('24 14:20', 3, 'oil')
      .done('24 14:25', 3, 'oil');
    const { rows } = deskOn({ facts: itself.list });
    expect(rows().join('\n')).toContain('oil coat, done, 1 of 2; expected');
  });
});

describe('what was noticed', () => {
  it('stands above the foot until a key is pressed, one notice after another', () => {
    const notices = [
      'No desktop notifications here: notify-send is missing. Install the package libnotify-bin.',
      'bench.json was damaged.',
    ];
    const { press, rows } = deskOn({ snapshot: { notices } });
    expect(rows().slice(19, 21).join(' ')).toBe(notices[0]);
    press('6');
    expect(rows()[20]).toBe(notices[1]);
    press('1');
    expect(rows().join()).not.toContain('damaged');
  });

  it('while the large letters stood comes up with the key that brings the bench back', () => {
    const notices = ["The machine's clock was set 30 minutes forward."];
    const { press, rows, port } = deskOn({ snapshot: { notices } });
    port.wait(2 * minute);
    expect(rows().join()).toContain('brings the bench back');
    press('k', 'escape');
    expect(rows()[20]).toBe(notices[0]);
    press('6');
    expect(rows().join()).not.toContain('clock was set');
  });

  it('that has no room is cut with the key to the rest, which tells it in full', () => {
    const notice =
      'No desktop ping: the command notify-send is missing. Install libnotify-bin (Debian and relatives) or libnotify (most others). Pings still ring the bell and stand on the screen.';
    const { press, rows } = deskOn({ snapshot: { notices: [notice] } });
    expect(rows()[19]).toMatch(/^No desktop ping: the command notify-send is missing\./);
    expect(rows()[20]).toMatch(/… {2}i: all of it$/);
    press('i');
    const told = rows().map((row) => row.trim());
    expect(told.join(' ')).toContain(notice);
  });
});

describe('gloves', () => {
  it('several characters in one delivery act as nothing', () => {
    const { desk, port } = deskOn();
    port.wait(5 * second);
    desk.press(readPresses('d d', {}));
    expect(port.asked).toEqual([]);
  });

  it('whatever comes close upon several characters at once is still the leaning glove', () => {
    const { desk, port } = deskOn();
    port.wait(2 * second);
    desk.press([key('6')]);
    port.wait(2 * second);
    desk.press(readPresses('xy', {}));
    port.wait(200);
    desk.press([key('enter')]);
    expect(inHand(port)).toEqual(['p1']);
    port.wait(400);
    desk.press([key('enter')]);
    expect(inHand(port)).toEqual(['p6']);
  });

  it('two digits at once undo no selection that was made a while before', () => {
    const { desk, port, foot } = deskOn();
    port.wait(2 * second);
    desk.press([key('6')]);
    port.wait(500);
    desk.press(readPresses('12', {}));
    expect(foot()).toContain('[6] Cane rocker.');
  });

  it('a bounce of Enter within a second picks up once', () => {
    const { desk, port } = deskOn();
    port.wait(2 * second);
    desk.press([key('6')]);
    port.wait(500);
    desk.press([key('enter')]);
    port.wait(200);
    desk.press([key('enter')]);
    expect(inHand(port)).toEqual(['p6']);
  });

  it('two digits at once leave the selection as it was', () => {
    const { desk, port, foot } = deskOn();
    port.wait(2 * second);
    desk.press([key('1')]);
    port.wait(2 * second);
    desk.press([key('4')]);
    port.wait(50);
    desk.press([key('5')]);
    expect(foot()).toContain('[1] Oak settle.');
  });
});

describe('a loud ping', () => {
  const loudAt = at('12-03 16:41');
  const loud = ping('claim', '12-03 16:41', '2 Wall shelf: B on, by 16:42. Late: start over.', {
    loud: true,
    piece: 'p2',
  });

  it('is silenced by any key, which selects its piece and does nothing else', () => {
    const { desk, port, told, foot } = deskOn({
      now: loudAt + 5 * second,
      facts: tense().list,
      pings: [loud],
    });
    desk.press([key('d')]);
    expect(port.acknowledged).toEqual(['claim']);
    expect(port.asked).toEqual([]);
    expect(told()).toBe('silenced, press again');
    expect(foot()).toContain('Space: B, first stroke on.');
  });

  it('selects its piece whatever was selected before', () => {
    const { desk, port, rows } = deskOn({
      now: loudAt - 10 * second,
      facts: tense().list,
      pings: [loud],
    });
    desk.press([key('3')]);
    const isSelected = (number: number): boolean =>
      rows().some((row) => row.startsWith(` [${number}] `));
    expect(isSelected(3)).toBe(true);
    port.wait(15 * second);
    desk.press([key('d')]);
    expect(isSelected(2)).toBe(true);
    expect(port.asked).toEqual([]);
  });

  it('lets a key act that was on its way when it began', () => {
    const { desk, port } = deskOn({ now: loudAt + 200, facts: tense().list, pings: [loud] });
    desk.press([key('f')]);
    expect(port.acknowledged).toEqual([]);
    expect(port.asked.map((intent) => intent.do)).toEqual(['first stroke']);
  });
});

it('acts on the whole piece where it has no such part any more', () => {
  const port = new FakePort({ now, facts: afternoon().list });
  benchScreen.press(
    { ...benchStart(now - 5 * second), selected: 'p6', part: 'drawers' },
    key('enter'),
    viewOf(snapshotOf(afternoon().bench()), now),
    port,
  );
  expect(port.asked).toEqual([{ do: 'pick up', targets: [{ piece: 'p6', part: null }] }]);
});
