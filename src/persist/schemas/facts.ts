import * as z from 'zod/mini';
import type {
  BenchFact,
  ConditionsFact,
  ConditionsFactBodies,
  FactHead,
  PingFact,
  PingFactBodies,
} from '../../tracker/bench/index.ts';
import { benchBodies } from './bench-facts.ts';
import { matches } from './same.ts';
import { climate, id, instant, milliseconds } from './values.ts';

/** The facts that each file keeps. */
export type FactsOf = { bench: BenchFact; conditions: ConditionsFact; pings: PingFact };

const head = {
  id,
  group: id,
  at: instant,
  told: instant,
  by: z.enum(['person', 'script', 'clock']),
  uptimeMs: z.nullable(milliseconds),
  bootId: z.nullable(z.string()),
};

const conditionsBodies = {
  'reading-taken': () =>
    z.strictObject({ ...climate.shape, surfaceC: z.exactOptional(z.number()) }),
};

const pingBodies = {
  'ping-claimed': () =>
    z.strictObject({
      pings: z.array(z.string()),
      text: z.string(),
      loud: z.boolean(),
      piece: z.nullable(id),
    }),
  'ping-sent': () =>
    z.strictObject({
      claim: id,
      ways: z.array(z.string()),
      failures: z.array(z.string()),
    }),
  'ping-acknowledged': () => z.strictObject({ claim: id }),
};

type Makers = Readonly<Record<string, () => z.ZodMiniType>>;
type Inferred<Bodies extends Makers> = {
  [Kind in keyof Bodies]: z.infer<ReturnType<Bodies[Kind]>>;
};
matches<FactHead, z.infer<z.ZodMiniObject<typeof head>>>(true);
matches<ConditionsFactBodies, Inferred<typeof conditionsBodies>>(true);
matches<PingFactBodies, Inferred<typeof pingBodies>>(true);

const factsWith = (bodies: Makers): ReadonlyMap<string, () => z.ZodMiniType> =>
  new Map(
    Object.entries(bodies).map(([kind, body]) => {
      let schema: z.ZodMiniType | undefined;
      const made = () => z.strictObject({ ...head, kind: z.literal(kind), body: body() });
      return [kind, () => (schema ??= made())];
    }),
  );

/** What makes the schema of each kind of fact, once, by the file that keeps it. */
export const factSchemas: Readonly<Record<keyof FactsOf, ReturnType<typeof factsWith>>> = {
  bench: factsWith(benchBodies),
  conditions: factsWith(conditionsBodies),
  pings: factsWith(pingBodies),
};
