import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Milliseconds } from '../../tracker/time/index.ts';

/** What of a machine can put it to sleep whatever it was asked: a lid that closes, a battery that runs down. */
export type Portable = { readonly lid: boolean; readonly battery: 'none' | 'there' | 'in use' };

/**
 * Looks for lid and battery where Linux shows them (its Documentation/ABI/testing/sysfs-class-power; the lid after
 * drivers/acpi/button.c). Null on other systems, which nobody asked.
 *
 * @param root the root of the file system
 */
export function readPortable(platform: NodeJS.Platform, root = '/'): Portable | null {
  if (platform !== 'linux') return null;
  const batteries = namesIn(join(root, 'sys/class/power_supply'))
    .map((name) => join(root, 'sys/class/power_supply', name))
    // Of scope "Device" are those of a mouse or a headset.
    .filter(
      (path) => firstLine(path, 'type') === 'Battery' && firstLine(path, 'scope') !== 'Device',
    );
  const isInUse = batteries.some((path) => firstLine(path, 'status') === 'Discharging');
  const inputs = join(root, 'sys/class/input');
  return {
    lid:
      namesIn(join(root, 'proc/acpi/button/lid')).length > 0 ||
      namesIn(inputs).some((name) => firstLine(join(inputs, name), 'name') === 'Lid Switch'),
    battery: batteries.length === 0 ? 'none' : isInUse ? 'in use' : 'there',
  };
}

/** A battery may be asked of a slow controller; a plug is not pulled every second. */
const looksAgainAfter: Milliseconds = 30_000;

/** The words for it as things stand, looked up now and then. */
export function watchPortable(platform: NodeJS.Platform): () => string | null {
  let lookedAt = Number.NEGATIVE_INFINITY;
  let words: string | null = null;
  return () => {
    if (performance.now() - lookedAt < looksAgainAfter) return words;
    lookedAt = performance.now();
    words = closingWords(readPortable(platform));
    return words;
  };
}

/** For the bench, while something that spoils runs; null where nothing of that kind is there. */
export function closingWords(portable: Portable | null): string | null {
  if (portable === null) return 'With a lid: no pings if this closes.';
  const { lid, battery } = portable;
  if (battery === 'in use') return 'On battery: no pings if this closes or runs down.';
  return lid || battery === 'there' ? 'Lid: no pings if this closes.' : null;
}

function namesIn(folder: string): readonly string[] {
  try {
    return existsSync(folder) ? readdirSync(folder) : [];
  } catch {
    return [];
  }
}

/** Empty where there is no such file, or it can't be read at this moment. */
function firstLine(folder: string, name: string): string {
  try {
    return (readFileSync(join(folder, name), 'utf8').split('\n')[0] ?? '').trim();
  } catch {
    return '';
  }
}
