import * as z from 'zod/mini';
import { drivers, stepClasses, type Product, type Step } from '../../tracker/trade/index.ts';
import { matches } from './same.ts';
import { calendarDay, climate, id, milliseconds } from './values.ts';
import { chemistry, milestone, stampEvent, windowRule } from './windows.ts';

const plannedStamp = z.strictObject({
  event: stampEvent,
  agent: z.exactOptional(z.string()),
  says: z.string(),
  perSection: z.exactOptional(z.boolean()),
});

const terms = {
  madeBefore: z.exactOptional(z.number()),
  madeSince: z.exactOptional(z.number()),
  wood: z.exactOptional(z.array(z.enum(['soft', 'hard', 'unknown']))),
  answers: z.exactOptional(z.record(id, z.array(z.string()))),
};

export const step = z.strictObject({
  id,
  name: z.string(),
  stepClass: z.enum(stepClasses),
  minutes: z.strictObject({ typical: z.number(), low: z.number(), high: z.number() }),
  driver: z.enum(drivers),
  minutesFor: z.exactOptional(z.number()),
  setupMinutes: z.number(),
  product: z.exactOptional(z.string()),
  passes: z.exactOptional(z.number()),
  stamps: z.array(plannedStamp),
  windows: z.array(windowRule),
  needs: z.array(milestone),
  grit: z.exactOptional(z.number()),
  dusty: z.exactOptional(z.boolean()),
  cleanAir: z.exactOptional(z.boolean()),
  fumes: z.exactOptional(z.boolean()),
  untilRight: z.exactOptional(z.boolean()),
  cautions: z.array(z.string()),
  onlyIf: z.exactOptional(
    z.strictObject({ ...terms, any: z.exactOptional(z.array(z.strictObject(terms))) }),
  ),
  asks: z.exactOptional(
    z.strictObject({
      question: z.string(),
      answers: z.array(z.strictObject({ id, says: z.string() })),
    }),
  ),
  minutesTimes: z.exactOptional(z.record(id, z.record(id, z.number()))),
  trialFor: z.exactOptional(z.array(id)),
});

export const product = z.strictObject({
  id,
  name: z.string(),
  productClass: z.string(),
  chemistry,
  statedFor: climate,
  windows: z.array(windowRule),
  needsAir: z.exactOptional(
    z.strictObject({
      fromC: z.exactOptional(z.number()),
      toC: z.exactOptional(z.number()),
      rhUpTo: z.exactOptional(z.number()),
      source: z.string(),
    }),
  ),
  cautions: z.array(z.string()),
  deadly: z.exactOptional(z.boolean()),
  byWood: z.exactOptional(
    z.strictObject({
      soft: z.exactOptional(z.array(windowRule)),
      hard: z.exactOptional(z.array(windowRule)),
    }),
  ),
  can: z.exactOptional(
    z.strictObject({
      batch: z.exactOptional(z.string()),
      openedOn: z.exactOptional(calendarDay),
      keepsTill: z.exactOptional(calendarDay),
      onceOpened: z.exactOptional(milliseconds),
    }),
  ),
  selfHeatingRags: z.exactOptional(z.boolean()),
});

matches<Step, z.infer<typeof step>>(true);
matches<Product, z.infer<typeof product>>(true);
