import type { Expectation } from '../../tracker/bench/index.ts';
import type { EstimateJson } from '../json-shapes/index.ts';

export const estimateJson = ({ minutes, low, high, chance, model }: Expectation): EstimateJson => ({
  minutes,
  low,
  high,
  chance,
  model,
});
