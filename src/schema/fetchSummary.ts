import { z } from 'zod';
import { fileProblemSchema, importSummarySchema } from './importSummary.ts';

/** What fetching from the public service did, file by file. */
export const fetchSummarySchema = z
  .object({
    address: z.string().meta({ description: 'Address that the files were taken from' }),
    wanted: z.array(z.string()).meta({ description: 'Station ids and years asked for or selected' }),
    fetched: z.int().meta({ description: 'Files that were sent' }),
    unchanged: z.int().meta({ description: 'Files of which the copy fetched earlier still holds' }),
    imported: z.int().meta({ description: 'Files that are in the store now' }),
    failed: z.int().meta({ description: 'Files that could not be fetched or not be imported' }),
    stopped: z.boolean().meta({ description: 'Whether the user stopped it before the end' }),
    files: z.array(
      z.object({
        title: z.string().meta({ description: 'Station id or year' }),
        outcome: z.enum(['fetched', 'unchanged', 'failed']).meta({ description: 'What became of the file' }),
        problem: fileProblemSchema
          .nullable()
          .meta({ description: 'Why it could not be fetched; null where it could' }),
        imported: importSummarySchema.shape.files.element
          .nullable()
          .meta({ description: 'What its import did; null where it came to none' }),
      }),
    ),
  })
  .meta({ id: 'FetchSummary' });
export type FetchSummary = z.infer<typeof fetchSummarySchema>;
export type FetchedRecord = FetchSummary['files'][number];
