import { cpSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openForWriting } from '../../src/persist/index.ts';
import { chance } from '../tracker/support/chance.ts';
import { noon, note } from './facts.ts';

export type DamageCount = {
  readonly damages: number;
  /** Set aside and named, with an earlier state in its place. */
  readonly named: number;
  /** What was changed means the same as before. */
  readonly harmless: number;
  /** Taken as it is, though it says something else. */
  readonly unnoticed: number;
  /** More was gone than the last change, or the damaged file was thrown away. */
  readonly lost: number;
};

const clock = { now: () => noon, today: () => '2026-11-24' };
const changes = 12;

/**
 * Damages a store's file in ways nobody chose, opens it, and looks what became of it.
 *
 * @param folder an empty one
 */
export async function damageFiles(
  folder: string,
  { damages, seed, told = () => undefined }: { damages: number; seed: number; told?: () => void },
): Promise<DamageCount> {
  const random = chance(seed);
  const count = { damages, named: 0, harmless: 0, unnoticed: 0, lost: 0 };
  const pattern = mkdtempSync(join(folder, 'pattern-'));
  await fillStore(pattern);
  for (let each = 0; each < damages; each++) {
    const store = join(folder, `store-${each}`);
    cpSync(pattern, store, { recursive: true });
    const path = join(store, 'bench.json');
    const good = readFileSync(path);
    const bad = damaged(good, random);
    writeFileSync(path, bad);
    const opened = await openForWriting(store, { clock });
    const loaded = opened.ok ? opened.value.load() : opened;
    const texts = loaded.ok ? loaded.value.bench.map(textOf) : [];
    const isWhole = texts.length === changes && texts.every((text, index) => text === `${index}`);
    const isAllButLast = texts.slice(0, changes - 1).every((text, index) => text === `${index}`);
    const isNamed = opened.ok && opened.value.notices().length > 0;
    const isKept = readdirSync(store).some(
      (name) => name.startsWith('bench.damaged') && readFileSync(join(store, name)).equals(bad),
    );
    if (!isNamed) count[isWhole ? 'harmless' : 'unnoticed'] += 1;
    else if (texts.length >= changes - 1 && isAllButLast && isKept) count.named += 1;
    else count.lost += 1;
    if (opened.ok) opened.value.close();
    rmSync(store, { recursive: true });
    told();
  }
  return count;
}

const textOf = (fact: { readonly kind: string; readonly body: unknown }): string =>
  fact.kind === 'note-written' ? String((fact.body as { readonly text: string }).text) : fact.kind;

async function fillStore(folder: string): Promise<void> {
  const store = await openForWriting(folder, { clock });
  if (!store.ok) throw new Error(store.problem.says);
  for (let index = 0; index < changes; index++)
    store.value.change(() => ({
      append: { bench: [note(`n${index}`, String(index))] },
      result: null,
    }));
  store.value.close();
}

/** Cut short, a stretch of zero bytes as a power cut leaves, a byte changed, or a stretch that lies somewhere else too. */
function damaged(good: Buffer, random: () => number): Buffer {
  const bad = Buffer.from(good);
  const at = Math.floor(random() * good.length);
  const way = random();
  if (way < 0.3) return bad.subarray(0, at);
  if (way < 0.5) return bad.fill(0, at, Math.min(good.length, at + 512));
  if (way < 0.8) {
    bad[at] = (good[at] ?? 0) ^ (1 << Math.floor(random() * 8));
    return bad;
  }
  good.copy(bad, at, Math.floor(random() * good.length));
  return bad;
}
