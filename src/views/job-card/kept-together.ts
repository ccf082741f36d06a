import { noBreak } from '../drawing/wrap.ts';

/** Words that no line break may part: `16 C 60 %`, `3 h 50`. */
export const keptTogether = (text: string): string => text.replaceAll(' ', noBreak);
