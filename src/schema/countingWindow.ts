import { z } from 'zod';
import { markSchema, sourceIdSchema } from './provenance.ts';

const monthDay = z
  .string()
  .regex(/^\d{2}-\d{2}$/, 'a date MM-DD')
  .nullable();

/** A published rule about which rain of a season counts towards breakdown: advice beside the model, by region. */
export const countingWindowSchema = z
  .strictObject({
    id: z.string().regex(/^W\d{2}$/, 'an id such as W01'),
    kind: z.enum(['threshold', 'other window', 'raise', 'caution', 'not credited']).meta({
      description:
        'threshold = a sum to reach; other window = dates to count instead; raise = what lifts a zone into a higher class; not credited = water that does not count',
    }),
    from: monthDay.meta({ description: 'First day that counts, MM-DD' }),
    to: monthDay.meta({ description: 'Last day that counts, MM-DD' }),
    thresholdMm: z.number().gt(0).nullable().meta({ description: 'Sum below which it speaks', unit: 'mm' }),
    advice: z.string().min(1).meta({ description: 'What the rule says' }),
    country: z.enum(['US', 'CA']).meta({ description: 'Country of the region' }),
    region: z.string().min(1).meta({ description: 'Region it was written for' }),
    sources: z.array(sourceIdSchema).min(1),
    mark: markSchema,
  })
  .refine(({ kind, thresholdMm }) => (kind === 'threshold') === (thresholdMm !== null), {
    path: ['thresholdMm'],
    message: 'a threshold has a sum, and nothing else has one',
  })
  .meta({ id: 'CountingWindow' });
export type CountingWindow = z.infer<typeof countingWindowSchema>;
