import { spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { createHook, hookInput } from '../../../src/shell/ping/hook.ts';
import { createPinger, type Ping } from '../../../src/shell/ping/pinger.ts';
import { fakeCommands } from './support/fake-commands.ts';

const ping: Ping = {
  id: 'c1',
  title: '4 Oak chest: B on',
  body: 'A dries at 14:29',
  loud: true,
};

const hookWith = (script: string, timeLimit?: number) => {
  const fakes = fakeCommands({ hook: script });
  const send = createHook({
    env: { PATH: fakes.path },
    ...(timeLimit === undefined ? {} : { timeLimit }),
  });
  return { ...fakes, send: (...words: readonly string[]) => send(['hook', ...words], ping) };
};

describe('a hook', () => {
  it('gets the ping as one line of JSON and its words untouched, through no shell', async () => {
    const nasty = '; touch "$HERE/ran" $(touch ran) `touch ran` | *';
    const hook = hookWith('cat > "$HERE/input"; printf "%s" "$1" > "$HERE/word"');
    expect(await hook.send(nasty)).toEqual({ ok: true });
    expect(JSON.parse(hook.read('input'))).toEqual({
      ping: 'c1',
      title: '4 Oak chest: B on',
      body: 'A dries at 14:29',
      loud: true,
    });
    expect(hook.read('input').split('\n')).toHaveLength(2);
    expect(hook.read('word')).toBe(nasty);
    expect(hook.read('ran')).toBe('');
  });

  it('gets no control character of a name', () => {
    const input = hookInput({ ...ping, title: 'Box\u001b]0;x\u0007\n\u202eb' });
    expect((JSON.parse(input) as { title: string }).title).toBe('Box - b');
  });

  it('tells how it failed, with the end of its complaint', async () => {
    const hook = hookWith('echo "no signal" >&2; exit 3');
    expect(await hook.send()).toEqual({ ok: false, why: 'hook ended with 3: no signal' });
  });

  it('may close its input unread', async () => {
    expect(await hookWith('exec <&-; exit 0').send()).toEqual({ ok: true });
  });

  it('is ended when it hangs, with what it started', async () => {
    const hook = hookWith('sleep 60 & echo $! > "$HERE/pid"; wait', 300);
    expect(await hook.send()).toEqual({
      ok: false,
      why: 'hook had not ended after 0 s and was ended.',
    });
    const pid = Number(hook.read('pid'));
    await vi.waitFor(() => expect(() => process.kill(pid, 0)).toThrow(), { timeout: 3000 });
  });

  it('is not started a fifth time while four of its runs hang, and again once one has ended', async () => {
    const hook = hookWith('while [ ! -e "$HERE/$1" ]; do sleep 0.05; done');
    const runs = ['1', '2', '3', '4'].map((run) => hook.send(run));
    expect(await hook.send('1')).toEqual({ ok: false, why: '4 of its runs have not ended yet.' });
    writeFileSync(hook.file('1'), '');
    expect(await runs[0]).toEqual({ ok: true });
    expect(await hook.send('1')).toEqual({ ok: true });
    for (const run of ['2', '3', '4']) writeFileSync(hook.file(run), '');
    expect(await Promise.all(runs)).toEqual(runs.map(() => ({ ok: true })));
  });

  it('has gone out when it ends, whatever it left running in the background', async () => {
    const hook = hookWith('sleep 60 & echo $! > "$HERE/pid"; exit 0', 5000);
    expect(await hook.send()).toEqual({ ok: true });
    const pid = Number(hook.read('pid'));
    expect(() => process.kill(pid, 0)).not.toThrow();
    process.kill(pid, 'SIGKILL');
  });

  it('may complain at any length, of which the end is told, with its letters whole', async () => {
    const hook = hookWith(
      'head -c 20000000 /dev/zero | tr "\\\\0" x >&2; printf "\\303" >&2; sleep 0.1; printf "\\251t\\303\\251" >&2; exit 2',
    );
    const outcome = await hook.send();
    expect(outcome).toMatchObject({
      ok: false,
      why: expect.stringMatching(/^hook ended with 2: x+été$/),
    });
    if (!outcome.ok) expect(outcome.why.length).toBeLessThan(400);
  });

  it('says what is missing, and what may not be run', async () => {
    const send = createHook({ env: { PATH: '/nowhere' } });
    expect(await send(['no-such-hook'], ping)).toEqual({
      ok: false,
      why: 'the program no-such-hook is not there.',
    });
    expect(await send([import.meta.filename], ping)).toMatchObject({
      ok: false,
      why: expect.stringMatching(/may not be run|is not there/) as string,
    });
  });
});

describe('a pinger with a hook', () => {
  const pingerWith = (script: string) => {
    const fakes = fakeCommands({ hook: script });
    const notices: string[] = [];
    const pinger = createPinger({
      settings: () => ({ desktop: false, bell: 'never', terminal: 'off', hook: '["hook"]' }),
      write: null,
      platform: 'linux',
      env: { PATH: fakes.path },
      onNotice: (text) => notices.push(text),
    });
    return { pinger, notices, ...fakes };
  };

  it('sends by it once, and a loud one that rings again not anew', async () => {
    const { pinger, read } = pingerWith('cat >> "$HERE/input"');
    expect(await pinger.send(ping)).toEqual({ ways: ['hook'], failures: [] });
    expect(await pinger.send({ ...ping, repeat: true })).toEqual({ ways: [], failures: [] });
    expect(read('input').trim().split('\n')).toHaveLength(1);
  });

  it('tells once that it fails, and puts every failure on record', async () => {
    const { pinger, notices } = pingerWith('exit 1');
    const failed = { ways: [], failures: ['hook: hook ended with 1.'] };
    expect(await pinger.send(ping)).toEqual(failed);
    expect(await pinger.send(ping)).toEqual(failed);
    expect(notices).toEqual(['No ping by the hook: hook ended with 1. u: settings.']);
  });
});

const hasCurl = spawnSync('curl', ['--version'], { stdio: 'ignore' }).status === 0;

describe.skipIf(!hasCurl)('curl as a hook (skipped where it is missing)', () => {
  const post = [
    'curl',
    '-sS',
    '--fail',
    '-H',
    'Content-Type: application/json',
    '-d',
    '@-',
  ] as const;
  const send = createHook({ env: { PATH: process.env.PATH } });
  const named: Ping = { ...ping, title: '4 "Ünïcode" 抽斗 $(id): B on' };

  /** A server that answers with that status and keeps what it was sent. */
  async function serving(status: number) {
    const posted: string[] = [];
    const server = createServer((request, response) => {
      request.setEncoding('utf8');
      let body = '';
      request.on('data', (text: string) => (body += text));
      request.on('end', () => {
        posted.push(body);
        response.writeHead(status).end();
      });
    });
    server.listen(0, '127.0.0.1');
    await once(server, 'listening');
    onTestFinished(() => void server.close());
    return { posted, url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/` };
  }

  it('posts the ping as JSON', async () => {
    const { posted, url } = await serving(204);
    expect(await send([...post, url], named)).toEqual({ ok: true });
    expect(posted.map((body) => JSON.parse(body) as unknown)).toEqual([
      { ping: 'c1', title: named.title, body: named.body, loud: true },
    ]);
  });

  it('is told with what it says itself where the other side refuses, or is not there', async () => {
    const { url } = await serving(503);
    expect(await send([...post, url], named)).toEqual({
      ok: false,
      why: expect.stringMatching(/^curl ended with 22: curl: .*503/),
    });
    expect(await send([...post, 'http://127.0.0.1:1/'], named)).toEqual({
      ok: false,
      why: expect.stringMatching(/^curl ended with 7: curl: /),
    });
  });
});
