import { describe, expect, it } from 'vitest';
import type { Message } from '../../../src/views/screen.ts';
import type { ShutState } from '../../../src/views/screens.ts';
import { shutScreen } from '../../../src/views/shut-up-shop/index.ts';
import {
  afternoon,
  at,
  Facts,
  key,
  rowsOf,
  shop,
  sizes,
  snapshotOf,
  tense,
  viewOf,
  type Size,
} from '../support/bench-of.ts';
import { FakePort } from '../support/fake-port.ts';

const evening = at('24 18:05');

/** The screen at work on the real core. */
class Screen {
  state: ShutState = { is: 'shut up shop', answers: {}, at: 0 };
  message: Message | null = null;
  back = false;
  readonly port: FakePort;

  constructor(facts = afternoon(), now = evening) {
    this.port = new FakePort({ now, facts: facts.list });
  }

  view(size: Size = [80, 24]) {
    return viewOf(this.port.snapshot(), this.port.now, size, { message: this.message });
  }

  press(...names: readonly string[]): this {
    for (const name of names) {
      const step = shutScreen.press(this.state, key(name), this.view(), this.port);
      this.state = step.state ?? this.state;
      this.message = step.message ?? null;
      this.back ||= step.back !== undefined;
    }
    return this;
  }

  rows(size?: Size): readonly string[] {
    return rowsOf(shutScreen.draw(this.state, this.view(size)));
  }

  text(size?: Size): string {
    return this.rows(size).join('\n');
  }
}

describe('the screen of shutting up shop', () => {
  it.each(sizes)('fits %i x %i, with the question and the caution in sight', (columns, rows) => {
    const drawn = new Screen().rows([columns, rows]);
    expect(drawn).toHaveLength(rows);
    for (const row of drawn.slice(1)) expect(row.length).toBeLessThanOrEqual(columns);
    const text = drawn.join(' ').replaceAll(/\s+/g, ' ');
    expect(text).toContain(
      'Oily rags, pads, wool, dust catch fire by themselves. Label, local code first.',
    );
    expect(text).toMatch(/> rags/);
    expect(text).toContain('y n or -');
  });

  it('says what falls due till the morning and what it costs', () => {
    const rows = new Screen().rows();
    expect(rows[0]).toBe('shut up shop   Tue 24 Nov 18:05, back Wed 07:30');
    expect(rows.slice(2, 5)).toEqual([
      'falls due till Wed 07:30',
      ' 2 Plant stand     18:30        try it ends: scuff 320 first',
      ' 3 Beech stool     23:00        try it ends: scuff 320 first',
    ]);
    expect(rows).toContain('Nothing that spoils is running.');
    expect(rows).toContain(
      'none of these pings while recoat is closed; they are told when it opens',
    );
  });

  it('says what is worth doing before, and how long it takes', () => {
    expect(new Screen().text([120, 36])).toContain(
      'before you go  2 Plant stand: next coat takes 15 to 22 min, begin by 18:30; else scuff 320 first',
    );
  });

  it('says what is still in hand', () => {
    expect(new Screen().text()).toContain(
      'In hand since 14:02: 1 Oak settle. Its minutes run on till it is put down.',
    );
  });

  it('shows what spoils under its own ground, first', () => {
    const screen = new Screen(tense(), at('12-03 16:35'));
    const view = screen.view();
    const frame = shutScreen.draw(screen.state, view);
    const rows = rowsOf(frame);
    expect(rows[3]).toBe(
      ' 2 Wall shelf      16:42        B on ends, spoils: rinse, dry, start over',
    );
    expect(frame.lines[3]?.[1]?.role).toBe('spoils');
    expect(rows).toContain('spoils  2 Wall shelf: B on by 16:42. See to it before you go.');
  });

  it('says so where nothing falls due, and asks nothing that does not apply', () => {
    const rows = new Screen(new Facts()).rows();
    expect(rows.slice(2, 4)).toEqual([
      'Nothing falls due till Wed 07:30.',
      'Nothing that spoils is running.',
    ]);
    expect(rows.join('\n')).not.toContain('y n or -');
    expect(rows.join('\n')).toContain('Enter: shut up shop');
    expect(rows.join('\n')).toContain('Oily rags');
  });

  it("writes temperatures in the shop's unit", () => {
    const view = viewOf(
      snapshotOf(afternoon().bench(), { shop: { ...shop, temperature: 'F' } }),
      evening,
    );
    const rows = rowsOf(shutScreen.draw({ is: 'shut up shop', answers: {}, at: 0 }, view));
    expect(rows.join('\n')).toContain('heat      stays above 50 F all night');
  });

  it('never says safe', () => {
    for (const facts of [afternoon(), tense(), new Facts()])
      expect(new Screen(facts).text([120, 36])).not.toMatch(/\bsafe/i);
  });
});

describe('the questions', () => {
  it('come one after the other', () => {
    const screen = new Screen();
    expect(screen.text()).toContain('>    rags      laid flat outdoors singly');
    screen.press('y');
    expect(screen.text()).toContain('  y  rags ');
    expect(screen.text()).toContain('>    cans      lids on');
    screen.press('n', '-');
    expect(screen.text()).toContain('  n  cans ');
    expect(screen.text()).toContain('  -  heat ');
    expect(screen.text()).toContain('Enter: shut up shop');
    expect(screen.press('y').state.answers).toEqual({
      rags: 'yes',
      cans: 'no',
      heat: 'does not apply',
    });
  });

  it('can be gone back to', () => {
    expect(new Screen().press('y', 'backspace', 'n').state.answers).toEqual({ rags: 'no' });
  });

  it('are answered on a bare numeric pad too', () => {
    expect(new Screen().press('+', '-').state.answers).toEqual({
      rags: 'yes',
      cans: 'does not apply',
    });
  });

  it('are noted with Enter; what was not asked does not apply', () => {
    const screen = new Screen().press('y', 'y', 'y', 'enter');
    expect(screen.port.asked).toEqual([
      {
        do: 'shut up shop',
        answers: {
          rags: 'yes',
          cans: 'yes',
          heat: 'yes',
          pots: 'does not apply',
          gun: 'does not apply',
        },
        backAt: at('25 07:30'),
      },
    ]);
    expect(screen.back).toBe(true);
    expect(screen.message?.text).toBe(
      'Shop shut. Windows go on, and ping while recoat stays open.',
    );
    expect(screen.port.bench.lastShut?.answers.rags).toBe('yes');
  });

  it('are left at that by Enter before the last, and rags stay on the mind', () => {
    const screen = new Screen().press('enter');
    expect(screen.port.bench.lastShut?.answers).toEqual({
      pots: 'does not apply',
      gun: 'does not apply',
    });
    expect(screen.message?.text).toBe(
      'Noted. Rags still to do: laid flat outdoors singly, or under water in a lidded metal can.',
    );
    expect(new Screen().press('y', 'n', 'enter').message?.text).toBe('Noted. Still to do: cans.');
  });

  it('are not asked again the same evening once answered', () => {
    const screen = new Screen().press('y', 'y', '-', 'enter');
    screen.state = { is: 'shut up shop', answers: {}, at: 0 };
    expect(screen.text()).not.toMatch(/rags {6}/);
  });

  it('note nothing on Esc', () => {
    const screen = new Screen().press('y', 'escape');
    expect(screen.back).toBe(true);
    expect(screen.port.asked).toEqual([]);
  });
});

describe('when somebody is back', () => {
  const back = (text: string, from = evening): string => {
    const screen = new Screen(new Facts(), from);
    screen.press('b', ...text);
    expect(shutScreen.typing?.(screen.state)).toBe(true);
    screen.press('enter');
    if (screen.state.backAt === undefined) return screen.message?.text ?? '';
    return new Date(screen.state.backAt).toISOString().slice(0, 16);
  };

  it.each([
    ['8', '2026-11-25T08:00'],
    ['8:15', '2026-11-25T08:15'],
    ['0630', '2026-11-25T06:30'],
    ['22:00', '2026-11-24T22:00'],
    ['9 pm', '2026-11-24T21:00'],
    ['12 am', '2026-11-25T00:00'],
    ['Mon 7:30', '2026-11-30T07:30'],
    ['tuesday 8', '2026-12-01T08:00'],
    ['tue 19', '2026-11-24T19:00'],
    ['tomorrow 10', '2026-11-25T10:00'],
  ])('reads %j', (text, when) => {
    expect(back(text)).toBe(when);
  });

  it.each(['', '25', '7:60', '13 pm', '0 am', 'noon', 'moonday 8', 'monkey 8', '-5'])(
    'refuses %j',
    (text) => {
      expect(back(text)).toMatch(
        /^Not set: ".*" is no time to be back at\. Write 7:30, or Mon 7:30\.$/,
      );
    },
  );

  it('moves what falls due', () => {
    const screen = new Screen().press('b', ...'20:00', 'enter');
    expect(screen.rows()[0]).toBe('shut up shop   Tue 24 Nov 18:05, back 20:00');
    expect(screen.text()).toContain('2 Plant stand');
    expect(screen.text()).not.toContain('3 Beech stool');
    screen.press('enter');
    expect(screen.port.asked[0]).toMatchObject({ backAt: at('24 20:00') });
  });

  it('is left as it was by Esc', () => {
    const screen = new Screen().press('b', '9', 'escape');
    expect(screen.state.backAt).toBeUndefined();
    expect(screen.back).toBe(false);
    expect(shutScreen.typing?.(screen.state)).toBe(false);
  });

  it('before opening time is the same morning', () => {
    expect(new Screen(new Facts(), at('25 02:00')).rows()[0]).toContain('back 07:30');
  });
});
