import fc from 'fast-check';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { memoryStore, openStore } from '../../src/persist/index.ts';
import { createDesktop } from '../../src/shell/ping/desktop.ts';
import { hookInput } from '../../src/shell/ping/hook.ts';
import { terminalPing } from '../../src/shell/ping/terminal.ts';
import { createPort } from '../../src/shell/port.ts';
import { createSession } from '../../src/shell/session.ts';
import { hour } from '../../src/tracker/time/index.ts';
import { noRules } from '../../src/tracker/trade/index.ts';
import { pingsOfBench } from '../../src/tracker/bench/index.ts';
import { createDesk } from '../../src/views/desk.ts';
import { pingText } from '../../src/views/ping-text/index.ts';
import { paint } from '../../src/views/theme/index.ts';
import { anyText } from '../shell/ping/support/any-text.ts';
import { openShop, type Shop } from './support/shop.ts';

/* eslint-disable no-control-regex -- the point is to find them */
/** What would act on a terminal or turn the order of its text; a line break only ends lines. */
const acting =
  /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u00ad\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/;
const brushes = /\u001b\[[\d;]*m/g;
const oscBytes = /\u001b\]|\u001b\\|\u0007/;
/* eslint-enable no-control-regex */

const worst = [
  '\u001b]0;title\u0007\u001b[2J\u009b31m',
  'a\nBEGIN:VALARM\r\nEND:VEVENT',
  '=cmd|"/c calc"!A1',
  '"); rm -rf / #$(id)`id`',
  '</td><script>|x|',
  '\u202egnp\u2066\ud800\ufeff\u00ad',
  "' -- ; %s %n \\u001b \\x1b",
];
/** Told to a command as one word, which holds no null. */
const hostile = fc
  .oneof(fc.constantFrom(...worst), anyText(24))
  .map((text) => `x${text.replaceAll('\u0000', '\u0001')}`);

const yamlText = (text: string): string => JSON.stringify(text.toWellFormed());

/** Puts the text into every field that takes one. What refuses it says so in words that don't act either. */
async function fillWith(text: string, shop: Shop): Promise<string> {
  let said = '';
  const told = async (...line: readonly string[]): Promise<void> => {
    const { out, err } = await shop.run(line);
    said += out + err;
  };
  await told(
    'add',
    `--kind=${text}`,
    '--schedule',
    'bleach-and-clear',
    '--wood',
    'hard',
    '--',
    text,
  );
  await told('add', '--schedule', 'glue-up-repair', '--', `${text}2`);
  await told('describe', '1', `--kind=${text}`);
  await told('parts', '1', '--', text, `${text} too`);
  await told('insert-step', '1', '--', text);
  await told('reword-step', '1', 'strip', '--', text);
  await told('note', '1', '--', text);
  await told('note', '1', '--step', text, '--', text);
  await told('timer', text, '5min', '--piece', '1');
  await told('timer', `${text} 2`, '7min');
  await told('pick-up', '1', '--part', text);
  await told('first-stroke', '1', '--part', text);
  await told('trouble', '1', '--part', text, `--other=${text}`);
  await told('trouble', '1', '--', text);
  await told('not-yet', '1', `--with=${text}`);
  await told('why-late', '1', text);
  await told('answer', '1', text);
  await told('moisture', '1', text);
  await told('conditions', '--', text);
  await told('describe', '1', `--size=${text}`, `--promised=${text}`);
  await told('matches', '1', text);
  await told('pot', 'mix', text);
  await told('hold', '2', '--ask', '2026-11-26', '--', text);
  for (const name of ['ping-hook', 'quiet-hours', 'zone', 'night-low', text])
    await told('settings', name, '--', text);
  await told('correct-session', '1', `--start=${text}`);
  await told('use', '1', text);
  await told('export', `no/${text.replaceAll('/', '')}`);
  await told('import', text);
  await told('schedules', 'check', text);
  await told(text);
  return said;
}

const looks: readonly (readonly string[])[] = [
  ['bench'],
  ['windows'],
  ['steps', '1'],
  ['cautions', '1'],
  ['hours'],
  ['hours', '1'],
  ['job-card', '1'],
  ['job-card', '2'],
  ['sessions', '1'],
  ['past'],
  ['pings'],
  ['pot'],
  ['overnight'],
  ['rags'],
  ['settings'],
  ['schedules'],
  ['product'],
  ['conditions'],
  ['calendar'],
  ['export'],
];
const tables: readonly (readonly string[])[] = [
  ['hours', '1', '--csv'],
  ['job-card', '1', '--csv'],
  ['job-card', '1', '--markdown'],
];

/** What notifications, terminals and hooks are given for every ping to come. */
async function sentFor(shop: Shop): Promise<readonly string[]> {
  const store = await loadedFrom(shop);
  const { bench, sense, shop: shown } = store.session.snapshot();
  const sent: string[] = [];
  const shownOptions: object[] = [];
  const desktop = createDesktop({
    platform: 'linux',
    load: () =>
      Promise.resolve({
        notify: (options: object, answer: (error: unknown) => void) => {
          shownOptions.push(options);
          answer(null);
        },
      } as never),
  });
  const pings = pingsOfBench(bench, shop.now(), sense);
  expect(pings.length).toBeGreaterThan(0);
  for (const ping of pings) {
    const sending = { pings: [ping], settles: [], loud: ping.loud, lateBy: 0 };
    const { title, body } = pingText(sending, ping.at, shown, ping.at);
    const told = { id: 'a', title, body, loud: ping.loud };
    sent.push(hookInput(told).trimEnd());
    for (const way of ['osc9', 'osc777', 'osc99'] as const)
      // The sequence's own bytes; what is between them is the text.
      sent.push(...terminalPing(way, told, {}).split(oscBytes));
    await desktop.send({ title: told.title, message: told.body, loud: ping.loud });
  }
  for (const options of shownOptions)
    sent.push(...Object.values(options).filter((value) => typeof value === 'string'));
  return sent;
}

async function loadedFrom(shop: Shop) {
  const opened = await openStore(shop.folder, {
    clock: { now: shop.now, today: () => '2026-11-24' },
  });
  if (!opened.ok) throw new Error(opened.problem.says);
  const { bench, conditions, pings, settings } = opened.value;
  const store = memoryStore({ bench, conditions, pings, settings });
  const loaded = store.load();
  if (!loaded.ok) throw new Error(loaded.problem.says);
  const clock = { now: shop.now, uptime: () => null, bootId: null };
  let ids = 0;
  const session = createSession({
    loaded: loaded.value,
    notices: [],
    folder: shop.folder,
    rules: noRules,
    store: () => store,
    clock,
    newId: () => `n${(ids += 1)}`,
    here: { zone: 'America/New_York', locale: 'en-GB' },
    soon: (work) => work(),
  });
  return { session, store, clock };
}

/** Every screen that opens from the bench or a piece, painted. */
async function screensOf(shop: Shop): Promise<readonly string[]> {
  const { session, store } = await loadedFrom(shop);
  const world = { packageFolder: join(shop.root, 'package'), env: {} } as never;
  let now = shop.now();
  const theme = { colour: 'dark', glyphs: 'blocks' } as const;
  const desk = createDesk({
    port: createPort({ session, world, store: () => store, openDemo: undefined }),
    ticks: {
      subscribe: () => () => undefined,
      now: () => now,
      present: () => now,
      pace: () => undefined,
    },
    theme: () => theme,
    leave: () => undefined,
  });
  desk.subscribe(() => undefined);
  const painted: string[] = [];
  const look = async (): Promise<void> => {
    for (let turn = 0; turn < 5; turn += 1) await Promise.resolve();
    for (const [columns, rows] of [
      [80, 24],
      [40, 20],
    ] as const) {
      const { lines, pick, spoken } = desk.frame(columns, rows);
      painted.push(...lines.map((line) => paint(line, theme).replaceAll(brushes, '')));
      painted.push(
        ...(pick?.items ?? []).map(({ label }) =>
          paint([{ text: label, role: 'text' }], theme).replaceAll(brushes, ''),
        ),
      );
      if (spoken !== undefined) painted.push(...spoken().split('\n'));
    }
  };
  const press = async (name: string): Promise<void> => {
    now += 3000;
    desk.press([{ name, text: name.length === 1 ? name : '' }]);
    await look();
  };
  await look();
  for (const keys of ['ahoctmjvkiun'.split(''), ['/', '-', '+', '*']].flat()) {
    await press('1');
    await press(keys);
    await press('escape');
    await press('escape');
  }
  await press('enter');
  await press('x');
  await press('escape');
  now += hour;
  await look();
  return painted;
}

it('reaches no terminal, notification, hook or file as more than text, whatever stands in whichever field', async () => {
  await fc.assert(
    fc.asyncProperty(hostile, async (text) => {
      const shop = openShop();
      mkdirSync(join(shop.folder, 'schedules'), { recursive: true });
      writeFileSync(
        join(shop.folder, 'schedules', 'mine.yaml'),
        `id: mine\nname: ${yamlText(text)}\nsummary: ${yamlText(text)}\n${text}: 1\nsteps:\n  - {id: a, name: ${yamlText(text)}, class: sand, minutes: {low: 1, high: 2}}\n`,
      );
      const said = await fillWith(text, shop);
      // It is in there, and everything below looks at it.
      expect((await shop.json('bench')).rows.length).toBeGreaterThanOrEqual(3);
      const seen: [string, string][] = [['what was said', said]];
      for (const line of [...looks, ...tables]) {
        const { out, err } = await shop.run(line);
        seen.push([line.join(' '), out + err]);
        if (!tables.includes(line)) {
          const json = (await shop.run([...line, '--json'])).out;
          expect(json.split('\n'), line.join(' ')).toHaveLength(2);
          seen.push([`${line.join(' ')} --json`, json]);
        }
      }
      await shop.run(['calendar', 'all.ics']);
      // Its own line ends are those of RFC 5545.
      const calendar = readFileSync(join(shop.root, 'all.ics'), 'utf8').replaceAll('\r\n', '\n');
      expect(calendar.match(/^BEGIN:VEVENT/gm)?.length).toBe(
        calendar.match(/^END:VEVENT/gm)?.length,
      );
      seen.push(['all.ics', calendar]);
      await shop.run(['export', 'all.json']);
      for (const name of readdirSync(shop.root).filter((each) => each.endsWith('.json')))
        seen.push([name, readFileSync(join(shop.root, name), 'utf8')]);
      for (const each of await sentFor(shop)) seen.push(['a ping', each]);
      for (const each of await screensOf(shop)) seen.push(['a screen', each]);
      for (const [where, all] of seen) {
        const found = acting.exec(all);
        expect(
          found === null ? null : all.slice(Math.max(0, found.index - 40), found.index + 20),
          where,
        ).toBeNull();
      }
    }),
    // A name has at most 80 letters.
    {
      numRuns: 4,
      examples: [[`x${worst.slice(0, 2).join('')}`], [`x${worst.slice(3, 6).join('')}`]],
    },
  );
}, 180_000);
