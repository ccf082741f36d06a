import { minute } from '../../tracker/time/index.ts';
import type { OverRow } from '../../tracker/trade/index.ts';
import type { OverRowJson } from '../json-shapes/index.ts';

export const overRowJson = (row: OverRow): OverRowJson => ({
  called: row.called,
  below: row.below,
  above: row.above,
  verdict: row.verdict,
  first: row.first ?? null,
  waitMinutes: row.wait === undefined ? null : row.wait / minute,
  why: row.why,
  instead: row.instead ?? null,
  source: row.source,
});
