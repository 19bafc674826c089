import { z } from 'zod';
import { problemSchema } from './answer.ts';
import { importSummarySchema } from './importSummary.ts';

/** One line of the answer to a file that was sent for import; the last is never `reading`. */
export const importEventSchema = z
  .discriminatedUnion('step', [
    z.object({
      step: z.literal('reading'),
      fractionDone: z
        .number()
        .min(0)
        .max(1)
        .meta({ description: 'Share of the file’s longest step that is done (0-1)' }),
    }),
    z.object({ step: z.literal('done'), summary: importSummarySchema }),
    z.object({
      step: z.literal('list-kept'),
      file: z.string().meta({ description: 'Station list that is kept: records sent from now on use it' }),
    }),
    z.object({ step: z.literal('refused'), problem: problemSchema }),
  ])
  .meta({ id: 'ImportEvent' });
export type ImportEvent = z.infer<typeof importEventSchema>;
