import { z } from 'zod';
import { recordIdSchema } from './recordId.ts';

/** What became of a CSV table of fields or labels. */
export const tableImportSchema = z
  .strictObject({
    saved: z.array(
      z.strictObject({
        id: recordIdSchema,
        version: z.int().min(1),
        isNew: z.boolean().meta({ description: 'False where it took the place of a version before' }),
      }),
    ),
    unchanged: z.array(recordIdSchema).meta({ description: 'Kept already exactly as in the table' }),
    faults: z.array(
      z.strictObject({
        line: z.int().meta({ description: 'Line of the file; the head is line 1' }),
        column: z.string().nullable(),
        message: z.string(),
      }),
    ),
  })
  .meta({ id: 'TableImport' });
export type TableImport = z.infer<typeof tableImportSchema>;
