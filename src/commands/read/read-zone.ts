import { chooseSetting, standardSettings } from '../../tracker/settings/index.ts';
import { zoneOffset } from '../../views/format/zone.ts';
import { failure, type Failure } from '../line/command.ts';

/** A zone as the IANA list writes it, or the nearest names. */
export function readZone(typed: string): { readonly zone: string } | Failure {
  const outcome = chooseSetting(standardSettings, 'zone', typed, {
    isZone,
    zones: () => Intl.supportedValuesOf('timeZone'),
    acts: [],
  });
  if (outcome.ok) return { zone: outcome.settings.zone };
  return failure('usage', `Not understood: there is no zone "${typed}".`, outcome.nearest);
}

function isZone(name: string): boolean {
  try {
    zoneOffset(0, name);
    return true;
  } catch {
    return false;
  }
}
