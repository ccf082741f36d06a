import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { createDesktop } from '../../src/shell/ping/desktop.ts';
import { createPinger } from '../../src/shell/ping/pinger.ts';
import { isRunning, setVariable } from '../shell/ping/support/fake-commands.ts';
import { notificationService } from '../shell/ping/support/notification-service.ts';

/*
 * A real desktop notification, seen from the other side: a session bus of our own, on it a notification service of
 * our own (Desktop Notifications Specification 1.2, org.freedesktop.Notifications), and before it the real notify-send.
 */

const busCommand = 'dbus-run-session';

/** Without service folders, so that no service of this machine is started to answer. */
const busSettings = (socket: string): string => `<busconfig>
  <type>session</type>
  <listen>unix:path=${socket}</listen>
  <policy context="default"><allow send_destination="*"/><allow receive_sender="*"/><allow own="*"/></policy>
</busconfig>`;

/** Why no notification can be shown and seen here; null where it can. */
function whyNot(): string | null {
  if (process.platform !== 'linux') return 'D-Bus notifications are a matter of Linux desktops';
  if (!runs('notify-send', '--version'))
    return 'no notify-send (package libnotify-bin, or libnotify)';
  if (!runs(busCommand, '--version')) return `no ${busCommand} (package dbus, or dbus-daemon)`;
  return runs(busCommand, '--', 'true') ? null : `${busCommand} starts no session bus here`;
}

function runs(command: string, ...words: string[]): boolean {
  return spawnSync(command, words, { stdio: 'ignore', timeout: 10_000 }).status === 0;
}

/** A session bus behind a socket, found by notify-send, until the test or this process ends. */
async function privateBus(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'recoat-bus-'));
  const socket = join(folder, 'bus');
  const settings = join(folder, 'bus.conf');
  writeFileSync(settings, busSettings(socket));
  const session = [
    '--config-file',
    settings,
    '--',
    'sh',
    '-c',
    'echo "$DBUS_SESSION_BUS_ADDRESS"; exec cat',
  ];
  const bus = spawn(busCommand, session, { stdio: ['pipe', 'pipe', 'ignore'] });
  onTestFinished(async () => {
    bus.stdin.end();
    if (bus.exitCode === null) await once(bus, 'exit');
    rmSync(folder, { recursive: true });
  });
  const [address] = (await once(bus.stdout, 'data')) as [Buffer];
  setVariable('DBUS_SESSION_BUS_ADDRESS', address.toString().trim());
  return socket;
}

const reason = whyNot();
if (reason !== null) console.log(`Skipped: no desktop notification can be seen here: ${reason}.`);

describe.skipIf(reason !== null)(
  `a desktop notification${reason === null ? '' : ` (skipped: ${reason})`}`,
  () => {
    const ping = {
      id: 'c1',
      title: '4 Oak chest: B on by 14:29',
      body: 'A dries. Late: rinse, dry, start over.',
      loud: true,
    };
    const settings = { desktop: true, bell: 'never', terminal: 'off', hook: 'none' } as const;

    it('arrives at the desktop as sent', async () => {
      const bus = await privateBus();
      const shown = await notificationService(bus);
      const pinger = createPinger({
        settings: () => settings,
        write: null,
        platform: 'linux',
        env: process.env,
      });
      expect(await pinger.send(ping)).toEqual({ ways: ['desktop'], failures: [] });
      expect(await pinger.send({ ...ping, title: '2 Chair: scuff', loud: false })).toEqual({
        ways: ['desktop'],
        failures: [],
      });
      const senderPid = expect.any(Number) as number;
      expect(shown).toEqual([
        {
          appName: 'recoat',
          title: ping.title,
          message: ping.body,
          urgency: 2,
          senderPid,
          expireMs: 0,
        },
        {
          appName: 'recoat',
          title: '2 Chair: scuff',
          message: ping.body,
          urgency: 1,
          senderPid,
          expireMs: 20_000,
        },
      ]);
    });

    it('shows any name as plain text', async () => {
      const bus = await privateBus();
      const shown = await notificationService(bus);
      const { send } = createDesktop({ platform: 'linux' });
      const name = '--version $(id) `id` "q" \u001b[31mé 👩‍🔧 %s';
      expect(
        await send({ title: name, message: `${name}\nTable & <b>chairs</b> \\n`, loud: true }),
      ).toEqual({ ok: true });
      expect(shown).toEqual([
        expect.objectContaining({
          title: '–version $(id) `id` "q" é 👩‍🔧 %s',
          message: '–version $(id) `id` "q" é 👩‍🔧 %s - Table and ‹b›chairs‹/b› /n',
        }),
      ]);
    });

    it('is reported as impossible while no service answers, and arrives once one does', async () => {
      const bus = await privateBus();
      const notices: string[] = [];
      const pinger = createPinger({
        settings: () => settings,
        write: null,
        platform: 'linux',
        env: process.env,
        onNotice: (text) => void notices.push(text),
      });
      const { ways, failures } = await pinger.send(ping);
      expect(ways).toEqual([]);
      expect(failures[0]).toMatch(/^desktop: no notification service answers on this desktop\./);
      expect(notices).toHaveLength(1);
      const shown = await notificationService(bus);
      expect((await pinger.send(ping)).ways).toEqual(['desktop']);
      expect(shown).toHaveLength(1);
    });

    it('is reported as impossible without a session bus', async () => {
      setVariable('DBUS_SESSION_BUS_ADDRESS', `unix:path=${join(tmpdir(), 'recoat-no-such-bus')}`);
      expect(
        await createDesktop({ platform: 'linux' }).send({ title: 'a', message: 'b', loud: false }),
      ).toEqual({
        ok: false,
        why: expect.stringMatching(/^no notification service answers on this desktop\./),
      });
    });

    it('is given up when the service hangs, and leaves no process behind', async () => {
      const bus = await privateBus();
      const shown = await notificationService(bus, { silent: true });
      const outcome = await createDesktop({ platform: 'linux', timeLimit: 1000 }).send({
        title: 'a',
        message: 'b',
        loud: true,
      });
      expect(outcome).toEqual({
        ok: false,
        why: "the desktop's notification service gave no answer within 1 s.",
      });
      const [hung] = shown;
      expect(hung?.senderPid).toBeGreaterThan(0);
      await expect.poll(() => isRunning(hung?.senderPid ?? 0), { timeout: 3000 }).toBe(false);
    });
  },
);
