import { z } from 'zod';

/** What was wrong with one thing among several, in an error's own words. */
export const fileProblemSchema = z
  .object({
    code: z.string().meta({ description: 'Stable code of the refusal' }),
    message: z.string().meta({ description: 'What was found and what is allowed' }),
    hint: z.string().meta({ description: 'What to do about it' }),
  })
  .meta({ id: 'FileProblem' });

/** One station of one imported file. */
export const importedStationSchema = z
  .object({
    stationId: z.string().meta({ description: 'Station id' }),
    firstDate: z.iso.date().meta({ description: 'First day with any value in the file' }),
    lastDate: z.iso.date().meta({ description: 'Last day with any value in the file' }),
    values: z.int().meta({ description: 'Values of the five elements used, dropped ones included' }),
    dropped: z.int().meta({ description: 'Values dropped: quality flag set, or impossible weather' }),
    duplicated: z.int().meta({ description: 'Values that stood twice for one day and element' }),
    inserted: z.int().meta({ description: 'Values that the store did not hold before' }),
    notes: z.array(z.string()).meta({ description: 'What was guessed, recognised or declared in reading' }),
    replaced: z.int().meta({ description: 'Values that took the place of a different one in the store' }),
  })
  .meta({ id: 'ImportedStation' });

/** What an import did, file by file. */
export const importSummarySchema = z
  .object({
    imported: z.int().meta({ description: 'Files imported whole' }),
    failed: z.int().meta({ description: 'Files of which nothing was imported because something was wrong' }),
    unchanged: z.int().meta({
      description: 'Files passed over because they were imported before and have not changed since',
    }),
    stopped: z.boolean().meta({
      description:
        'True where the import was told to stop: nothing of the file in hand and of those after it is in',
    }),
    passedOver: z.int().meta({ description: 'Files of a folder that hold no layout that can be read' }),
    files: z.array(
      z.object({
        source: z.string().meta({ description: 'File name, or the source a record names' }),
        outcome: z.enum(['imported', 'unchanged', 'failed', 'passed-over']),
        stations: z.array(importedStationSchema),
        problem: fileProblemSchema.nullable().meta({ description: 'Why it failed; null where it did not' }),
      }),
    ),
  })
  .meta({ id: 'ImportSummary' });
export type ImportSummary = z.infer<typeof importSummarySchema>;
export type ImportedFile = ImportSummary['files'][number];
