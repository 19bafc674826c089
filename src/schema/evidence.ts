import { z } from 'zod';

const odds = (description: string) => z.number().min(0).max(1).meta({ description, unit: '0-1' });

/** Most findings that a question may bring. */
export const MOST_FINDINGS = 20;

const soilTestSchema = z
  .strictObject({
    kind: z.literal('soil test'),
    on: z.iso.date().meta({ description: 'Day of sampling' }),
    detected: z
      .boolean()
      .default(true)
      .meta({ description: 'False where the laboratory found none: then give its detection limit' }),
    fractionLeft: z.number().gt(0).max(20).optional().meta({
      description: 'Residue found over the full label dose in the sampled depth; or give a concentration',
      unit: '-',
    }),
    concentrationMgPerKg: z
      .number()
      .gt(0)
      .max(1000)
      .optional()
      .meta({ description: 'Residue found, with the depth sampled', unit: 'mg/kg' }),
    depthCm: z.number().min(1).max(60).optional().meta({ description: 'Depth sampled', unit: 'cm' }),
    detectionLimit: z.number().gt(0).max(1000).optional().meta({
      description: 'Least that the laboratory finds: in mg/kg beside a depth, else as a fraction of the dose',
      unit: 'mg/kg or -',
    }),
  })
  .refine(
    ({ detected, fractionLeft, concentrationMgPerKg }) =>
      !detected || (fractionLeft === undefined) !== (concentrationMgPerKg === undefined),
    { path: ['fractionLeft'], message: 'give either the fraction left or the concentration' },
  )
  .refine(
    ({ concentrationMgPerKg, depthCm }) => concentrationMgPerKg === undefined || depthCm !== undefined,
    {
      path: ['depthCm'],
      message: 'a concentration needs the depth sampled',
    },
  )
  .refine(({ detected, detectionLimit }) => detected || detectionLimit !== undefined, {
    path: ['detectionLimit'],
    message: 'where nothing was detected, the detection limit is needed',
  })
  .refine(
    ({ detected, fractionLeft, concentrationMgPerKg }) =>
      detected || (fractionLeft === undefined && concentrationMgPerKg === undefined),
    { path: ['detected'], message: 'where nothing was detected, there is no figure to give' },
  )
  .meta({ id: 'SoilTest' });

const bioassaySchema = z
  .strictObject({
    kind: z.literal('bioassay'),
    on: z.iso.date().meta({ description: 'Day on which the soil was taken or the strip sown' }),
    injured: z.boolean().meta({ description: 'Whether the indicator plants were hurt' }),
  })
  .meta({ id: 'Bioassay' });

/** A soil residue test or a field bioassay. */
export const findingSchema = z.discriminatedUnion('kind', [soilTestSchema, bioassaySchema]);
export type FindingInput = z.infer<typeof findingSchema>;

/** What field evidence did to the odds, and what a bioassay would do to them. */
export const evidenceSchema = z
  .strictObject({
    oddsBefore: odds('Odds at planting before any evidence'),
    oddsAfter: odds('Odds at planting after all of it; the answer’s own'),
    findings: z.array(
      z.strictObject({
        kind: z.enum(['soil test', 'bioassay']),
        on: z.iso.date(),
        oddsAfter: odds('Odds at planting after this and every earlier finding'),
        text: z.string().meta({ description: 'The finding in words, with what it did' }),
      }),
    ),
    bioassay: z.strictObject({
      worthIt: z.boolean().meta({ description: 'Whether the odds are neither low nor high' }),
      oddsIfClean: odds('Odds at planting if soil taken now stays clean').nullable(),
      oddsIfInjured: odds('Odds at planting if it hurts the plants').nullable(),
      text: z.string().meta({ description: 'Whether it is worth it, in words' }),
      how: z
        .string()
        .nullable()
        .meta({
          description: 'How to run it, in short; null where residual or crop is not in the catalogue',
        }),
    }),
  })
  .meta({ id: 'EvidenceAnswer' });
