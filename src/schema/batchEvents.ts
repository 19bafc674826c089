import { z } from 'zod';
import { problemSchema } from './answer.ts';
import { batchSchema } from './batch.ts';

/** One line of the answer to a list of fields; the last is `end` or `refused`. */
export const batchEventSchema = z
  .discriminatedUnion('step', [
    z.strictObject({ step: z.literal('start'), of: z.int().meta({ description: 'Rows of the list' }) }),
    z.strictObject({
      step: z.literal('progress'),
      done: z.int().meta({ description: 'Rows answered or refused' }),
      of: z.int(),
    }),
    z.strictObject({
      step: z.literal('end'),
      batch: batchSchema,
      csv: z.string().meta({
        description:
          'The list as CSV, its own columns first, answers behind; formulas of spreadsheets defused',
      }),
    }),
    z.strictObject({ step: z.literal('refused'), problem: problemSchema }),
  ])
  .meta({ id: 'BatchEvent' });
export type BatchEvent = z.infer<typeof batchEventSchema>;
