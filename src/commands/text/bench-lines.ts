import { plainBench } from '../../views/plain/index.ts';
import type { Look } from '../line/look.ts';

export const benchLines = (look: Look): readonly string[] => plainBench(look).split('\n');
