import { openForWriting, type FactStore, type Loaded } from '../../persist/index.ts';
import { applyIntent, type Applied } from '../../shell/apply-intent.ts';
import { clockReading } from '../../shell/clock.ts';
import type { BenchFact, Intent } from '../../tracker/bench/index.ts';
import { createLearning, mayChangeLessons } from '../../shell/learning.ts';
import { tellingNow } from '../../shell/unwritten.ts';
import { tradeRulesOf } from '../../shell/trade-rules.ts';
import { takenUp } from '../../tracker/cautions/index.ts';
import type { Instant } from '../../tracker/time/index.ts';
import type { TradeRules } from '../../tracker/trade/index.ts';
import { shopDay } from '../../views/format/zone.ts';
import { iso } from '../json/iso.ts';
import { pieceRowJson } from '../json/bench-json.ts';
import type { OutlookJson, RecordedJson } from '../json-shapes/index.ts';
import { cautionJson } from '../json/caution-json.ts';
import { takenUpLines } from '../text/caution-lines.ts';
import { rowLine } from '../text/row-line.ts';
import { failure, isFailure, type Answer, type Failure } from './command.ts';
import { airTold } from './air-told.ts';
import { withoutKeys } from './hints.ts';
import { lookAt, missingStore, noticeText, storeFailure, type Look } from './look.ts';
import type { Room } from './room.ts';

/** What a command wants recorded. */
export type Wish = {
  /** In order, each as one key press; where one is refused none counts. */
  readonly intents: readonly Intent[];
  /** When it happened, if that was earlier than now. */
  readonly at?: Instant | undefined;
  /** What there is to tell of the piece afterwards; only few commands load what it takes. */
  readonly foresees?: (after: Look, piece: string) => Foreseen | null;
};

/** What a piece will take. */
export type Foreseen = {
  readonly lines: () => readonly string[];
  readonly json: () => OutlookJson;
};

/** Facts of pieces that left the bench in years gone by, asked for where a wish can't be met without them. */
export type Recall = (store: FactStore) => readonly BenchFact[] | Failure;

/**
 * Decides on the bench as it is stored at that moment, with every other process kept out, and stores what comes of it:
 * the same door as that of the keys.
 */
export async function record(
  room: Room,
  wish: (look: Look) => Wish | Failure,
  recall?: Recall,
): Promise<Answer | Failure> {
  const rules = await tradeRulesOf(room.world);
  return withStore(room, (store) => {
    const decided = (recalled: readonly BenchFact[]) =>
      store.change<Done | Failure>((current) => {
        const done = apply({ room, rules }, current, recalled, wish);
        return isFailure(done)
          ? { append: {}, result: done }
          : { append: { bench: [...recalled, ...done.facts] }, result: done };
      });
    let result = decided([]);
    if (recall !== undefined && result.ok && isFailure(result.value)) {
      const recalled = recall(store);
      if (isFailure(recalled)) return recalled;
      if (recalled.length > 0) result = decided(recalled);
    }
    if (!result.ok) return storeFailure(result.problem);
    if (isFailure(result.value)) return result.value;
    const { intents, after } = result.value;
    // A past piece that is left out stops teaching now, not at the next start of a screen.
    if (mayChangeLessons(intents))
      createLearning(room.folder).refresh(store, after.bench, after.readings);
    return answer(result.value);
  });
}

type Done = {
  readonly intents: readonly Intent[];
  readonly facts: readonly BenchFact[];
  readonly says: readonly string[];
  /** What is wrong with what was done all the same. */
  readonly warns: readonly string[];
  readonly piece: string | null;
  readonly at: Instant;
  /** The bench with it. */
  readonly after: Look;
  readonly foresees: Wish['foresees'];
};

function apply(
  { room, rules }: { readonly room: Room; readonly rules: TradeRules },
  current: Loaded,
  recalled: readonly BenchFact[],
  wish: (look: Look) => Wish | Failure,
): Done | Failure {
  const { world } = room;
  const present = clockReading(world.clock);
  const known = new Set(current.bench.map(({ id }) => id));
  const before = [...current.bench, ...recalled.filter(({ id }) => !known.has(id))];
  let after = lookAt(room, current, before, rules);
  const wished = wish(after);
  if (isFailure(wished)) return wished;
  const facts: BenchFact[] = [];
  const says: string[] = [];
  const warns: string[] = [];
  let piece: string | null = null;
  for (const intent of wished.intents) {
    // Waiting for its turn takes time, in which the clock may have been set.
    const telling = tellingNow({ clock: room.clock, at: wished.at, group: world.newId() }, present);
    const applied = applyIntent(after.bench, intent, telling, around(after));
    if (!applied.ok) return failureOf(applied);
    facts.push(...applied.facts);
    says.push(applied.says);
    if (applied.warns !== undefined) warns.push(withoutKeys(applied.warns));
    piece = applied.piece;
    after = lookAt(room, current, [...before, ...facts], rules);
  }
  return {
    intents: wished.intents,
    facts,
    says,
    warns,
    piece,
    at: wished.at ?? room.now,
    after,
    foresees: wished.foresees,
  };
}

/** A refusal as a command answers it. */
export const failureOf = ({ says, nearest }: Extract<Applied, { ok: false }>): Failure =>
  failure(nearest === null ? 'refused' : 'unknown', withoutKeys(says), nearest ?? []);

const around = ({ settings, shop, sense, readings }: Look) => ({ settings, shop, sense, readings });

function answer({ intents, facts, says, warns, piece, at, after, foresees }: Done): Answer {
  const foreseen = piece === null ? null : (foresees?.(after, piece) ?? null);
  const taken = () => takenUp(facts, after);
  const air = (): readonly string[] => (piece === null ? [] : airTold(intents, after, piece));
  return {
    lines: () => [
      ...warns.map((warning) => `! ${warning}.`),
      ...says,
      ...air(),
      ...takenUpLines(taken(), after),
      ...rowLine(after, piece),
      ...(foreseen?.lines() ?? []),
    ],
    json: (): RecordedJson => ({
      recorded: says.join('; '),
      warns: [...warns, ...air()],
      at: iso(at, after.shop.zone),
      row: pieceRowJson(after, piece),
      cautions: taken().flatMap(({ cautions }) =>
        cautions.all.map((each) => cautionJson(each, after.shop.zone)),
      ),
      outlook: foreseen?.json() ?? null,
    }),
  };
}

/** Opens the store for writing and closes it again. What was mended on the way is told. */
export async function withStore<T>(
  room: Room,
  work: (store: FactStore) => T | Failure,
): Promise<T | Failure> {
  const missing = missingStore(room);
  if (missing !== null) return missing;
  const { now } = room;
  let zone = room.zone ?? 'auto';
  const clock = { now: () => now, today: () => shopDay(now, zone) };
  const opened = await openForWriting(room.folder, { clock });
  if (!opened.ok) return storeFailure(opened.problem);
  const store = opened.value;
  try {
    const loaded = store.load();
    if (!loaded.ok) return storeFailure(loaded.problem);
    zone = lookAt(room, loaded.value).shop.zone;
    return work(store);
  } finally {
    store.notices().forEach((notice) => room.tell(noticeText(notice)));
    store.close();
  }
}
