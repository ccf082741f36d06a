import { describe, expect, it } from 'vitest';
import {
  chooseSetting,
  settings as table,
  standardSettings,
  type Settings,
} from '../../../src/tracker/settings/index.ts';
import { standardKeys } from '../../../src/views/keys/key-map.ts';
import type { ActReply, BenchPort } from '../../../src/views/port.ts';
import type { Message } from '../../../src/views/screen.ts';
import type { SettingsState } from '../../../src/views/screens.ts';
import { settingsScreen } from '../../../src/views/settings/index.ts';
import {
  afternoon,
  at,
  key,
  portOf,
  rowsOf,
  sizes,
  snapshotOf,
  viewOf,
  type Size,
} from '../support/bench-of.ts';

const bench = afternoon().bench();
const start: SettingsState = { is: 'settings', at: 0 };
const rowOf = (name: string): number => [...Object.keys(table), 'keys'].indexOf(name);

/** The screen at work: settings are really chosen, and kept in memory. */
class Screen {
  settings: Settings = standardSettings;
  state: SettingsState = start;
  message: Message | null = null;
  back = false;
  failing: ActReply | null = null;
  readonly asked: string[] = [];

  private readonly port: BenchPort = portOf(() => snapshotOf(bench, { settings: this.settings }), {
    choose: (name, text) => {
      this.asked.push(`${name} = ${text}`);
      if (this.failing !== null) return this.failing;
      const zones = ['Europe/Lisbon', 'America/New_York'];
      const outcome = chooseSetting(this.settings, name, text, {
        isZone: (zone) => zones.includes(zone),
        zones: () => zones,
        acts: standardKeys,
      });
      if (!outcome.ok) return outcome;
      this.settings = outcome.settings;
      return { ok: true, says: `${name} set`, piece: null };
    },
  });

  at(name: string): this {
    this.state = { ...start, at: rowOf(name) };
    return this;
  }

  press(...names: readonly string[]): this {
    for (const name of names) {
      const step = settingsScreen.press(this.state, key(name), this.view(), this.port);
      this.state = step.state ?? this.state;
      this.message = step.message ?? null;
      this.back ||= step.back === true;
    }
    return this;
  }

  write(text: string): this {
    return this.press(...text);
  }

  view(size: Size = [80, 24]) {
    return viewOf(snapshotOf(bench, { settings: this.settings }), at('24 14:29'), size, {
      message: this.message,
    });
  }

  rows(size?: Size): readonly string[] {
    return rowsOf(settingsScreen.draw(this.state, this.view(size)));
  }
}

describe('the settings screen', () => {
  it.each(sizes)('fits %i x %i wherever the mark is', (columns, rows) => {
    const screen = new Screen();
    for (const name of [...Object.keys(table), 'keys']) {
      const drawn = screen.at(name).rows([columns, rows]);
      expect(drawn).toHaveLength(rows);
      const marked = drawn.filter((row) => row.startsWith('> '));
      expect(marked).toHaveLength(1);
      if (columns >= 40) for (const row of drawn) expect(row.length).toBeLessThanOrEqual(columns);
    }
  });

  it('lists every setting with its value, and what auto comes to here', () => {
    // The screen scrolls: a taller one shows all of them.
    const text = new Screen().rows([80, 30]).join('\n');
    for (const { label } of Object.values(table))
      expect(text).toMatch(new RegExp(`^[> ] ${label} `, 'm'));
    expect(text).toMatch(/^> helper +no$/m);
    expect(text).toMatch(/^ {2}clock +auto: 24$/m);
    expect(text).toMatch(/^ {2}time zone +auto: UTC$/m);
    expect(text).toMatch(/^ {2}keys +as they come$/m);
  });

  it('says what the marked one does and what it can be', () => {
    const rows = new Screen().at('bell').rows();
    expect(rows.at(-3)).toBe('Ring the terminal bell: never, for loud pings, or for every ping.');
    expect(rows.at(-2)).toBe('[every]  loud  never');
  });
});

describe('keys on the settings screen', () => {
  it('mark the next and the one before, and go round', () => {
    const screen = new Screen().press('down', 'down');
    expect(screen.state.at).toBe(2);
    expect(screen.press('up', 'up', 'up').state.at).toBe(rowOf('keys'));
    expect(screen.press('down').state.at).toBe(0);
  });

  it('go through the choices both ways and round', () => {
    const screen = new Screen().at('bell').press('right');
    expect(screen.settings.bell).toBe('loud');
    expect(screen.press('left', 'left').settings.bell).toBe('never');
    expect(screen.press('enter').settings.bell).toBe('every');
    expect(screen.asked).toEqual(['bell = loud', 'bell = every', 'bell = never', 'bell = every']);
    expect(screen.rows().at(-2)).toBe('bell: every');
  });

  it('turn a yes or no', () => {
    expect(new Screen().press('space').settings.helper).toBe(true);
  });

  it('write the zone', () => {
    const screen = new Screen().at('zone').press('enter').write('Europe/Lisbon');
    expect(settingsScreen.typing?.(screen.state)).toBe(true);
    expect(screen.rows().join('\n')).toContain('> time zone       Europe/Lisbon_');
    screen.press('enter');
    expect(screen.settings.zone).toBe('Europe/Lisbon');
    expect(settingsScreen.typing?.(screen.state)).toBe(false);
    expect(screen.press('enter').state.text).toBe('Europe/Lisbon');
  });

  it('keep what was refused in the field, and say what was meant perhaps', () => {
    const screen = new Screen().at('keys').press('enter').write('redy ö').press('enter');
    expect(screen.message).toEqual({
      refused: true,
      text: 'Not set: there is no act "redy". Write an act and its keys, such as: ready ;. Did you mean ready?',
    });
    expect(screen.state.text).toBe('redy ö');
    screen.press('left', 'left', 'left', 'left', 'a', 'enter');
    expect(screen.settings.keys).toEqual({ ready: ['ö'] });
    expect(screen.rows().join('\n')).toMatch(/^> keys +ready ö$/m);
  });

  it('change nothing on Esc while writing', () => {
    const screen = new Screen().at('zone').press('enter', 'x', 'escape');
    expect(screen.asked).toEqual([]);
    expect(screen.state).toEqual({ is: 'settings', at: rowOf('zone') });
    expect(screen.back).toBe(false);
  });

  it('say why a change was not kept', () => {
    const screen = new Screen();
    screen.failing = { ok: false, says: 'Not changed: the disk is full.', nearest: [] };
    screen.press('right');
    expect(screen.settings.helper).toBe(false);
    expect(screen.rows().join('\n')).toContain('Not changed: the disk is full.');
  });

  it.each(['escape', 'u'])('go back on %s', (name) => {
    expect(new Screen().press(name).back).toBe(true);
  });
});
