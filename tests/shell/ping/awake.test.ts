import { spawn, type ChildProcess } from 'node:child_process';
import { EventEmitter, once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { awakeCommands } from '../../../src/shell/ping/awake-commands.ts';
import { createAwake, type Awake } from '../../../src/shell/ping/awake.ts';
import { fakeCommands, isRunning, pause } from './support/fake-commands.ts';

const onLinux = process.platform === 'linux';
const owner = fileURLToPath(new URL('support/awake-owner.ts', import.meta.url));

/** Like the real one: notes its arguments, then runs the command behind them and ends with it. */
const holder = `
echo "$@" >> "$HERE/calls"
echo $$ >> "$HERE/pids"
while [ "\${1#-}" != "$1" ]; do shift; done
"$@"`;
const refuser = 'echo "$@" >> "$HERE/calls"; echo "Failed to inhibit: Access denied" >&2; exit 1';

function awakeWith(
  scripts: Readonly<Record<string, string>>,
  options: { platform?: NodeJS.Platform; retryAfter?: number } = {},
) {
  const fakes = fakeCommands(scripts);
  const env = { ...process.env, PATH: `${fakes.bin}:/usr/bin:/bin` };
  const awake = createAwake({ platform: 'linux', env, spawn, ...options });
  onTestFinished(() => awake.want(null));
  const holders = (): number[] => fakes.read('pids').split('\n').filter(Boolean).map(Number);
  return { awake, fakes, holders };
}

const kept = (awake: Awake) => expect.poll(() => awake.state().kept, { timeout: 5000 });

describe.runIf(onLinux)('keeping a Linux machine awake', () => {
  it('holds idle and sleep, not the lid, while it is wanted', async () => {
    const { awake, fakes, holders } = awakeWith({ 'systemd-inhibit': holder });
    expect(awake.state()).toEqual({ wanted: false, kept: false, why: '' });
    awake.want('Oak chest, B on');
    expect(awake.state()).toEqual({
      wanted: true,
      kept: false,
      why: expect.stringContaining('just asked'),
    });
    await kept(awake).toBe(true);
    expect(awake.state().why).toBe('Kept awake for Oak chest, B on.');
    expect(fakes.read('calls')).toBe(
      '--what=idle:sleep --who=recoat --why=Oak chest, B on --mode=block cat\n',
    );

    const [pid = 0] = holders();
    expect(isRunning(pid)).toBe(true);
    awake.want(null);
    expect(awake.state()).toEqual({ wanted: false, kept: false, why: '' });
    await expect.poll(() => isRunning(pid), { timeout: 1500 }).toBe(false);
  });

  it('keeps one hold however often and for whatever it is wanted', async () => {
    const { awake, holders } = awakeWith({ 'systemd-inhibit': holder });
    for (const reason of ['chair', 'chair', 'table']) awake.want(reason);
    await kept(awake).toBe(true);
    awake.want('stool, wipe off');
    expect(awake.state().why).toContain('Kept awake for stool, wipe off.');
    await pause(100);
    expect(holders()).toHaveLength(1);
  });

  it('lets go of a hold that was still being asked for, and takes another', async () => {
    const { awake, holders } = awakeWith({ 'systemd-inhibit': `sleep 0.2; ${holder}` });
    awake.want('chair');
    await pause(50);
    awake.want(null);
    await expect.poll(() => holders().length, { timeout: 3000 }).toBe(1);
    await expect.poll(() => holders().some(isRunning), { timeout: 3000 }).toBe(false);
    expect(awake.state().kept).toBe(false);
    awake.want('table');
    await kept(awake).toBe(true);
    expect(holders()).toHaveLength(2);
  });

  it('falls back to idling alone where sleep may not be blocked, and says so', async () => {
    const { awake, fakes } = awakeWith({
      'systemd-inhibit': `case "$1" in *sleep*) ${refuser};; esac; ${holder}`,
    });
    awake.want('chair');
    await kept(awake).toBe(true);
    expect(awake.state().why).toContain('Only idling was ruled out');
    expect(
      fakes
        .read('calls')
        .split('\n')
        .map((call) => call.split(' ')[0]),
    ).toEqual(['--what=idle:sleep', '--what=idle', '']);
  });

  it('says why the machine may sleep where it is refused', async () => {
    const { awake } = awakeWith({ 'systemd-inhibit': refuser, 'elogind-inhibit': 'exit 1' });
    awake.want('chair');
    await expect
      .poll(() => awake.state().why)
      .toBe(
        'This machine may sleep: no ping then. systemd-inhibit was refused (Failed to inhibit: Access denied).',
      );
    expect(awake.state()).toMatchObject({ wanted: true, kept: false });
  });

  it('says which command is missing', async () => {
    const fakes = fakeCommands({});
    const awake = createAwake({ platform: 'linux', env: { PATH: fakes.bin }, spawn });
    awake.want('chair');
    await expect
      .poll(() => awake.state().why)
      .toBe('This machine may sleep: no ping then. The command systemd-inhibit is missing.');
  });

  it('takes no answer within the time for no hold', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    onTestFinished(() => void vi.useRealTimers());
    const { awake, holders } = awakeWith({
      'systemd-inhibit': `echo $$ >> "$HERE/pids"; exec sleep 600`,
    });
    awake.want('chair');
    await vi.waitFor(() => expect(holders()).toHaveLength(1));
    vi.advanceTimersByTime(5000);
    await vi.waitFor(() => expect(holders()).toHaveLength(2));
    vi.advanceTimersByTime(5000);
    await vi.waitFor(() => expect(awake.state().why).toContain('systemd-inhibit gave no answer.'));
    // It reads no input, so that closing the pipe is not enough.
    vi.advanceTimersByTime(2000);
    await vi.waitFor(() => expect(holders().some(isRunning)).toBe(false));
  });

  it('notices a hold that was lost and takes it again', async () => {
    const { awake, holders } = awakeWith(
      { 'systemd-inhibit': `${holder.replace('"$@"', 'exec "$@"')}` },
      { retryAfter: 300 },
    );
    awake.want('chair');
    await kept(awake).toBe(true);
    process.kill(holders()[0] ?? 0, 'SIGKILL');
    await kept(awake).toBe(false);
    expect(awake.state().why).toBe(
      'This machine may sleep: no ping then. systemd-inhibit ended by itself; it is asked again soon.',
    );
    await kept(awake).toBe(true);
    expect(holders()).toHaveLength(2);
  });

  it.each([
    ['is killed', 'stay', (child: ChildProcess) => child.kill('SIGKILL')],
    ['has nothing more to do', 'leave', () => true],
  ] as const)('ends with its owner when that one %s', async (_what, manner, end) => {
    const fakes = fakeCommands({ 'systemd-inhibit': holder });
    const child = spawn(process.execPath, [owner, manner], {
      env: { ...process.env, PATH: fakes.path },
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    onTestFinished(() => void child.kill('SIGKILL'));
    const ended = once(child, 'exit');
    await once(child.stdout, 'data');
    const pid = Number(fakes.read('pids'));
    if (manner === 'stay') expect(isRunning(pid)).toBe(true);
    end(child);
    await ended;
    await expect.poll(() => isRunning(pid), { timeout: 3000 }).toBe(false);
  });
});

describe('keeping other machines awake', () => {
  it.runIf(onLinux)('uses caffeinate on macOS, for as long as its utility runs', async () => {
    const { awake, fakes, holders } = awakeWith({ caffeinate: holder }, { platform: 'darwin' });
    awake.want('chair');
    await kept(awake).toBe(true);
    expect(fakes.read('calls')).toBe('-i cat\n');
    awake.want(null);
    await expect.poll(() => holders().some(isRunning)).toBe(false);
  });

  it('asks Windows through PowerShell, also from Linux inside it', () => {
    const commands = awakeCommands('win32', {});
    expect(commands.map(({ file }) => file)).toEqual(['powershell.exe']);
    expect(awakeCommands('linux', { WSL_DISTRO_NAME: 'Debian' })).toEqual(commands);
    const script = commands[0]?.args('chair').at(-1);
    // ES_CONTINUOUS | ES_SYSTEM_REQUIRED, winbase.h: 0x80000000 and 0x00000001.
    expect(script).toContain('SetThreadExecutionState(2147483649)');
    // Quotation marks would have to survive two command line parsers.
    expect(script).not.toContain('"');
  });

  it('says that nothing is known for another system', () => {
    const awake = createAwake({ platform: 'freebsd', env: {}, spawn });
    awake.want('chair');
    expect(awake.state()).toEqual({
      wanted: true,
      kept: false,
      why: 'This machine may sleep: no ping then. Nothing is known that keeps freebsd awake.',
    });
  });

  /** A child that does only what the test says. */
  const toldChild = () => {
    const stdout = new EventEmitter();
    const child = Object.assign(new EventEmitter(), {
      stdout,
      exitCode: null as number | null,
      signalCode: null,
    });
    return {
      child,
      answers: () => stdout.emit('data', Buffer.from('held\n')),
      exits: () => {
        child.exitCode = 0;
        child.emit('exit', 0, null);
      },
      closes: () => child.emit('close', 0, null),
    };
  };

  it('takes no answer from a child that has ended for a hold', () => {
    const { child, answers, exits, closes } = toldChild();
    const awake = createAwake({ platform: 'darwin', env: {}, spawn: (() => child) as never });
    awake.want('chair');
    exits();
    answers();
    closes();
    expect(awake.state()).toMatchObject({ wanted: true, kept: false });
  });

  it('does not ask again for a hold that was lost, once it is not wanted any more', () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    onTestFinished(() => void vi.useRealTimers());
    const { child, answers, exits } = toldChild();
    const starting = vi.fn(() => child);
    const awake = createAwake({ platform: 'darwin', env: {}, spawn: starting as never });
    awake.want('chair');
    answers();
    expect(awake.state().kept).toBe(true);
    exits();
    awake.want(null);
    vi.advanceTimersByTime(60_000);
    expect(starting).toHaveBeenCalledTimes(1);
  });

  it('survives a system that starts no process', () => {
    const refused = () => {
      throw new Error('spawn EPERM');
    };
    const awake = createAwake({ platform: 'darwin', env: {}, spawn: refused });
    awake.want('chair');
    expect(awake.state().why).toContain('caffeinate does not start (spawn EPERM).');
  });
});
