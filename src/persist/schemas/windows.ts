import * as z from 'zod/mini';
import {
  milestones,
  stampEvents,
  type Edge,
  type WindowRule,
} from '../../tracker/windows/index.ts';
import { matches } from './same.ts';
import { climate, id, milliseconds } from './values.ts';

export const stampEvent = z.enum(stampEvents);
export const milestone = z.enum(milestones);

export const chemistry = z.enum([
  'waterborne',
  'oxidative',
  'evaporative',
  'two-part',
  'moisture-cure',
  'glue',
  'reaction',
]);

const span = z.strictObject({
  ms: milliseconds,
  statedFor: z.exactOptional(climate),
  chemistry: z.exactOptional(chemistry),
  may: z.exactOptional(z.enum(['grow', 'shrink'])),
  learnable: z.exactOptional(z.boolean()),
});

const stampChoice = z.strictObject({
  events: z.array(stampEvent),
  agent: z.exactOptional(z.string()),
  which: z.enum(['first', 'last']),
  assume: z.exactOptional(z.boolean()),
  until: z.exactOptional(z.array(stampEvent)),
});

/** Edges hold edges, so the type is named here and each kind is held to it below. */
const edge: z.ZodMiniType<Edge> = z.lazy(() => anyEdge);

const edgeKinds = [
  z.strictObject({ kind: z.literal('stamp'), stamp: stampChoice, plus: z.exactOptional(span) }),
  z.strictObject({
    kind: z.literal('check'),
    finding: z.enum(['ready', 'not yet']),
    plus: z.exactOptional(span),
  }),
  z.strictObject({
    kind: z.literal('clock'),
    after: stampChoice,
    time: z.string().check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/)),
  }),
  z.strictObject({ kind: z.literal('beyond'), edge, plus: span }),
  z.strictObject({ kind: z.literal('earliest'), of: z.array(edge) }),
  z.strictObject({ kind: z.literal('latest'), of: z.array(edge) }),
] as const;
const anyEdge = z.discriminatedUnion('kind', edgeKinds);

const stretch = z.strictObject({
  from: z.exactOptional(edge),
  meaning: z.enum(['wait', 'go', 'go after work', 'keep off', 'late']),
  loss: z.enum(['spoils', 'costs work', 'costs nothing']),
  says: z.exactOptional(z.string()),
});

export const windowRule = z.strictObject({
  id,
  kind: z.enum(['chemical', 'coat', 'glue', 'cure', 'pot', 'timer']),
  verb: z.string(),
  milestone: z.exactOptional(milestone),
  scope: z.enum(['step', 'pass', 'section']),
  begins: stampChoice,
  stretches: z.array(stretch),
  closedBy: z.discriminatedUnion('by', [
    z.strictObject({ by: z.literal('stamp'), stamp: stampChoice }),
    z.strictObject({ by: z.literal('next pass') }),
    z.strictObject({ by: z.literal('needing step') }),
    z.strictObject({ by: z.literal('ready') }),
    z.strictObject({ by: z.literal('nothing') }),
  ]),
  notYetAdds: z.exactOptional(milliseconds),
  gear: z.exactOptional(z.string()),
});

matches<Edge, z.infer<typeof anyEdge>>(true);
matches<WindowRule, z.infer<typeof windowRule>>(true);
