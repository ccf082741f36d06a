import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };
import { isFailure } from '../../src/commands/line/command.ts';
import { exitCodes } from '../../src/commands/line/exit-codes.ts';
import { findCommand } from '../../src/commands/line/find-command.ts';
import { commands } from '../../src/commands/line/table.ts';
import { dataFolder } from '../../src/persist/index.ts';
import { readScheduleFolders } from '../../src/persist/schedules/index.ts';
import { loadSchedules } from '../../src/persist/schedules/parsing.ts';
import { listedAct, listedActs, moreActs } from '../../src/views/bench/pad-list.ts';
import { keyWord, standardKeys, type Act } from '../../src/views/keys/key-map.ts';
import { pieceKeys } from '../../src/views/piece/piece-keys.ts';

const packageRoot = join(import.meta.dirname, '..', '..');
const text = (...path: string[]): string => readFileSync(join(packageRoot, ...path), 'utf8');
const readme = text('README.md');

/** The rows of the table that follows these words, each as its cells. */
function tableAfter(words: string): readonly (readonly string[])[] {
  const begins = readme.indexOf(words);
  if (begins < 0) throw new Error(`the README doesn't say "${words}"`);
  const lines = readme.slice(begins + words.length).split('\n');
  const first = lines.findIndex((line) => line.startsWith('|'));
  const rows: string[][] = [];
  for (const line of lines.slice(first + 2)) {
    if (!line.startsWith('|')) break;
    rows.push(
      line
        .slice(1, -1)
        .split('|')
        .map((cell) => cell.trim()),
    );
  }
  return rows;
}

/** Lines of the code blocks in that language. */
const codeLines = (language: string): readonly string[] =>
  [...readme.matchAll(new RegExp(`^\`\`\`${language}\\n([^]*?)^\`\`\`$`, 'gm'))].flatMap(
    ([, code = '']) => code.trimEnd().split('\n'),
  );

const inlineCode = [...readme.matchAll(/`([^`\n]+)`/g)].map(([, code = '']) => code);

describe('the commands of the README', () => {
  it('are npm ci, npm start and npm test, which package.json has', () => {
    expect(codeLines('sh')).toEqual(expect.arrayContaining(['npm ci', 'npm start', 'npm test']));
    expect(manifest.scripts).toMatchObject({
      start: expect.any(String),
      test: expect.any(String),
    });
  });

  it('are what the continuous check runs, no more and no less', () => {
    const run = text('.ci', 'run')
      .split('\n')
      .filter((line) => line.startsWith('npm'));
    expect(run).toEqual(['npm ci', 'npm test']);
  });

  it('name the oldest Node that the program takes', () => {
    expect(manifest.engines.node).toBe('>=22.13');
    expect(readme).toContain('Node 22.13 or later');
  });
});

describe('the keys of the README', () => {
  const keysOf = (keys: readonly string[]): string =>
    keys.map((key) => `\`${keyWord(key)}\``).join(' or ');
  const saysOf = (act: Act | null): string =>
    standardKeys.find((binding) => binding.act === act)?.says ?? '';

  it('are those of the key map, each with what it does', () => {
    const [digits, ...told] = [
      ...tableAfter('With gloves on:'),
      ...tableAfter('With clean hands:'),
    ];
    expect(digits?.[0]).toBe('`1` to `9`');
    const inOrder = (rows: readonly (readonly string[])[]) =>
      rows.toSorted(([a = ''], [b = '']) => (a < b ? -1 : 1));
    expect(inOrder(told)).toEqual(
      inOrder(standardKeys.map(({ keys, says }) => [keysOf(keys), says])),
    );
  });

  it('are on the numeric pad what the key map and the list behind / make of them', () => {
    const [digits, ...told] = tableAfter('On a bare numeric pad');
    expect(digits?.[0]).toBe('`1` to `9`');
    const bare = standardKeys.flatMap(({ keys, says }) =>
      keys
        .filter((key) => ['enter', '+', '*', '-', '.', '0'].includes(key))
        .map((key) => [`\`${keyWord(key)}\``, says]),
    );
    const listed = listedActs(standardKeys).map((act, index) => [
      `\`/ ${index + 1}\``,
      saysOf(act),
    ]);
    const more = moreActs.map((act, index) => [`\`/ 9 ${index + 1}\``, saysOf(act)]);
    const zero = ['`/ 0`', saysOf(listedAct(standardKeys, 0))];
    expect(told.slice(bare.length)).toEqual([...listed, zero, ...more]);
    expect(new Set(told.slice(0, bare.length))).toEqual(new Set(bare));
  });

  it('are inside an opened piece those of its own list', () => {
    expect(tableAfter('Inside an opened piece')).toEqual(
      pieceKeys.map(({ keys, says }) => [keysOf(keys), says]),
    );
  });
});

describe('the command line in the README', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'recoat-readme-'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const told = [...inlineCode, ...codeLines('sh')]
    .filter((code) => /^(npx )?recoat /.test(code))
    .map((code) => code.replace(/^(npx )?recoat /, '').split(' '));

  it('names commands that there are', () => {
    const known = told.filter(([name = '']) => /^[a-z]/.test(name) && name !== 'demo');
    expect(known.length).toBeGreaterThan(40);
    const unknown = known.filter((words) => {
      const found = findCommand(words);
      return typeof found !== 'string' && isFailure(found);
    });
    expect(unknown).toEqual([]);
  });

  it('names all of them', () => {
    const names = tableAfter('says what that one takes.')
      .flat()
      .filter((cell) => cell !== '')
      .map((cell) => cell.replace(/^`recoat (.*)`$/, '$1'));
    expect(names.toSorted()).toEqual([...Object.keys(commands), 'demo'].toSorted());
  });

  it('gives examples that work, one after the other', () => {
    const examples = told.filter(
      (words) =>
        // The bare name of a command is no example of it.
        words.length > 1 &&
        !Object.hasOwn(commands, words.join(' ')) &&
        !words.includes('demo') &&
        words.every((word) => !/^[A-Z]+$|^\.+$/.test(word)),
    );
    expect(examples.length).toBeGreaterThan(10);
    // What is told of a piece comes after the piece was added.
    const isAdding = ([name]: readonly string[]): boolean => name === 'add';
    const inOrder = examples.toSorted((a, b) => Number(isAdding(b)) - Number(isAdding(a)));
    const failed = inOrder.flatMap((words) => {
      const run = spawnSync(process.execPath, [join(packageRoot, 'dist', 'start.cjs'), ...words], {
        encoding: 'utf8',
        env: { ...process.env, RECOAT_FOLDER: join(folder, 'store') },
      });
      return run.status === 0 ? [] : [`${words.join(' ')}: ${run.stderr}`];
    });
    expect(failed).toEqual([]);
  });

  it('lists the exit codes', () => {
    const codes = tableAfter('runs a command on the invented shop.').map(([code]) => Number(code));
    expect(codes).toEqual(Object.values(exitCodes));
  });
});

describe('the finishing schedule in the README', () => {
  it('has nothing wrong, beside the templates that come along', async () => {
    const templates = join(packageRoot, 'templates');
    const shipped = await readScheduleFolders({ built: null, templates, own: null });
    const written = codeLines('yaml').join('\n');
    const { schedules, problems } = loadSchedules(
      [{ path: 'README.md', text: written, own: true }],
      shipped,
    );
    expect(problems).toEqual([]);
    expect(schedules.map(({ id }) => id)).toContain('oil-and-wax');
  });
});

describe('the data folder in the README', () => {
  it.each([
    ['linux', ''],
    ['darwin', ''],
    ['win32', '%LOCALAPPDATA%'],
  ] as const)('is the one of the program on %s', (platform, appData) => {
    const env = { LOCALAPPDATA: appData };
    expect(tableAfter('## Where data lives').flat().join(' ')).toContain(
      dataFolder({ env, platform, home: '~', from: '/' }),
    );
  });
});

describe('the pictures of the README', () => {
  const named = [...readme.matchAll(/\]\(docs\/pictures\/([\w-]+\.svg)\)/g)].map(
    ([, name = '']) => name,
  );

  it('are those in docs/pictures', () => {
    expect(new Set(named)).toEqual(new Set(readdirSync(join(packageRoot, 'docs', 'pictures'))));
  });

  it.each(named)('%s is a small SVG with words in it', (name) => {
    const picture = text('docs', 'pictures', name);
    expect(picture.length).toBeLessThan(60_000);
    expect(picture).toMatch(/^<svg [^]*<\/svg>\n$/);
    expect(picture.match(/<text /g)?.length).toBeGreaterThan(3);
  });
});
