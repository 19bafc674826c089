import { z } from 'zod';

/** How amounts and dates are said in sentences. Figures and dates of their own fields are metric and ISO always. */
export const wordingSchema = z.strictObject({
  units: z
    .enum(['us', 'metric'])
    .optional()
    .meta({ description: 'Units of amounts in sentences; US units where absent' }),
  dates: z.enum(['us', 'iso']).optional().meta({
    description:
      'Dates in sentences: us = in words, month first, iso = YYYY-MM-DD; absent, in words with US units and ISO with metric ones',
  }),
});
export type Wording = z.infer<typeof wordingSchema>;
