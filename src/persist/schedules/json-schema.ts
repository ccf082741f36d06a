import * as z from 'zod/mini';
import { cautionsFile } from '../rules/cautions-form.ts';
import { overFile } from '../rules/over-form.ts';
import { productsFile } from './product-form.ts';
import { scheduleFile } from './schedule-form.ts';

/** JSON Schemas by which an editor checks and completes the files while they are written; by file name. */
export function jsonSchemas(): Readonly<Record<string, unknown>> {
  return {
    'schedule.json': {
      title: 'Finishing schedule',
      ...z.toJSONSchema(scheduleFile, { io: 'input', reused: 'ref' }),
    },
    'products.json': {
      title: 'Products',
      ...z.toJSONSchema(productsFile, { io: 'input', reused: 'ref' }),
    },
    'over.json': {
      title: 'What may go over what',
      ...z.toJSONSchema(overFile, { io: 'input', reused: 'ref' }),
    },
    'cautions.json': {
      title: 'Cautions',
      ...z.toJSONSchema(cautionsFile, { io: 'input', reused: 'ref' }),
    },
  };
}
