import * as z from 'zod/mini';
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
  };
}
