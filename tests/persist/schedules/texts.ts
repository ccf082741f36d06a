import { loadSchedules, type ScheduleSourceFile } from '../../../src/persist/schedules/parsing.ts';
import type { Problem, ScheduleLibrary } from '../../../src/persist/schedules/index.ts';

/** A products file with one of each form a window can have. */
export const productsText = `sources:
  practice: common practice, no source
  label: label of the can in this test
products:
  clear:
    name: Clear coat
    class: waterborne polyurethane
    dries: waterborne
    stated for: 23 C 50 %
    source: label
    coat:
      scuff: {opens: 2 h}
      recoat: {opens: 2 h, closes: 12 h, then: scuff 320 first, source: {closes: practice}}
      wrap: {opens: 3 d}
  spray:
    name: Spray enamel
    class: aerosol alkyd enamel
    dries: oxidative
    stated for: 70 F 50 %
    source: practice
    coat:
      recoat: {opens: 5 min, keep off: {from: 1 h, until: 48 h, because: it wrinkles}}
  bleach:
    name: Bleach
    class: two-part bleach
    dries: reaction
    stated for: 23 C 50 %
    source: practice
    windows:
      b-on:
        kind: chemical
        do: B on
        starts at: first stroke of A
        opens: {soft: 5 min, hard: 10 min}
        closes: {soft: 15 min, hard: 20 min}
        then: 'A dry: start over'
        loss: spoils
        ended by: first stroke of B
`;

/** A schedule of two coats with a scuff between. */
export const scheduleText = `id: two-coats
name: Two coats
summary: Clear twice, scuffed between.
sources: {practice: 'common practice, no source'}
source: practice
steps:
  - id: coat-1
    name: coat 1
    class: coat, brushed
    minutes: {typical: 30, low: 20, high: 50}
    driver: area
    setup: 15
    product: clear
    stamps: [first stroke]
    clean air: true
  - id: scuff
    name: scuff 320
    class: scuff
    minutes: {typical: 15, low: 10, high: 30}
    driver: area
    setup: 8
    needs: [scuff]
    grit: 320
    dusty: true
  - id: coat-2
    name: coat 2
    class: coat, brushed
    minutes: {typical: 30, low: 20, high: 50}
    driver: area
    setup: 15
    product: clear
    stamps: [first stroke]
    needs: [recoat]
`;

export const productsFile: ScheduleSourceFile = { path: 'products.yaml', text: productsText };
export const scheduleFile: ScheduleSourceFile = { path: 'schedule.yaml', text: scheduleText };

/** Replaces one place of a text; a place that is not there is a mistake of the test. */
export function changed(text: string, from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`not in the text: ${from}`);
  return text.replace(from, () => to);
}

/** Reads the good products with this schedule, or these products with the good schedule. */
export const withSchedule = (text: string): ScheduleLibrary =>
  loadSchedules([productsFile, { path: 'schedule.yaml', text }]);
export const withProducts = (text: string): ScheduleLibrary =>
  loadSchedules([{ path: 'products.yaml', text }, scheduleFile]);

export const lineOf = (text: string, words: string): number =>
  text.split('\n').findIndex((line) => line.includes(words)) + 1;

export const told = (problems: readonly Problem[]) =>
  problems.map(({ line, field, says, todo }) => ({ line, field, says, todo }));
