import { isDeepStrictEqual } from 'node:util';
import { inventShop } from '../../../src/commands/demo/invented-shop.ts';
import { memoryStore, type FactStore } from '../../../src/persist/index.ts';
import { readScheduleFolders } from '../../../src/persist/schedules/index.ts';
import type { Clock } from '../../../src/shell/clock.ts';
import { createPort, scheduleFolders } from '../../../src/shell/port.ts';
import { senseOf } from '../../../src/shell/shop.ts';
import { createSession, type Session } from '../../../src/shell/session.ts';
import { readHours } from '../../../src/persist/hours-import/read-hours.ts';
import { tellProblem } from '../../../src/persist/schedules/index.ts';
import { tradeRulesOf } from '../../../src/shell/trade-rules.ts';
import {
  foldBench,
  sendingsDue,
  type Bench,
  type PingFact,
} from '../../../src/tracker/bench/index.ts';
import { hour, minute, second, type Instant } from '../../../src/tracker/time/index.ts';
import { lineWidth, plain } from '../../../src/views/drawing/index.ts';
import { createDesk, type Desk } from '../../../src/views/desk.ts';
import { pingText } from '../../../src/views/ping-text/index.ts';
import type { BenchPort, SchedulesReply } from '../../../src/views/port.ts';
import { shopDay } from '../../../src/views/format/index.ts';
import { paint } from '../../../src/views/theme/index.ts';
import { threadBeside } from './thread-beside.ts';
import { chance } from '../../tracker/support/chance.ts';

/** Text that nobody should be able to type into anything: it acts on terminals, or means something to a program. */
const nasty = [
  'Oak\u001b[31m\u009b2J\u0007\u202echest',
  '\ud83e\ude9f\u200d\u5bb6\u0301',
  '12.5',
  '35min',
  '66F 55%',
  '=1+1',
  'yesterday 9:00',
  '',
] as const;

/** Hours kept elsewhere: as they should be, with lines that are wrong, and no such thing. */
const hoursFiles = [
  'date,piece,step class,minutes,estimate\n2026-03-14,Oak chest,strip,95,60\n2026-03-15,Oak chest,scuff,12,15\n',
  'date;piece;step class;minutes;estimate\n2026-03-14;=1+1;strip;0;60\n31.02.2026;\u001b[31mx;nap;-5;\n',
  'no such file',
] as const;

/* eslint-disable no-control-regex -- the point is to find them */
const acting = /[\u0000-\u001f\u007f-\u009f\u2028-\u202e]/;
const brushes = /\u001b\[[\d;]*m/g;
/* eslint-enable no-control-regex */

const named = [
  ...[
    'enter',
    'enter',
    'enter',
    'space',
    'space',
    'space',
    'escape',
    'escape',
    'tab',
    'up',
    'down',
  ],
  ...['left', 'right', 'page up', 'page down', 'home', 'end', 'backspace', 'delete'],
];
const letters = [...'0123456789123+-*/.,frsdtnhobmkjgcavpqilxwuyez?ß'];

export type RandomKeys = {
  readonly keys: number;
  readonly seed: number;
  /** The project's folder, where templates/ lies. */
  readonly packageFolder: string;
};

export type RandomKeysOutcome = {
  readonly keys: number;
  readonly frames: number;
  /** On all benches together, at their ends. */
  readonly facts: number;
  readonly screens: readonly string[];
  /** Kinds of news from the thread that looks back. */
  readonly heard: readonly string[];
};

/**
 * Presses keys at random on the real screens, session and core, with time passing, the terminal changing its size, pings
 * falling due and the program started anew now and then.
 *
 * @throws at the first frame or bench that is not as it must be, with the last keys
 */
export async function keysAtRandom({
  keys,
  seed,
  packageFolder,
}: RandomKeys): Promise<RandomKeysOutcome> {
  const random = chance(seed);
  const pick = <T>(values: readonly T[]): T => values[Math.floor(random() * values.length)] as T;
  const whole = (from: number, to: number): number => from + Math.floor(random() * (to - from + 1));
  const world = { packageFolder, env: {} };
  const library = await readScheduleFolders(scheduleFolders(world, null));
  const schedules: SchedulesReply = {
    schedules: library.schedules,
    products: Object.values(library.products),
    problems: [],
  };
  const rules = await tradeRulesOf(world);
  const screens = new Set<string>();
  const heard = new Set<string>();
  const last: string[] = [];
  let frames = 0;
  let factCount = 0;
  let pressed = 0;
  let now: Instant = Date.UTC(2026, 10, 24, 13);
  let up = 1e6;
  let ids = 0;
  const clock: Clock = { now: () => now, uptime: () => up, bootId: 'boot' };
  const newId = (): string => `id${(ids += 1)}`;
  const wrong = (what: string): never => {
    throw new Error(`${what}; seed ${seed}, after ${pressed} keys: ${last.join(' ')}`);
  };

  const started = (store: FactStore) => {
    const waiting: (() => void)[] = [];
    const loaded = store.load();
    if (!loaded.ok) return wrong(loaded.problem.says);
    const session = createSession({
      rules,
      loaded: loaded.value,
      notices: [],
      folder: null,
      store: () => store,
      clock,
      newId,
      here: { zone: 'America/New_York', locale: pick(['en-GB', 'en-US', 'de-DE']) },
      soon: (work) => waiting.push(work),
    });
    const beside = threadBeside((news) => heard.add(news));
    const port: BenchPort = {
      ...createPort({
        session,
        world: { ...world, clock } as never,
        store: () => store,
        openDemo: undefined,
        thread: beside.start,
      }),
      schedules: () => Promise.resolve(schedules),
      lookAtHours: (file) => {
        const { problems, ...read } = readHours(file, pick(hoursFiles), {
          today: shopDay(now, 'America/New_York'),
          noonOf: () => now,
        });
        return Promise.resolve({ ...read, refused: problems.map(tellProblem) });
      },
    };
    let isLeft = false;
    let ticked = now;
    const theme = {
      colour: pick(['dark', 'light', '16 on dark', 'none', 'bare'] as const),
      glyphs: pick(['blocks', 'ascii'] as const),
    };
    const desk = createDesk({
      port,
      ticks: {
        subscribe: () => () => undefined,
        now: () => ticked,
        present: () => (ticked = now),
        pace: () => undefined,
      },
      theme: () => theme,
      leave: () => {
        isLeft = true;
      },
    });
    desk.subscribe(() => undefined);
    const writeOut = (): void => waiting.splice(0).forEach((work) => work());
    return { session, desk, theme, beside, writeOut, hasLeft: () => isLeft };
  };

  const sameAsReplayed = (session: Session, store: FactStore): void => {
    session.flush();
    const loaded = store.load();
    if (!loaded.ok) return wrong(loaded.problem.says);
    const told = (bench: Bench) => [
      bench.pieces,
      bench.sessions,
      bench.timers,
      bench.pots,
      bench.trail,
      bench.lastShut,
    ];
    const replayed = foldBench(loaded.value.bench, undefined, {
      told: now,
      uptimeMs: up,
      bootId: 'boot',
    });
    if (!isDeepStrictEqual(told(replayed), told(session.snapshot().bench)))
      wrong('the bench is another one after replay');
  };

  /** As the program's watch does it, and nobody hears. */
  const claimDue = (session: Session, store: FactStore): void => {
    const { bench, sense, shop } = session.snapshot();
    const claimed = new Set(
      session
        .loaded()
        .pings.flatMap(({ kind, body }) => (kind === 'ping-claimed' ? body.pings : [])),
    );
    const due = sendingsDue(bench, claimed, now, sense);
    if (due.length === 0) return;
    const pings = due.map((sending): PingFact => {
      const [first] = sending.pings;
      const { text } = pingText(sending, now, shop, now);
      return {
        id: newId(),
        group: newId(),
        at: now,
        told: now,
        by: 'clock',
        uptimeMs: up,
        bootId: 'boot',
        kind: 'ping-claimed',
        body: {
          pings: sending.settles,
          text,
          loud: sending.loud,
          piece: first?.about === 'window' ? first.window.subject.pieceId : null,
        },
      };
    });
    store.change(() => ({ append: { pings }, result: null }));
    session.reload();
  };

  const look = (
    desk: Desk,
    columns: number,
    rows: number,
    painted: Parameters<typeof paint>[1],
  ) => {
    frames += 1;
    screens.add(desk.top().is);
    const { lines, pick: list, cursor, spoken } = desk.frame(columns, rows);
    if (lines.length > rows) wrong(`${desk.top().is}: ${lines.length} lines in ${rows} rows`);
    for (const line of lines) {
      const text = plain(line);
      if (lineWidth(line) > columns) wrong(`${desk.top().is}: wider than ${columns}: ${text}`);
      if (/\bNaN\b|undefined|\[object|Infinity|Invalid Date/.test(text))
        wrong(`${desk.top().is}: ${text}`);
      if (acting.test(paint(line, painted).replaceAll(brushes, '')))
        wrong(`${desk.top().is}: text that acts: ${JSON.stringify(text)}`);
    }
    if (list !== undefined && list.row + list.height > rows)
      wrong(`${desk.top().is}: a list beyond the last row`);
    if (cursor !== undefined && (cursor.x >= columns || cursor.y >= rows))
      wrong(`${desk.top().is}: a cursor outside`);
    if (spoken !== undefined && random() < 0.05 && /NaN|undefined|\[object/.test(spoken()))
      wrong(`${desk.top().is}: spoken: ${spoken()}`);
    return list;
  };

  /** The demo's shop: pieces in every state, with windows that run. */
  const inventedStore = (): FactStore => {
    const shop = {
      zone: 'America/New_York',
      hours: '24',
      temperature: 'C',
      lengths: 'mm',
    } as const;
    const invented = inventShop(schedules.schedules, now, shop.zone, senseOf(shop));
    const store = memoryStore({ bench: invented.bench, conditions: invented.conditions });
    store.moveToHistory(invented.past);
    return store;
  };

  while (pressed < keys) {
    const store = random() < 0.3 ? memoryStore() : inventedStore();
    let program = started(store);
    let [columns, rows] = [80, 24];
    // A bench of some weeks; then an empty one again.
    for (let here = 0; here < 1000 && pressed < keys; here += 1) {
      if (random() < 0.02) [columns, rows] = [whole(1, 160), whole(1, 50)];
      if (random() < 0.03)
        [columns, rows] = pick([
          [80, 24],
          [40, 24],
          [60, 16],
        ] as const);
      const past = pick([50, 200, 700, 2 * second, 5 * second, minute, 20 * minute, 3 * hour]);
      now += past;
      up += past;
      // Somebody sets the clock.
      if (random() < 0.002) {
        const byMs = whole(-3, 3) * hour;
        now += byMs;
        if (byMs !== 0) program.session.act({ do: 'note clock step', byMs });
      }
      const list = program.desk.frame(columns, rows).pick;
      const { desk } = program;
      const pressOne = (name: string, text: string): void => {
        last.push(name);
        desk.press([{ name, text }]);
      };
      const kind = random();
      pressed += 1;
      if (last.length > 40) last.splice(0, last.length - 40);
      try {
        if (list !== undefined && list.items.length > 0 && kind < 0.6) {
          const item = pick(list.items);
          last.push(`(${item.label})`);
          desk.picked(item.value);
        } else if (kind < 0.06) {
          const text = pick(nasty);
          last.push(`paste:${JSON.stringify(text)}`);
          if (random() < 0.5) desk.paste(text);
          else
            for (const letter of text) desk.press([{ name: letter.toLowerCase(), text: letter }]);
        } else if (kind < 0.08) {
          last.push('(several)');
          desk.press([1, 2, 3].map(() => ({ name: pick(letters), text: 'x' })));
        } else if (kind < 0.5) pressOne(pick(named), '');
        else {
          const letter = pick(letters);
          pressOne(letter, letter);
        }
        look(desk, columns, rows, program.theme);
        if (random() < 0.5) program.beside.goOn();
        // What screens load comes in.
        if (random() < 0.5) for (let turn = 0; turn < 4; turn += 1) await Promise.resolve();
        if (random() < 0.4) program.writeOut();
        if (random() < 0.1) claimDue(program.session, store);
        if (random() < 0.02) sameAsReplayed(program.session, store);
        if (program.hasLeft() || random() < 0.002) {
          program.session.flush();
          program = started(store);
        }
        look(program.desk, columns, rows, program.theme);
      } catch (error) {
        if (error instanceof Error && error.message.includes(`seed ${seed}`)) throw error;
        wrong(error instanceof Error ? (error.stack ?? error.message) : String(error));
      }
    }
    sameAsReplayed(program.session, store);
    factCount += program.session.loaded().bench.length;
  }
  return {
    keys: pressed,
    frames,
    facts: factCount,
    screens: [...screens].sort(),
    heard: [...heard].sort(),
  };
}
