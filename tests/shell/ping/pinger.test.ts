import { describe, expect, it } from 'vitest';
import type { DesktopOutcome, DesktopPing } from '../../../src/shell/ping/desktop.ts';
import type { PingSettings } from '../../../src/shell/ping/ping-settings.ts';
import { createPinger, type Ping, type PingerOptions } from '../../../src/shell/ping/pinger.ts';

const quiet: Ping = { id: 'c1', title: '2 Chair: scuff', body: 'from 16:10', loud: false };
const loud: Ping = { id: 'c2', title: '4 Oak chest: B on', body: 'A dries at 14:29', loud: true };
const BEL = '\u0007';

function pingerWith(
  settings: Partial<PingSettings>,
  {
    outcome = { ok: true },
    ...options
  }: Partial<PingerOptions> & { outcome?: DesktopOutcome } = {},
) {
  const written: string[] = [];
  const shown: DesktopPing[] = [];
  const notices: string[] = [];
  const pinger = createPinger({
    settings: () => ({ desktop: true, bell: 'every', terminal: 'off', hook: 'none', ...settings }),
    write: (bytes) => void written.push(bytes),
    platform: 'linux',
    env: {},
    sendDesktop: (ping) => {
      shown.push(ping);
      return Promise.resolve(outcome);
    },
    onNotice: (text) => void notices.push(text),
    ...options,
  });
  return { pinger, written, shown, notices };
}

describe('sending a ping', () => {
  it('goes out by bell, terminal and desktop, the terminal in one write', async () => {
    const { pinger, written, shown } = pingerWith({ terminal: 'osc9' });
    expect(await pinger.send(loud)).toEqual({
      ways: ['bell', 'terminal', 'desktop'],
      failures: [],
    });
    expect(written).toEqual([`${BEL}\u001b]9;4 Oak chest: B on: A dries at 14:29${BEL}`]);
    expect(shown).toEqual([{ title: loud.title, message: loud.body, loud: true }]);
  });

  it.each([
    ['every', [BEL], [BEL]],
    ['loud', [], [BEL]],
    ['never', [], []],
  ] as const)('rings the bell as set: %s', async (bell, forQuiet, forLoud) => {
    const first = pingerWith({ bell, desktop: false });
    expect((await first.pinger.send(quiet)).ways).toEqual(forQuiet.length > 0 ? ['bell'] : []);
    expect(first.written).toEqual(forQuiet);
    const second = pingerWith({ bell, desktop: false });
    await second.pinger.send(loud);
    expect(second.written).toEqual(forLoud);
  });

  it('follows settings that change between two pings', async () => {
    let desktop = false;
    const { pinger, shown } = pingerWith(
      {},
      { settings: () => ({ desktop, bell: 'never', terminal: 'off', hook: 'none' }) },
    );
    expect(await pinger.send(quiet)).toEqual({ ways: [], failures: [] });
    desktop = true;
    expect(await pinger.send(quiet)).toEqual({ ways: ['desktop'], failures: [] });
    expect(shown).toHaveLength(1);
  });

  it('only rings again for a repeated one', async () => {
    const { pinger, written, shown } = pingerWith({ terminal: 'osc777' });
    expect(await pinger.send({ ...loud, repeat: true })).toEqual({ ways: ['bell'], failures: [] });
    expect(written).toEqual([BEL]);
    expect(shown).toEqual([]);
  });

  it('comes up on the desktop again where no terminal is there to ring', async () => {
    const { pinger, shown } = pingerWith({}, { write: null });
    await pinger.send(loud);
    expect((await pinger.send({ ...loud, repeat: true })).ways).toEqual(['desktop']);
    expect(shown).toHaveLength(2);
  });

  it('has the bell rung before the desktop has answered', async () => {
    let answer = (_outcome: DesktopOutcome): void => {};
    const { pinger, written } = pingerWith(
      {},
      { sendDesktop: () => new Promise((resolve) => (answer = resolve)) },
    );
    const report = pinger.send(loud);
    expect(written).toEqual([BEL]);
    answer({ ok: true });
    expect((await report).ways).toEqual(['bell', 'desktop']);
  });

  it('has no bell and no sequence without a terminal', async () => {
    const { pinger } = pingerWith({ terminal: 'osc99' }, { write: null });
    expect(await pinger.send(loud)).toEqual({ ways: ['desktop'], failures: [] });
  });
});

describe('a ping that can not leave', () => {
  const refusal: DesktopOutcome = {
    ok: false,
    why: 'no notification service answers on this desktop.',
  };

  it('reports the desktop each time and gives notice once', async () => {
    const { pinger, notices } = pingerWith({}, { outcome: refusal });
    expect(await pinger.send(loud)).toEqual({
      ways: ['bell'],
      failures: ['desktop: no notification service answers on this desktop.'],
    });
    expect((await pinger.send(quiet)).failures).toHaveLength(1);
    expect(notices).toEqual([
      'No desktop ping: no notification service answers on this desktop. Pings still show on this screen and ring the bell.',
    ]);
  });

  it.each([
    [{ bell: 'never' }, 'Pings still show on this screen.'],
    [
      { bell: 'loud', terminal: 'osc9' },
      'Pings still show on this screen, ring the bell when loud and go out through the terminal (osc9).',
    ],
  ] satisfies [Partial<PingSettings>, string][])(
    'says what is left with %o',
    async (settings, sentence) => {
      const { pinger, notices } = pingerWith(settings, { outcome: refusal });
      await pinger.send(loud);
      expect(notices[0]).toContain(sentence);
    },
  );

  it('says that nothing is left where there is no terminal', async () => {
    const { pinger, notices } = pingerWith({}, { outcome: refusal, write: null });
    await pinger.send(loud);
    expect(notices[0]).toMatch(/Nothing else here can ping\.$/);
  });

  it('survives a terminal that is gone and a notifier that throws', async () => {
    const gone = Object.assign(new Error('write EIO'), { code: 'EIO' });
    const { pinger } = pingerWith(
      { terminal: 'osc9' },
      {
        write: () => {
          throw gone;
        },
        sendDesktop: () => {
          throw new Error('boom');
        },
      },
    );
    expect(await pinger.send(loud)).toEqual({
      ways: [],
      failures: [
        'bell: the terminal takes no more output (EIO).',
        'terminal: the terminal takes no more output (EIO).',
        'desktop: the notifier broke (boom).',
      ],
    });
  });
});
