import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import type { NodeNotifier } from 'node-notifier';
import { describe, expect, it } from 'vitest';
import { createDesktop } from '../../../src/shell/ping/desktop.ts';
import { fakeCommands, isRunning, pause, setVariable } from './support/fake-commands.ts';

const onLinux = process.platform === 'linux';
const ping = { title: '4 Oak chest: B on', message: 'A dries at 14:29', loud: true };

/** Writes each argument and a line `--`. */
const recorder = `for word in "$@"; do printf '%s\\n' "$word"; done >> "$HERE/calls"; echo -- >> "$HERE/calls"`;

function withFake(script: string) {
  const fakes = fakeCommands({ 'notify-send': script });
  setVariable('PATH', fakes.path);
  return fakes;
}

const words = (calls: string): string[] => calls.split('\n').slice(0, -2);
const pids = (text: string): number[] => text.split('\n').filter(Boolean).map(Number);

const desktopModule = new URL('../../../src/shell/ping/desktop.ts', import.meta.url).href;

/** Runs a small program that knows `createDesktop` and `ping`. */
const runProgram = (body: string) =>
  promisify(execFile)(
    process.execPath,
    [
      '--input-type=module',
      '-e',
      `import {createDesktop} from '${desktopModule}'\nconst ping = ${JSON.stringify(ping)}\n${body}`,
    ],
    { timeout: 20_000 },
  );

describe.runIf(onLinux)('a desktop ping through notify-send', () => {
  it('passes title, message, urgency and our name', async () => {
    const fakes = withFake(recorder);
    expect(await createDesktop({ platform: 'linux' }).send(ping)).toEqual({ ok: true });
    expect(words(fakes.read('calls'))).toEqual([
      '4 Oak chest: B on',
      'A dries at 14:29',
      '--urgency',
      'critical',
      '--app-name',
      'recoat',
      '--expire-time',
      '0',
    ]);
  });

  it('lets a ping that is not loud go away by itself', async () => {
    const fakes = withFake(recorder);
    await createDesktop({ platform: 'linux' }).send({ ...ping, loud: false });
    const call = words(fakes.read('calls'));
    expect(call[call.indexOf('--urgency') + 1]).toBe('normal');
    expect(call[call.indexOf('--expire-time') + 1]).toBe('20000');
  });

  it.each([
    ['--help', '–help'],
    ['-u low', '–u low'],
    ['$(touch "$HERE/ran")', '$(touch "$HERE/ran")'],
    ['`touch ran`; touch ran & | > ran', '`touch ran`; touch ran and | › ran'],
    ['a "quoted" \'name\' $HOME', 'a "quoted" \'name\' $HOME'],
    ['back\\slash \\n \\" end\\', 'back/slash /n /" end/'],
    ['one\ntwo\r\nthree', 'one - two - three'],
    ['bell\u0007 red\u001b[31m null\u0000 half\ud800', 'bell red null half\ufffd'],
    ['Table & <b>chairs</b>', 'Table and ‹b›chairs‹/b›'],
    ['!history #comment %s ~ * ?', '!history #comment %s ~ * ?'],
  ])('makes %j harmless in a message', async (message, arrived) => {
    const fakes = withFake(recorder);
    expect(await createDesktop({ platform: 'linux' }).send({ ...ping, message })).toEqual({
      ok: true,
    });
    expect(words(fakes.read('calls'))[1]).toBe(arrived);
    expect(fakes.read('ran')).toBe('');
  });

  it.each([
    ['-t 5', '–t 5'],
    ['$(id) `id` "x"', '$(id) `id` "x"'],
    ['Table & chairs', 'Table & chairs'],
    ['x'.repeat(300), `${'x'.repeat(119)}…`],
  ])('makes %j harmless in a title', async (title, arrived) => {
    const fakes = withFake(recorder);
    await createDesktop({ platform: 'linux' }).send({ ...ping, title });
    expect(words(fakes.read('calls'))[0]).toBe(arrived);
  });

  it('shows a ping that has no message', async () => {
    const fakes = withFake(recorder);
    expect(await createDesktop({ platform: 'linux' }).send({ ...ping, message: ' ' })).toEqual({
      ok: true,
    });
    expect(words(fakes.read('calls')).slice(0, 2)).toEqual(['recoat', '4 Oak chest: B on']);
  });

  it('takes words on standard error for a warning while the exit code is 0', async () => {
    withFake('echo "theme not found" >&2');
    expect(await createDesktop({ platform: 'linux' }).send(ping)).toEqual({ ok: true });
  });

  it('says which package is missing, and works once it is there', async () => {
    const fakes = fakeCommands({ 'later-notify-send': recorder });
    // In a process of its own: what node-notifier found out in this one stays with it.
    const { stdout } = await runProgram(
      `import {renameSync} from 'node:fs'
       process.env.PATH = '${fakes.bin}'
       const desktop = createDesktop({platform: 'linux', holdsProcess: true})
       const before = await desktop.send(ping)
       renameSync('${fakes.bin}/later-notify-send', '${fakes.bin}/notify-send')
       console.log(JSON.stringify([before, await desktop.send(ping)]))`,
    );
    expect(JSON.parse(stdout)).toEqual([
      {
        ok: false,
        why: expect.stringContaining('notify-send is missing. Install the package libnotify-bin'),
      },
      { ok: true },
    ]);
    expect(words(fakes.read('calls'))[0]).toBe(ping.title);
  });

  it('says that no service answers', async () => {
    withFake(
      'echo "GDBus.Error:org.freedesktop.DBus.Error.ServiceUnknown: The name org.freedesktop.Notifications was not provided by any .service files" >&2; exit 1',
    );
    expect(await createDesktop({ platform: 'linux' }).send(ping)).toEqual({
      ok: false,
      why: expect.stringMatching(/^no notification service answers on this desktop\./),
    });
  });

  it("gives any other reason in its own words, without the user's folder", async () => {
    withFake('echo "Unable to open $HOME/.theme" >&2; exit 3');
    const outcome = await createDesktop({ platform: 'linux' }).send(ping);
    expect(outcome).toEqual({ ok: false, why: 'notify-send gave up (Unable to open ~/.theme).' });
  });

  it('ends a program that hangs, within the time limit', async () => {
    const fakes = withFake('echo $$ >> "$HERE/pids"; exec sleep 600');
    const began = performance.now();
    const outcome = await createDesktop({ platform: 'linux', timeLimit: 1000 }).send(ping);
    expect(performance.now() - began).toBeLessThan(3000);
    expect(outcome).toEqual({ ok: false, why: expect.stringContaining('no answer within') });
    const [hung = 0] = pids(fakes.read('pids'));
    expect(hung).toBeGreaterThan(0);
    await expect.poll(() => isRunning(hung), { timeout: 3000 }).toBe(false);
  });

  it('has no more than two under way, and tries again when they are gone', async () => {
    const fakes = withFake('echo $$ >> "$HERE/pids"; exec sleep 600');
    const desktop = createDesktop({ platform: 'linux', timeLimit: 1000 });
    const first = [desktop.send(ping), desktop.send(ping)];
    expect(await desktop.send(ping)).toEqual({
      ok: false,
      why: '2 earlier notifications still have no answer from the desktop.',
    });
    await Promise.all(first);
    expect(pids(fakes.read('pids'))).toHaveLength(2);
    withFake(recorder);
    await expect.poll(() => desktop.send(ping), { timeout: 3000 }).toEqual({ ok: true });
  });

  it('keeps counting one that could not be ended, so that they never pile up', async () => {
    // What it leaves behind belongs to nobody here and goes on holding the pipes.
    const fakes = withFake('(sleep 600 & echo $! >> "$HERE/pids")');
    const desktop = createDesktop({ platform: 'linux', timeLimit: 1000 });
    await Promise.all([desktop.send(ping), desktop.send(ping)]);
    await pause(200);
    expect(await desktop.send(ping)).toEqual({
      ok: false,
      why: expect.stringContaining('2 earlier'),
    });
    const left = pids(fakes.read('pids'));
    expect(left).toHaveLength(2);
    for (const pid of left) process.kill(pid, 'SIGKILL');
    withFake(recorder);
    await expect.poll(() => desktop.send(ping), { timeout: 3000 }).toEqual({ ok: true });
  });

  it('does not keep a process running that has nothing else to do', async () => {
    const fakes = withFake('echo $$ >> "$HERE/pids"; exec sleep 600');
    const began = performance.now();
    await runProgram(
      `import {existsSync} from 'node:fs'
       void createDesktop({platform: 'linux'}).send(ping)
       const wait = setInterval(() => { if (existsSync('${fakes.file('pids')}')) clearInterval(wait) }, 10)`,
    );
    expect(performance.now() - began).toBeLessThan(4500);
    const left = pids(fakes.read('pids'));
    expect(left).toHaveLength(1);
    for (const pid of left) process.kill(pid, 'SIGKILL');
  });

  it('can hold a process that does nothing else until the answer', async () => {
    const fakes = withFake(`sleep 0.3; ${recorder}`);
    const { stdout } = await runProgram(
      "console.log(JSON.stringify(await createDesktop({platform: 'linux', holdsProcess: true}).send(ping)))",
    );
    expect(JSON.parse(stdout)).toEqual({ ok: true });
    expect(words(fakes.read('calls'))[0]).toBe(ping.title);
  });
});

/** A notifier of another platform: keeps what it was asked, answers as told. */
function otherNotifier(answer: (callback: (error: Error | null) => void) => void) {
  const asked: object[] = [];
  class NotNotifySend {}
  const notifier = {
    NotifySend: NotNotifySend,
    notify: (options: object, callback: (error: Error | null) => void) => {
      asked.push(options);
      answer(callback);
    },
  };
  return { asked, load: () => Promise.resolve(notifier as unknown as NodeNotifier) };
}

describe('a desktop ping on other systems', () => {
  it('asks macOS not to wait for the person', async () => {
    const { asked, load } = otherNotifier((callback) => callback(null));
    expect(await createDesktop({ platform: 'darwin', load }).send(ping)).toEqual({ ok: true });
    expect(asked).toEqual([
      { title: ping.title, message: ping.message, timeout: false, sound: true },
    ]);
  });

  it('takes silence for shown on Windows, where the answer comes when the toast is closed', async () => {
    const { asked, load } = otherNotifier(() => {});
    expect(
      await createDesktop({ platform: 'win32', load, timeLimit: 50, holdsProcess: true }).send({
        ...ping,
        loud: false,
      }),
    ).toEqual({ ok: true });
    expect(asked).toEqual([{ title: ping.title, message: ping.message, sound: false }]);
  });

  it.each([
    ['darwin', /System Settings, Notifications/],
    ['win32', /Settings, System, Notifications/],
  ] as const)('says on %s where notifications are turned on', async (platform, sentence) => {
    const { load } = otherNotifier((callback) => callback(new Error('spawn EACCES')));
    const outcome = await createDesktop({ platform, load }).send(ping);
    expect(outcome).toEqual({ ok: false, why: expect.stringMatching(sentence) });
    expect(outcome).toEqual({ ok: false, why: expect.stringContaining('spawn EACCES') });
  });

  it('survives a notifier that throws, answers twice or does not load', async () => {
    const throwing = otherNotifier(() => {
      throw new Error('boom');
    });
    const desktop = createDesktop({ platform: 'darwin', load: throwing.load });
    for (let attempt = 0; attempt < 4; attempt++) {
      expect(await desktop.send(ping)).toEqual({ ok: false, why: expect.stringContaining('boom') });
    }
    const twice = otherNotifier((callback) => {
      callback(null);
      callback(new Error('late'));
    });
    expect(await createDesktop({ platform: 'darwin', load: twice.load }).send(ping)).toEqual({
      ok: true,
    });
    const missing = createDesktop({
      platform: 'darwin',
      load: () => Promise.reject(new Error('no such package')),
    });
    await missing.warmUp();
    expect(await missing.send(ping)).toEqual({
      ok: false,
      why: expect.stringContaining('node-notifier does not load'),
    });
  });

  it('loads its notifier once, at the first ping or when warmed up', async () => {
    const { load } = otherNotifier((callback) => callback(null));
    let loads = 0;
    const counted = (): Promise<NodeNotifier> => {
      loads++;
      return load();
    };
    const desktop = createDesktop({ platform: 'darwin', load: counted });
    expect(loads).toBe(0);
    await desktop.warmUp();
    await desktop.send(ping);
    await desktop.send(ping);
    expect(loads).toBe(1);
  });
});
