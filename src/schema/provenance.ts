import { z } from 'zod';

/** How a figure or statement came into the catalogue. */
export const MARKS = ['seen', 'from memory', 'computed'] as const;

export const markSchema = z.enum(MARKS).meta({
  id: 'Mark',
  description:
    'seen = read in the source; from memory = recalled, to be checked; computed = worked out by us from figures of the sources',
});

export const sourceIdSchema = z
  .string()
  .regex(/^[SM]\d{2,3}$/, 'a source id such as S04')
  .meta({ description: 'Id in sources.csv' });

/** Mark and sources of one figure or statement. */
export const provenanceSchema = z
  .strictObject({
    mark: markSchema,
    sources: z.array(sourceIdSchema).min(1).meta({ description: 'Where it stands, by id' }),
  })
  .meta({ id: 'Provenance' });
export type Provenance = z.infer<typeof provenanceSchema>;
