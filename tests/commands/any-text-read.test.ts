import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readMoment } from '../../src/commands/read/read-moment.ts';
import { readSize } from '../../src/commands/read/read-size.ts';
import { readZone } from '../../src/commands/read/read-zone.ts';
import { readDocument } from '../../src/persist/file/document.ts';
import { withShared } from '../../src/persist/file/shared-values.ts';
import { leaveKeeperMark, readKeeperMark } from '../../src/persist/presence/index.ts';
import { readRuleFiles } from '../../src/persist/rules/read-rules.ts';
import { checkContents } from '../../src/persist/schemas/check.ts';
import { readSettings } from '../../src/persist/settings/read-settings.ts';
import { settingKnowledge } from '../../src/shell/port.ts';
import {
  chooseSetting,
  readPingHook,
  readQuietHours,
  settings as table,
  standardSettings,
  type SettingName,
} from '../../src/tracker/settings/index.ts';
import { readDay, readDuration } from '../../src/tracker/time/index.ts';
import { readClimate, readMoisture } from '../../src/tracker/trade/index.ts';
import { readTimer } from '../../src/views/odd-timer/read-timer.ts';
import { anyText } from '../shell/ping/support/any-text.ts';
import { newFolder, put } from '../persist/places.ts';

/** Words as they stand in what these readers take, in any order, and anything else. */
const typed = fc.oneof(
  anyText(16),
  fc
    .array(
      fc.constantFrom(
        ...[
          '12',
          '.5',
          ',',
          ':',
          '-',
          '1e999',
          '0',
          '-0',
          '99999999999999999999',
          'h',
          'min',
          'm2',
        ],
        ...[
          'F',
          'C',
          '%',
          '66',
          'x',
          '"',
          "'",
          'ft',
          'mm',
          'in',
          ' ',
          'yesterday',
          'tue',
          '2026-02-30',
        ],
        ...[
          '22:00',
          '24:00',
          '[',
          ']',
          '"a"',
          'none',
          'auto',
          'Europe/Lisbon',
          '__proto__',
          '\u0000',
        ],
      ),
      { maxLength: 6 },
    )
    .map((words) => words.join('')),
);
const now = Date.parse('2026-11-24T14:29:00-05:00');

/** Every figure in what was accepted is one. */
function figuresOf(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(figuresOf) : [];
}

describe('what is typed is taken or refused, never half and with no exception', () => {
  const readers: Readonly<Record<string, (text: string) => unknown>> = {
    'a length of time': readDuration,
    'a day': (text) => readDay(text, '2026-11-24'),
    'a reading': (text) => readClimate(text, 'C'),
    'a moisture': readMoisture,
    'a size': (text) => readSize(text, 'in'),
    'a moment': (text) => readMoment(text, now, 'America/New_York'),
    'a zone': readZone,
    'quiet hours': readQuietHours,
    'a hook': readPingHook,
    'an odd timer': readTimer,
  };

  it.each(Object.entries(readers))('%s', (_, read) => {
    fc.assert(
      fc.property(typed, (text) => {
        const reading = read(text);
        for (const figure of figuresOf(reading)) expect(Number.isFinite(figure), text).toBe(true);
        if (typeof reading === 'object' && reading !== null && 'ok' in reading && !reading.ok)
          expect(
            Object.values(reading).some(
              (value) => typeof value === 'string' || typeof value === 'object',
            ),
          ).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('any setting: an accepted one reads back the same from the file, a refused one changes nothing', () => {
    const names = [...Object.keys(table), 'keys'] as (SettingName | 'keys')[];
    fc.assert(
      fc.property(fc.constantFrom(...names), typed, (name, text) => {
        const chosen = chooseSetting(standardSettings, name, text, settingKnowledge);
        if (!chosen.ok) {
          expect(chosen.says).toMatch(/^Not /);
          return;
        }
        const stored = JSON.parse(JSON.stringify(chosen.settings)) as Record<string, unknown>;
        const read = readSettings(stored, 'settings.json');
        expect(read.notices).toEqual([]);
        expect(read.settings).toEqual(chosen.settings);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('what lies on the disk', () => {
  const near = fc.oneof(
    fc.jsonValue(),
    fc.dictionary(
      fc.constantFrom('recoat', 'facts', 'shared', 'settings', 'sum', ...Object.keys(table)),
      fc.oneof(
        fc.jsonValue(),
        fc.constantFrom(1, [], [{}], { a: 1 }, [
          {
            kind: 'piece-added',
            body: { steps: { shared: 'a' }, products: { x: { shared: '__proto__' } } },
          },
        ]),
      ),
    ),
  );

  it('settings of any shape: each entry is taken or told', () => {
    fc.assert(
      fc.property(
        fc.dictionary(
          fc.constantFrom('__proto__', 'x', 'keys', ...Object.keys(table)),
          fc.jsonValue(),
        ),
        (stored) => {
          const { settings, kept, notices } = readSettings(stored, 'settings.json');
          expect(notices).toHaveLength(Object.keys(kept).length);
          expect(Object.keys(settings).sort()).toEqual(Object.keys(standardSettings).sort());
        },
      ),
    );
  });

  it('documents of any shape and any bytes', () => {
    fc.assert(
      fc.property(near, fc.uint8Array({ maxLength: 40 }), (value, bytes) => {
        for (const holds of ['bench', 'conditions', 'pings', 'settings'] as const) {
          const read = readDocument(Buffer.from(JSON.stringify(value)), holds);
          if (!('says' in read)) {
            expect(read.vouched).toBe(false);
            checkContents(read.contents, holds, '');
          }
          const other = readDocument(Buffer.from(bytes), holds);
          if (!('says' in other)) expect(other.vouched).toBe(false);
        }
        withShared(value, value);
      }),
    );
  });

  it("a keeper's mark of any shape", () => {
    const folder = newFolder();
    fc.assert(
      fc.property(
        fc.oneof(near, fc.record({ pid: fc.jsonValue(), began: fc.jsonValue() })),
        (value) => {
          put(folder, 'keeper.json', JSON.stringify(value));
          const mark = readKeeperMark(folder);
          if (mark === null) return;
          expect(Number.isSafeInteger(mark.pid)).toBe(true);
          expect(Number.isFinite(mark.began)).toBe(true);
        },
      ),
    );
    leaveKeeperMark(folder, { pid: 1, began: 2 });
    expect(readKeeperMark(folder)).toEqual({ pid: 1, began: 2 });
  });

  it('rules with any line of theirs spoiled: refused with their place, or read', () => {
    const folder = join(import.meta.dirname, '..', '..', 'templates', 'rules');
    const over = readFileSync(join(folder, 'over.yaml'), 'utf8');
    const cautions = readFileSync(join(folder, 'cautions.yaml'), 'utf8');
    fc.assert(
      fc.property(fc.nat(), typed, fc.boolean(), (at, text, first) => {
        const spoil = (whole: string): string => {
          const lines = whole.split('\n');
          const line = at % lines.length;
          return lines.with(line, (lines[line] ?? '').replace(/:.*/s, `: ${text}`)).join('\n');
        };
        const read = readRuleFiles(
          { path: 'over.yaml', text: first ? spoil(over) : over },
          { path: 'cautions.yaml', text: first ? cautions : spoil(cautions) },
        );
        if (!read.ok)
          for (const { file, line, says } of read.problems) {
            expect(file).toBe(first ? 'over.yaml' : 'cautions.yaml');
            expect(line).toBeGreaterThan(0);
            expect(says).not.toBe('');
          }
      }),
      { numRuns: 20 },
    );
  });
});
