import type { Caution } from '../../tracker/cautions/index.ts';
import type { CautionJson } from '../json-shapes/index.ts';
import { iso } from './iso.ts';

export const cautionJson = (
  { id, says, until, then, deadly, source }: Caution,
  zone: string,
): CautionJson => ({
  id,
  says,
  until: until === undefined ? null : iso(until, zone),
  then: then ?? null,
  deadly,
  source,
});
