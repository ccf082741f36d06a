import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { unitText, type UnitInput } from '../../src/shell/keeper/units.ts';

/*
 * What starts the keeper under a supervisor, held against checkers from outside: systemd's own, and libxml2 with the
 * document type of property lists and the schema of Windows tasks.
 */

const units = join(import.meta.dirname, 'units');

function folder(): string {
  const made = mkdtempSync(join(tmpdir(), 'recoat-units-'));
  onTestFinished(() => rmSync(made, { recursive: true }));
  return made;
}

const plain: UnitInput = {
  node: process.execPath,
  entry: '/opt/recoat/dist/start.cjs',
  folder: '/home/me/.local/share/recoat',
  user: 'SHOP\\me',
};
const odd: UnitInput = {
  node: process.execPath,
  entry: '/opt/a <b> & "c"/start.cjs',
  folder: "/home/50 % $HOME's\\new",
  user: 'SHOP\\ann & co',
};
/** What a checker says of a file; nothing where it finds nothing. */
function says(command: string, ...words: readonly string[]): string {
  const runtime = folder();
  const { status, stdout, stderr } = spawnSync(command, words, {
    encoding: 'utf8',
    // What a shell says of a language that the machine lacks is nothing about the file.
    env: { ...process.env, XDG_RUNTIME_DIR: runtime, LC_ALL: 'C', LANG: 'C' },
  });
  return status === 0 ? stderr : `${status}: ${stdout}${stderr}`;
}

const isHere = (command: string): boolean =>
  spawnSync(command, ['--version'], { stdio: 'ignore' }).status === 0;

describe.skipIf(!isHere('systemd-analyze'))(
  'the unit for systemd, as systemd-analyze reads it (skipped where that is missing)',
  () => {
    const verified = (text: string): string => {
      const file = join(folder(), 'recoat-keeper.service');
      writeFileSync(file, text);
      return says('systemd-analyze', '--user', 'verify', file);
    };

    it.each([
      ['plain names', plain],
      ['names with signs that mean something to it', odd],
    ])('is in order with %s', (_, input) => {
      expect(verified(unitText('systemd', input))).toBe('');
    });

    it('finds a Node whose own name has such signs', () => {
      const place = join(folder(), `50 % $HOME's "x" \\n`);
      mkdirSync(place);
      symlinkSync(process.execPath, join(place, 'node'));
      expect(verified(unitText('systemd', { ...plain, node: join(place, 'node') }))).toBe('');
      const spaced = join(folder(), '50 % of it');
      mkdirSync(spaced);
      symlinkSync(process.execPath, join(spaced, 'node'));
      expect(verified(unitText('systemd', { ...plain, node: join(spaced, 'node') }))).toBe('');
    });

    it('would be found out if it were wrong', () => {
      const text = unitText('systemd', plain);
      expect(verified(text.replace('on-failure', 'sometimes'))).toContain('sometimes');
      expect(verified(unitText('systemd', { ...plain, node: '/no/such/node' }))).toContain(
        '/no/such/node',
      );
    });
  },
);

describe.skipIf(!isHere('xmllint'))(
  'the units in XML, as libxml2 reads them (skipped where xmllint is missing)',
  () => {
    const file = (text: string): string => {
      const path = join(folder(), 'unit.xml');
      writeFileSync(path, text);
      return path;
    };
    // The copy here stands for the one that the unit names.
    const type = 'http://www.apple.com/DTDs/PropertyList-1.0.dtd';
    const asList = (text: string): string => {
      expect(text).toContain(`"${type}"`);
      const local = file(text.replace(type, join(units, 'property-list.dtd')));
      return says('xmllint', '--noout', '--nonet', '--valid', local);
    };
    const asTask = (text: string): string =>
      says('xmllint', '--noout', '--nonet', '--schema', join(units, 'task.xsd'), file(text));
    const valueAt = (text: string, path: string): string =>
      spawnSync('xmllint', ['--xpath', `string(${path})`, file(text)], {
        encoding: 'utf8',
      }).stdout.replace(/\n$/, '');

    it.each([
      ['plain names', plain],
      ['names with signs that mean something to XML', odd],
    ])('fit their document type and schema with %s', (_, input) => {
      expect(asList(unitText('launchd', input))).toBe('');
      expect(asTask(unitText('windows', input))).toMatch(/^\S+ validates\n$/);
      expect(asTask(unitText('windows', { ...input, user: null }))).toMatch(/^\S+ validates\n$/);
    });

    it('keep every name as it is', () => {
      const list = unitText('launchd', odd);
      const words = [odd.node, odd.entry, 'keep', '--stay', '--folder', odd.folder];
      expect(words.map((__, at) => valueAt(list, `//array/string[${at + 1}]`))).toEqual(words);
      const task = unitText('windows', odd);
      expect(valueAt(task, "//*[local-name()='Command']")).toBe(odd.node);
      expect(valueAt(task, "//*[local-name()='UserId']")).toBe(odd.user);
    });

    it('would be found out if they were wrong', () => {
      expect(asList(unitText('launchd', plain).replace('<true/>', ''))).toContain('dict');
      const task = unitText('windows', plain);
      expect(asTask(task.replace('PT1M', 'PT1S'))).toContain('Interval');
      expect(asTask(task.replace('<Enabled>true</Enabled>', ''))).toMatch(/validates/);
      expect(asTask(task.replace(/(<Enabled>.*)\n(\s+<UserId>.*)/, '$2\n$1'))).toContain('Enabled');
    });
  },
);

describe.skipIf(!isHere('plistutil'))(
  'the unit for launchd, as libplist reads it (skipped where plistutil is missing)',
  () => {
    it('is a property list with every word of the command', () => {
      const path = join(folder(), 'unit.plist');
      writeFileSync(path, unitText('launchd', plain));
      expect(says('plistutil', '-i', path, '-f', 'bin', '-o', `${path}.bin`)).toBe('');
      const { stdout } = spawnSync('plistutil', ['-i', `${path}.bin`, '-f', 'xml'], {
        encoding: 'utf8',
      });
      for (const word of [plain.node, plain.entry, 'keep', '--stay', plain.folder])
        expect(stdout).toContain(`<string>${word}</string>`);
    });
  },
);
