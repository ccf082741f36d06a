import type { ScreenModule } from '../screen.ts';
import { drawBench } from './bench-draw.ts';
import { manyOnBench, pressBench } from './bench-press.ts';
import type { BenchState } from './bench-state.ts';

export const benchScreen: ScreenModule<BenchState> = {
  draw: drawBench,
  press: pressBench,
  many: manyOnBench,
};
