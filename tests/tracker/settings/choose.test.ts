import { describe, expect, it } from 'vitest';
import {
  chooseSetting,
  settings as table,
  readNightLow,
  standardSettings,
  valueInWords,
  type SettingKnowledge,
  type SettingOutcome,
  type Settings,
} from '../../../src/tracker/settings/index.ts';
import { keyMapWith, standardKeys, actOf } from '../../../src/views/keys/key-map.ts';

const zones = ['Europe/Lisbon', 'America/New_York', 'America/Argentina/Ushuaia'];
const knowledge: SettingKnowledge = {
  isZone: (name) =>
    [...zones, 'US/Eastern'].some((zone) => zone.toLowerCase() === name.toLowerCase()),
  zones: () => zones,
  acts: standardKeys,
};

const choose = (name: string, text: string, from: Settings = standardSettings): SettingOutcome =>
  chooseSetting(from, name, text, knowledge);

function chosen(name: string, text: string, from?: Settings): Settings {
  const outcome = choose(name, text, from);
  if (!outcome.ok) throw new Error(outcome.says);
  return outcome.settings;
}

function refusal(name: string, text: string, from?: Settings) {
  const outcome = choose(name, text, from);
  if (outcome.ok) throw new Error(`"${name}" took "${text}"`);
  return outcome;
}

describe('a setting chosen by text', () => {
  it.each([
    ['yes', true],
    ['ON', true],
    ['true', true],
    ['no', false],
    ['off', false],
    [' n ', false],
  ])('takes %j for a yes or no', (text, value) => {
    expect(chosen('helper', text, { ...standardSettings, helper: !value }).helper).toBe(value);
  });

  it('takes numbers and words among the choices, in any case', () => {
    expect(chosen('far-view', '5').farView).toBe(5);
    expect(chosen('clock', '12').clock).toBe('12');
    expect(chosen('glyphs', 'ASCII').glyphs).toBe('ascii');
    expect(chosen('temperature', 'f').temperature).toBe('F');
  });

  it('is found by its name in the file, on the command line, and as shown', () => {
    for (const name of ['farView', 'far-view', 'far view', 'Far View'])
      expect(chosen(name, '0').farView).toBe(0);
    expect(chosen('stay awake', 'no').awake).toBe(false);
  });

  it('changes nothing else', () => {
    expect(chosen('bell', 'never')).toEqual({ ...standardSettings, bell: 'never' });
  });

  it('goes back to how it came', () => {
    expect(chosen('bell', 'standard', { ...standardSettings, bell: 'never' }).bell).toBe('every');
  });

  it('takes every choice as the screen writes it', () => {
    for (const [name, { choices }] of Object.entries(table)) {
      if (typeof choices === 'string') continue;
      for (const choice of choices)
        expect(chosen(name, valueInWords(choice))[name as keyof typeof table]).toBe(choice);
    }
  });

  it('refuses a value that is no choice, names the choices and the nearest', () => {
    expect(refusal('glyphs', 'asci')).toEqual({
      ok: false,
      says: 'Not set: glyphs can\'t be "asci". Write auto, blocks or ascii.',
      nearest: ['ascii'],
    });
    expect(refusal('far view', '3').says).toBe(
      'Not set: far view can\'t be "3". Write 1, 0, 2, 5 or 10.',
    );
    expect(refusal('helper', 'perhaps').says).toContain('Write no or yes.');
    expect(refusal('bell', '  ').says).toContain('no value was given for bell');
  });

  it('refuses a name that is none, with the nearest', () => {
    const { says, nearest } = refusal('glyph', 'ascii');
    expect(says).toBe('Not set: there is no setting "glyph".');
    expect(nearest[0]).toBe('glyphs');
    expect(refusal('key', 'ready w').nearest).toContain('keys');
  });
});

describe('the night low', () => {
  it('is a temperature with its letter, none, or learned', () => {
    expect(chosen('night low', '12 C').nightLow).toBe('12 c');
    expect(chosen('night-low', '54f').nightLow).toBe('54f');
    expect(chosen('nightLow', 'None').nightLow).toBe('none');
    expect(chosen('night low', 'standard').nightLow).toBe('auto');
    expect([readNightLow('12C'), readNightLow('50 F'), readNightLow('-2,5c')]).toEqual([
      12, 10, -2.5,
    ]);
  });

  it('is refused without its letter, and where no shop is', () => {
    for (const typed of ['12', '66C', '200F', 'cold']) {
      expect(refusal('night low', typed).says).toBe(
        `Not set: night low can't be "${typed}". Write 12C, 54F, none or auto.`,
      );
    }
  });
});

describe('the zone', () => {
  it('is what the machine knows, written as its list writes it', () => {
    expect(chosen('zone', 'europe/lisbon').zone).toBe('Europe/Lisbon');
    expect(chosen('zone', 'AUTO').zone).toBe('auto');
    expect(chosen('time zone', 'US/Eastern').zone).toBe('US/Eastern');
  });

  it('is offered by its city where only that was typed', () => {
    expect(refusal('zone', 'lisbon').nearest).toEqual(['Europe/Lisbon']);
    expect(refusal('zone', 'new york').nearest).toEqual(['America/New_York']);
    expect(refusal('zone', 'Europe/Lisbom').nearest).toEqual(['Europe/Lisbon']);
    expect(refusal('zone', 'moon').nearest).toEqual([]);
  });
});

describe('keys', () => {
  const keysOf = (text: string, from?: Settings) => chosen('keys', text, from).keys;

  it.each([
    ['ready ö', { ready: ['ö'] }],
    ['ready ö,*', { ready: ['ö', '*'] }],
    ['NOT YET Ö =', { 'not yet': ['ö', '='] }],
    ['note é', { note: ['é'] }],
    ['earlier comma =', { earlier: [',', '='] }],
    ['remove end del', { remove: ['end', 'delete'] }],
  ])('takes %j', (text, keys) => {
    expect(keysOf(text)).toEqual(keys);
  });

  it('makes the key map do what was chosen', () => {
    const map = keyMapWith(keysOf('ready ö'));
    expect(actOf(map, 'ö')).toBe('ready');
    expect(actOf(map, 'r')).toBeNull();
  });

  it('leaves Enter, Space and the digits with their acts beside the new keys', () => {
    expect(keysOf('pick up ö')).toEqual({ 'pick up': ['ö', 'enter'] });
    expect(keysOf('next stamp ö')).toEqual({ 'next stamp': ['ö', 'space'] });
    expect(keysOf('take back ö')).toEqual({ 'take back': ['ö', '0', 'backspace'] });
    expect(keysOf('list ö')).toEqual({ list: ['ö', '/'] });
  });

  it.each(['enter', 'Space', '5', '0', 'esc', 'tab', 'up', '/'])(
    'does not give %s to another act',
    (name) => {
      expect(refusal('keys', `ready ${name}`).says).toBe(
        `Not set: ${name.toLowerCase()} stays as it is. Take another key for "ready".`,
      );
    },
  );

  it('refuses a key that another act has, and names the act', () => {
    expect(refusal('keys', 'ready w').says).toBe(
      'Not set: w is the key for "note". Give that another first, or take another.',
    );
    const moved = chosen('keys', 'note ö');
    expect(chosen('keys', 'ready w', moved).keys).toEqual({ note: ['ö'], ready: ['w'] });
    expect(refusal('keys', 'trouble ö', moved).says).toContain('ö is the key for "note"');
  });

  it('refuses an act that is none, with the nearest', () => {
    expect(refusal('keys', 'redy w')).toMatchObject({
      says: 'Not set: there is no act "redy". Write an act and its keys, such as: ready ;.',
      nearest: ['ready'],
    });
    expect(refusal('keys', 'pick upp ö').nearest).toEqual(['pick up']);
    expect(refusal('keys', '').says).toContain('no act was named');
  });

  it('refuses what is no key, and an act without one', () => {
    expect(refusal('keys', 'ready f13').says).toContain('"f13" is no key');
    expect(refusal('keys', 'ready spcae').nearest).toContain('space');
    expect(refusal('keys', 'ready \u0007').says).toContain('is no key');
    expect(refusal('keys', 'ready').says).toContain('no key was named for "ready"');
  });

  it('puts one act, or all, back as they came', () => {
    const moved = chosen('keys', 'trouble =', chosen('keys', 'ready ö'));
    expect(chosen('keys', 'ready standard', moved).keys).toEqual({ trouble: ['='] });
    expect(chosen('keys', 'standard', moved).keys).toEqual({});
    expect(chosen('keys', 'ready * r', moved).keys).toEqual({ trouble: ['='] });
  });

  it('does not put back a key that another act has taken', () => {
    const moved = chosen('keys', 'note r', chosen('keys', 'ready ö'));
    expect(refusal('keys', 'ready standard', moved).says).toBe(
      'Not set: r is now the key for "note". Write note standard first.',
    );
  });

  it('never leaves two acts with one key, nor an act without', () => {
    const texts = [
      'ready ö',
      'note r',
      'ready standard',
      'trouble r',
      'ready * ;',
      'note standard',
    ];
    let current = standardSettings;
    for (const text of texts) {
      const outcome = choose('keys', text, current);
      if (outcome.ok) current = outcome.settings;
      const keys = keyMapWith(current.keys).map((binding) => binding.keys);
      expect(new Set(keys.flat()).size).toBe(keys.flat().length);
      expect(keys.every((each) => each.length > 0)).toBe(true);
    }
  });
});
