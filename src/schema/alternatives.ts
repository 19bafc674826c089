import { z } from 'zod';
import { comparisonSchema, cropRowSchema, residualRowSchema, unjudgedSchema } from './comparison.ts';
import { questionSchema } from './question.ts';

const odds = z
  .number()
  .min(0)
  .max(1)
  .nullable()
  .meta({ description: 'Carryover odds at planting', unit: '0-1' });
const clearDate = z.iso.date().nullable().meta({ description: 'Clear date; null where there is none' });

const changedSchema = z.strictObject({ oddsAtPlanting: odds, clearDate });

/** What else could be done about one question, in one go. */
export const alternativesSchema = z
  .strictObject({
    question: questionSchema,
    residual: z.string(),
    crop: z.string(),
    asAsked: changedSchema.extend({
      labelDate: z.iso.date(),
      waitDays: z
        .int()
        .min(0)
        .nullable()
        .meta({ description: 'Days from the date asked about to the clear date', unit: 'd' }),
    }),
    otherCrops: z
      .array(
        cropRowSchema.omit({ odds: true, dry: true, wet: true }).extend({
          oddsAtPlanting: odds,
          withinLimit: z.boolean().meta({ description: 'Whether label and odds both allow the date' }),
        }),
      )
      .meta({ description: 'The other crops on the date asked about; those that would do first' }),
    cropsUnjudged: z.array(unjudgedSchema),
    otherResiduals: z
      .array(residualRowSchema)
      .meta({ description: 'Residuals that label and limit would have allowed on the date asked about' }),
    activation: comparisonSchema.shape.activation,
    overlap: z
      .array(changedSchema.extend({ overlapFactor: z.number() }))
      .meta({ description: 'What single, one-and-a-half and double dose make of it' }),
    soilPh: z
      .array(changedSchema.extend({ soilPh: z.number(), halfLifeFactor: z.number() }))
      .meta({ description: 'What a zone of another pH makes of it; empty where no figures are known' }),
    notes: z.array(z.string()).meta({ description: 'What could not be looked at, and why' }),
  })
  .meta({ id: 'Alternatives' });
export type Alternatives = z.infer<typeof alternativesSchema>;
