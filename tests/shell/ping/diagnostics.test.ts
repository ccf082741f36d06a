import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it, onTestFinished } from 'vitest';
import { formatDiagnostic, type PingDiagnostic } from '../../../src/shell/ping/diagnostic-line.ts';
import {
  createDiagnostics,
  diagnosticsFile,
  olderDiagnosticsFile,
} from '../../../src/shell/ping/diagnostics.ts';
import { anyText } from './support/any-text.ts';

const at = Date.UTC(2026, 10, 28, 14, 20, 3, 120);
const acknowledged: PingDiagnostic = { at, what: 'acknowledged', claim: 'c12' };

function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'recoat-diagnostics-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

describe('a diagnostic line', () => {
  it.each([
    [
      {
        at,
        what: 'due',
        pings: ['w1/open', 'w2/late'],
        piece: 'Oak chest',
        loud: true,
        dueAt: at - 1000,
      },
      'due pings=w1/open,w2/late piece="Oak chest" loud=true dueAt=2026-11-28T14:20:02.120Z',
    ],
    [
      { at, what: 'claimed', claim: 'c12', pings: ['w1/open'], lateMs: 400 },
      'claimed claim=c12 pings=w1/open late=0s',
    ],
    [
      {
        at,
        what: 'sent',
        claim: 'c12',
        piece: null,
        ways: ['bell', 'desktop'],
        failures: [],
        lateMs: 12_400,
      },
      'sent claim=c12 ways=bell,desktop late=12s',
    ],
    [
      {
        at,
        what: 'sent',
        claim: 'c12',
        piece: 'Chair',
        ways: [],
        failures: ['bell: gone.', 'desktop: "x".'],
        lateMs: 0,
      },
      'sent claim=c12 piece=Chair ways=none failed="bell: gone." failed="desktop: \\"x\\"." late=0s',
    ],
    [acknowledged, 'acknowledged claim=c12'],
    [
      { at, what: 'dropped', pings: ['w1/open'], piece: 'Chair', because: 'fell before the start' },
      'dropped pings=w1/open piece=Chair because="fell before the start"',
    ],
    [{ at, what: 'awake', kept: false, why: 'refused' }, 'awake kept=false why=refused'],
    [{ at, what: 'began', by: 'bench', pid: 41 }, 'began by=bench pid=41'],
    [{ at, what: 'ended', by: 'bench', pid: 41 }, 'ended by=bench pid=41'],
  ] satisfies [PingDiagnostic, string][])('tells %o', (event, line) => {
    expect(formatDiagnostic(event)).toBe(`2026-11-28T14:20:03.120Z ${line}`);
  });

  it('shows control characters instead of sending them', () => {
    const line = formatDiagnostic({
      at,
      what: 'dropped',
      pings: [],
      piece: 'a\u001b[2J\n\u0007\u007f\u009b\u202eb',
      because: 'x',
    });
    expect(line).toContain(
      'pings=none piece="a\\u001b[2J\\n\\u0007\\u007f\\u009b\\u202eb" because=x',
    );
  });

  it('is one short line of visible characters, whatever the piece is called', () => {
    fc.assert(
      fc.property(anyText(60), anyText(2000), (piece, because) => {
        const line = formatDiagnostic({ at, what: 'dropped', pings: [piece], piece, because });
        expect(line).not.toMatch(/[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}]/u);
        expect(line.isWellFormed()).toBe(true);
        // A name can be read back.
        const quoted = /piece=("(?:[^"\\]|\\.)*")/.exec(line)?.[1];
        if (quoted !== undefined && piece.isWellFormed()) expect(JSON.parse(quoted)).toBe(piece);
      }),
    );
  });
});

describe('the diagnostics file', () => {
  it('appends lines that only the owner reads, and makes the folder', () => {
    const folder = join(temporaryFolder(), 'data');
    const diagnostics = createDiagnostics({ folder });
    diagnostics.record(acknowledged);
    createDiagnostics({ folder }).record({ ...acknowledged, claim: 'c13' });
    const path = join(folder, diagnosticsFile);
    expect(readFileSync(path, 'utf8')).toBe(
      '2026-11-28T14:20:03.120Z acknowledged claim=c12\n2026-11-28T14:20:03.120Z acknowledged claim=c13\n',
    );
    if (process.platform !== 'win32') {
      expect(statSync(path).mode & 0o777).toBe(0o600);
      expect(statSync(folder).mode & 0o777).toBe(0o700);
    }
    expect(diagnostics.missed()).toBe(0);
  });

  it('stays within two files of about the limit, the newest lines in the first', () => {
    const folder = temporaryFolder();
    const diagnostics = createDiagnostics({ folder, limit: 1000 });
    for (let line = 0; line < 200; line++)
      diagnostics.record({ ...acknowledged, claim: `c${line}` });
    const newer = readFileSync(join(folder, diagnosticsFile), 'utf8');
    const older = readFileSync(join(folder, olderDiagnosticsFile), 'utf8');
    expect(newer.length).toBeLessThan(1060);
    expect(older.length).toBeLessThan(1060);
    const claims = (older + newer).match(/c\d+$/gm) ?? [];
    expect(claims.at(-1)).toBe('c199');
    // No line is lost in turning the files.
    expect(claims).toEqual(claims.map((_, index) => `c${200 - claims.length + index}`));
    expect(claims.length).toBeGreaterThan(20);
  });

  it('counts what it can not write and says so once it can', () => {
    const folder = temporaryFolder();
    const path = join(folder, diagnosticsFile);
    mkdirSync(path);
    const diagnostics = createDiagnostics({ folder });
    diagnostics.record(acknowledged);
    diagnostics.record(acknowledged);
    expect(diagnostics.missed()).toBe(2);
    rmSync(path, { recursive: true });
    diagnostics.record(acknowledged);
    diagnostics.record(acknowledged);
    expect(diagnostics.missed()).toBe(2);
    expect(readFileSync(path, 'utf8').split('\n')).toEqual([
      '2026-11-28T14:20:03.120Z unwritten lines=2',
      '2026-11-28T14:20:03.120Z acknowledged claim=c12',
      '2026-11-28T14:20:03.120Z acknowledged claim=c12',
      '',
    ]);
  });

  it('throws nothing where the folder can not be', () => {
    const file = join(temporaryFolder(), 'file');
    writeFileSync(file, '');
    const diagnostics = createDiagnostics({ folder: join(file, 'data') });
    diagnostics.record(acknowledged);
    diagnostics.record({ ...acknowledged, at: Number.NaN });
    expect(diagnostics.missed()).toBe(2);
  });
});
