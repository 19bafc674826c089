import { z } from 'zod';

/** Shape of ids that people read; they stand in addresses, file names and tables. */
export const recordIdSchema = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]{0,59}$/, 'small letters, digits and hyphens, 60 at most');

/** Version of something that is kept. */
export const versionSchema = z.int().min(1).meta({ description: 'Goes up by one with every change' });

/** Something that was removed and can be brought back. */
export const removedSchema = z
  .strictObject({ id: recordIdSchema, name: z.string(), version: versionSchema })
  .meta({ id: 'Removed' });
export type Removed = z.infer<typeof removedSchema>;
