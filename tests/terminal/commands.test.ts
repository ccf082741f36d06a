import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { closeSync, existsSync, openSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  cleanEnvironment,
  keys,
  openTerminal,
  packageFolder,
  startFile,
  temporaryFolder,
} from './support/terminal.ts';

type Ended = { readonly code: number | null; readonly out: string; readonly err: string };

const environment = (folder: string): NodeJS.ProcessEnv => ({
  ...cleanEnvironment(),
  RECOAT_FOLDER: folder,
  // What a pipe gets must not depend on what the terminal can do.
  FORCE_COLOR: '1',
  COLORTERM: 'truecolor',
});

/** The built program as a process of its own, with no terminal at either end. */
function run(folder: string, ...line: readonly string[]): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, [startFile, ...line], {
    cwd: packageFolder,
    encoding: 'utf8',
    env: environment(folder),
    input: '',
  });
  return { code: status, out: stdout, err: stderr };
}

describe('the program without a terminal', () => {
  it('prints the bench and ends well, also on its first run', () => {
    const folder = temporaryFolder();
    const { code, out, err } = run(folder);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^Bench, .*, no reading yet\nThe bench is empty\.\n$/);
    expect(existsSync(folder)).toBe(false);
  });

  it('works from the first piece to the record of it, and answers as JSON', () => {
    const folder = temporaryFolder();
    expect(run(folder, 'add', 'Oak chest', '--schedule', 'paint-and-wax').code).toBe(0);
    expect(run(folder, 'pick-up', 'oak')).toMatchObject({ code: 0, err: '' });
    const bench = JSON.parse(run(folder, '--json').out) as { rows: { rank: string }[] };
    expect(bench.rows.map(({ rank }) => rank)).toEqual(['in hand']);
    expect(run(folder, 'done', '1').code).toBe(0);
    expect(run(folder, 'put-down').code).toBe(0);
    const card = JSON.parse(run(folder, 'job-card', '1', '--json').out) as {
      rows: { row: string; done?: boolean }[];
    };
    expect(card.rows).toMatchObject([{ row: 'step', done: true }]);
    expect(run(folder, 'take-back').out).toContain('taken back: put down');
  });

  it('sends no escape sequence into a pipe, whatever the environment promises', () => {
    const folder = temporaryFolder();
    run(folder, 'add', 'Oak\u001b[31m chest', '--schedule', 'bleach-and-clear');
    for (const line of [[], ['steps', '1'], ['hours', '1'], ['keys'], ['--help'], ['overnight']]) {
      const { code, out, err } = run(folder, ...line);
      expect({ code, err }, line.join(' ')).toEqual({ code: 0, err: '' });
      expect(out, line.join(' ')).not.toContain('\u001b');
      expect(out.length, line.join(' ')).toBeGreaterThan(20);
    }
  });

  it.each([
    [['pick-up', 'Elm'], 2, 'Not picked up: there is no piece "Elm".'],
    [['pick-up', 'Oak chst'], 2, 'Nearest: 1 Oak chest.'],
    [['put-down'], 1, 'Not put down: nothing is in hand.'],
    [['timer', 'clamps', '-5'], 64, 'Not started: "-5" is no length of time.'],
    [['timer', 'clamps', '90x'], 64, 'Not started: "90x": "x" is no unit of time here.'],
    [['timer', 'clamps', '1:99'], 64, 'Not started: "1:99" has 99 minutes in its hour'],
    [['pikc-up', '1'], 64, 'Nearest: pick-up'],
  ])('refuses %j with exit code %i', (line, code, says) => {
    const folder = temporaryFolder();
    run(folder, 'add', 'Oak chest', '--schedule', 'paint-and-wax');
    const ended = run(folder, ...line);
    expect(ended).toMatchObject({ code, out: '' });
    expect(ended.err).toContain(says);
    expect(ended.err.split('\n')).toHaveLength(2);
  });

  it('says so where the store can’t be written, and ends with 3', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, '..', 'plain'), '');
    const ended = run(join(folder, '..', 'plain', 'store'), 'conditions', '19C 55%');
    expect(ended).toMatchObject({ code: 3, out: '' });
    expect(ended.err).toMatch(/^Not stored: /);
  });

  it('shows the invented shop and keeps nothing of it', () => {
    const folder = temporaryFolder();
    const { code, out, err } = run(folder, 'demo');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('Beech stool');
    const { rows } = JSON.parse(run(folder, 'demo', 'bench', '--json').out) as {
      rows: unknown[];
    };
    expect(rows).toHaveLength(8);
    expect(existsSync(folder)).toBe(false);
  });

  it('ends quietly when whoever reads has gone', async () => {
    const child = spawn(process.execPath, [startFile, '--help'], {
      cwd: packageFolder,
      env: environment(temporaryFolder()),
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    child.stdout.destroy();
    let err = '';
    child.stderr.on('data', (data: Buffer) => (err += data.toString()));
    const [code] = (await once(child, 'close')) as [number | null];
    expect({ code, err }).toEqual({ code: 0, err: '' });
  });

  it('writes a long answer whole into a file', () => {
    const folder = temporaryFolder();
    run(folder, 'add', 'Oak chest', '--schedule', 'bleach-and-clear');
    for (let day = 0; day < 3; day += 1) run(folder, 'note', '1', 'x'.repeat(60_000));
    const file = join(folder, 'answer.json');
    const answer = openSync(file, 'w');
    spawnSync(process.execPath, [startFile, 'job-card', '1', '--json'], {
      cwd: packageFolder,
      env: environment(folder),
      stdio: ['ignore', answer, 'ignore'],
    });
    closeSync(answer);
    const text = readFileSync(file, 'utf8');
    expect(text.length).toBeGreaterThan(180_000);
    expect((JSON.parse(text) as { rows: unknown[] }).rows).toHaveLength(3);
    const piped = run(folder, 'job-card', '1', '--json');
    expect(piped.out.length).toBe(text.length);
  });
});

describe('a command in a terminal', () => {
  it('asks before it removes a piece', async () => {
    const folder = temporaryFolder();
    run(folder, 'add', 'Oak chest', '--schedule', 'paint-and-wax');
    const no = openTerminal({ folder, args: ['remove', '1'] });
    await no.shows('Remove 1 Oak chest?');
    await no.press('n', keys.enter);
    expect((await no.ends()).code).toBe(1);
    expect(no.screen()).toContain('Not removed: you said no.');
    const yes = openTerminal({ folder, args: ['remove', '1'] });
    await yes.shows('Remove 1 Oak chest?');
    await yes.press('y', keys.enter);
    expect((await yes.ends()).code).toBe(0);
    expect(run(folder).out).toContain('The bench is empty.');
  });

  it('prints the bench as text where it is asked for by name', async () => {
    const terminal = openTerminal({ args: ['bench'] });
    expect((await terminal.ends()).code).toBe(0);
    expect(terminal.screen()).toContain('The bench is empty.');
    expect(terminal.isAlternateScreen()).toBe(false);
  });
});

it('shows on an open screen what a command recorded', async () => {
  const terminal = openTerminal();
  await terminal.shows('The bench is empty.');
  await terminal.settles();
  expect(run(terminal.folder, 'add', 'Oak chest', '--schedule', 'paint-and-wax').code).toBe(0);
  await terminal.shows('Oak chest');
  expect(run(terminal.folder, 'pick-up', '1').code).toBe(0);
  await terminal.shows('in hand since');
});
