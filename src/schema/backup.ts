import { z } from 'zod';
import { lastAnswerSchema } from './fieldAnswer.ts';
import { fieldRecordSchema } from './fieldRecord.ts';
import { labelEntrySchema } from './labelEntry.ts';
import { recordIdSchema } from './recordId.ts';

/** Highest version that the store can count on from. */
const MOST_VERSIONS = 1_000_000_000;

const versionOf = <T extends z.ZodType>(document: T) =>
  z.strictObject({
    id: recordIdSchema,
    version: z.int().min(1).max(MOST_VERSIONS),
    removed: z.boolean(),
    changedAt: z.iso.datetime().meta({ description: 'When this version was made' }),
    document,
  });

const shelf = <T extends z.ZodType>(document: T) =>
  z
    .array(versionOf(document))
    .meta({ description: 'Every version of every record; the highest of an id is the present one' });

/** Everything that is kept, in one file. */
export const backupSchema = z
  .strictObject({
    format: z.literal('drywake-backup'),
    formatVersion: z.literal(1),
    madeAt: z.iso.datetime(),
    program: z.string().meta({ description: 'Version of the program that wrote it' }),
    fields: shelf(fieldRecordSchema),
    labels: shelf(labelEntrySchema),
    lastAnswers: z.array(
      z.strictObject({ fieldId: recordIdSchema, planId: recordIdSchema, answer: lastAnswerSchema }),
    ),
  })
  .meta({ id: 'Backup' });
export type Backup = z.infer<typeof backupSchema>;

/** Puts a backup in the place of all that is kept; must be said to be meant. */
export const restoreRequestSchema = z
  .strictObject({ replace: z.literal(true), backup: backupSchema })
  .meta({ id: 'RestoreRequest' });

export const restoreResultSchema = z
  .strictObject({
    fields: z.int().meta({ description: 'Fields restored, removed ones included' }),
    labels: z.int().meta({ description: 'Label entries restored' }),
    keptAs: z.string().nullable().meta({
      description: 'Name of the backup, in the data folder, of what was there before; null where nothing was',
    }),
  })
  .meta({ id: 'Restored' });
export type RestoreResult = z.infer<typeof restoreResultSchema>;
