import { z } from 'zod';
import { problemSchema } from './answer.ts';
import { hindcastSchema } from './hindcast.ts';

/** One line of a look back that tells how far it has come; the last is `end` or `refused`. */
export const hindcastEventSchema = z
  .discriminatedUnion('step', [
    z.strictObject({
      step: z.literal('progress'),
      done: z.int().meta({ description: 'Past years looked back on' }),
      of: z.int(),
    }),
    z.strictObject({ step: z.literal('end'), hindcast: hindcastSchema }),
    z.strictObject({ step: z.literal('refused'), problem: problemSchema }),
  ])
  .meta({ id: 'HindcastEvent' });
export type HindcastEvent = z.infer<typeof hindcastEventSchema>;
