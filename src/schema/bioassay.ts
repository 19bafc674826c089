import { z } from 'zod';
import { markSchema, provenanceSchema } from './provenance.ts';

/** Parts of a bioassay's description, in the order in which they are printed. */
export const BIOASSAY_PARTS = [
  'when',
  'where',
  'check',
  'depth',
  'sow',
  'grow',
  'species',
  'reading',
  'limits',
] as const;

/** One statement on field bioassays, as bioassay.yaml writes it. */
export const bioassayEntrySchema = z
  .strictObject({
    part: z.enum(BIOASSAY_PARTS),
    text: z.string().min(1).meta({ description: 'The statement; of a species, why it serves' }),
    crop: z.string().min(1).optional().meta({ description: 'Indicator species, as crops.csv names it' }),
    groups: z
      .array(z.string().regex(/^\d{1,2}$/, 'a group number'))
      .min(1)
      .optional()
      .meta({ description: 'Mode-of-action groups it speaks of' }),
    actives: z.array(z.string().min(1)).min(1).optional().meta({ description: 'Actives it speaks of' }),
    ...provenanceSchema.shape,
  })
  .refine(({ part, crop }) => (part === 'species') === (crop !== undefined), {
    path: ['crop'],
    message: 'a species names its crop, and nothing else has one',
  })
  .meta({ id: 'BioassayEntry' });
export type BioassayEntry = z.infer<typeof bioassayEntrySchema>;

const lineSchema = z
  .strictObject({
    text: z.string(),
    mark: markSchema,
    sources: z.array(z.string()).meta({ description: 'Titles of its sources' }),
  })
  .meta({ id: 'GuideLine' });
export type GuideLine = z.infer<typeof lineSchema>;

/** How to run a field bioassay for one residual before one crop. */
export const bioassayGuideSchema = z
  .strictObject({
    title: z.string(),
    residual: z.string(),
    group: z.string().meta({ description: 'Mode-of-action group' }),
    crop: z.string(),
    brief: z.string().meta({ description: 'The whole in two sentences' }),
    worth: z.string().meta({ description: 'When a field bioassay is worth doing' }),
    when: z.array(lineSchema),
    where: z.array(lineSchema).meta({ description: 'Where to take soil, the untreated check included' }),
    depth: z.array(lineSchema),
    steps: z.array(lineSchema).meta({ description: 'Sowing and growing' }),
    species: z
      .array(
        z.strictObject({
          crop: z.string(),
          reason: z.string(),
          mark: markSchema.nullable().meta({ description: 'null for the crop asked about itself' }),
          sources: z.array(z.string()),
        }),
      )
      .meta({ description: 'What to sow: the crop itself, then indicators' }),
    reading: z.array(lineSchema),
    limits: z.array(lineSchema),
    sources: z.array(z.string()).meta({ description: 'Titles of all sources, each once' }),
  })
  .meta({ id: 'BioassayGuide' });
export type BioassayGuide = z.infer<typeof bioassayGuideSchema>;
