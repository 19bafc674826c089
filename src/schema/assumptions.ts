import { z } from 'zod';

/**
 * Every assumption of our own that moves an answer. Each can be changed per question
 * (`--assume KEY=VALUE`), and an answer lists the values it used.
 */
export const assumptionsSchema = z
  .strictObject({
    labelRainMm: z
      .number()
      .min(0)
      .max(200)
      .default(25)
      .meta({ description: 'Label-basis rain: size of each fall', unit: 'mm' }),
    labelRainEveryDays: z
      .int()
      .min(1)
      .max(90)
      .default(12)
      .meta({ description: 'Label-basis rain: days from one fall to the next', unit: 'd' }),
    labelCoverFraction: z
      .number()
      .min(0)
      .max(1)
      .default(0.6)
      .meta({ description: 'Ground cover of the reference soil of the label run', unit: '0-1' }),
    demandFloorFraction: z.number().min(0).max(1).default(0.1).meta({
      description: 'Least breakdown days a label day is taken to ask for',
      unit: 'breakdown days per day',
    }),
    halfLifeFactor: z.number().min(0.05).max(2).default(0.5).meta({
      description: 'Breakdown days in one day of a field half-life study',
      unit: 'breakdown days per day',
    }),
    soilSpread: z.number().min(0.01).max(2).default(0.35).meta({
      description: 'Spread of breakdown speed between soils (standard deviation of its logarithm)',
      unit: '-',
    }),
    labelMargin: z
      .number()
      .min(0.5)
      .max(0.999)
      .default(0.9)
      .meta({ description: 'Share of soils that the label interval is taken to cover', unit: '0-1' }),
    moistureResponse: z.enum(['dryness', 'walker']).default('dryness').meta({
      description: 'Form of the moisture response: our own, or the Walker power law for comparison',
      unit: '-',
    }),
    moistureExponent: z.number().min(0).max(3).optional().meta({
      description: 'Exponent B of the moisture response; default 0.5, or the active’s own; 0.7 for walker',
      unit: '-',
    }),
    q10: z
      .number()
      .min(1)
      .max(6)
      .optional()
      .meta({ description: 'Speed-up of breakdown per 10 °C; default 2.58, or the active’s own', unit: '-' }),
    meltMmPerDegreeDay: z
      .number()
      .min(0)
      .max(10)
      .default(2.74)
      .meta({ description: 'Snow melt per °C above freezing and day', unit: 'mm/(°C d)' }),
    snowStopsMm: z
      .number()
      .min(0)
      .max(100)
      .default(5)
      .meta({ description: 'Snow water above which breakdown stands still', unit: 'mm' }),
    foliageHalfLifeDays: z
      .number()
      .min(0.5)
      .max(100)
      .default(10)
      .meta({ description: 'Half-life of spray on leaves', unit: 'd' }),
    washOffPerMm: z
      .number()
      .min(0)
      .max(1)
      .default(0.05)
      .meta({ description: 'Wash-off coefficient of rain on leaves', unit: '1/mm' }),
    testCv: z.number().min(0.01).max(3).default(0.3).meta({
      description: 'Error of a soil residue test, sampling included (coefficient of variation)',
      unit: '-',
    }),
    bioassaySensitivity: z
      .number()
      .min(0.5)
      .max(0.999)
      .default(0.9)
      .meta({ description: 'Share of harmful soils in which a field bioassay shows injury', unit: '0-1' }),
    bioassaySpecificity: z
      .number()
      .min(0.5)
      .max(0.999)
      .default(0.9)
      .meta({ description: 'Share of harmless soils in which a field bioassay stays clean', unit: '0-1' }),
    bioassaySpread: z.number().min(0.01).max(5).default(0.35).meta({
      description: 'Spread of a field bioassay about the harmful level (in the logarithm of residue)',
      unit: '-',
    }),
    controlFractionLeft: z.number().min(0.01).max(0.9).default(0.25).meta({
      description: 'Share of the dose left in the median soil at which weed control is taken to end',
      unit: '0-1',
    }),
    activationRainMm: z
      .number()
      .min(0)
      .max(100)
      .default(13)
      .meta({ description: 'Rain or irrigation that puts a soil residual to work', unit: 'mm' }),
    activationDays: z
      .int()
      .min(1)
      .max(60)
      .default(14)
      .meta({ description: 'Days from the application within which it must come', unit: 'd' }),
  })
  .meta({ id: 'Assumptions' });
/** The model's assumptions, each with its unit and range in the schema. */
export type Assumptions = z.infer<typeof assumptionsSchema>;
