import { z } from 'zod';
import { intervalUsedSchema } from './answer.ts';
import { modelUsedSchema } from './modelUsed.ts';
import { markSchema } from './provenance.ts';
import { questionSchema } from './question.ts';
import { NAMES_PRODUCT, productShape } from './treatmentEntry.ts';

const odds = (description: string) => z.number().min(0).max(1).meta({ description, unit: '0-1' });
const weeks = (description: string) =>
  z
    .number()
    .nullable()
    .meta({ description: `${description}; null past the search`, unit: 'weeks' });

/**
 * Every residual before one crop on one date: a question without its residual and what belongs to that one. The field's
 * other treatments stand beside each.
 */
export const comparisonQuestionSchema = questionSchema
  .omit({
    residual: true,
    labelEntry: true,
    interval: true,
    halfLifeDays: true,
    rateGramsPerHa: true,
    evidence: true,
    zones: true,
  })
  .meta({ id: 'ComparisonQuestion' });
/** A question for residuals before one crop and date, as it is given. */
export type ComparisonInput = z.input<typeof comparisonQuestionSchema>;

/** Odds in the dry, the middle and the wet third of the years. */
export const thirdOddsSchema = z
  .strictObject({ dry: odds('Dry third'), middle: odds('Middle third'), wet: odds('Wet third') })
  .meta({ id: 'ThirdOdds' });

/** What is known of a pair of residual and crop, whatever the date. */
const pairShape = {
  carryoverModelled: z.boolean().meta({ description: 'False where there is no carryover to reckon' }),
  labelDate: z.iso.date().meta({ description: 'Never earlier than this' }),
  clearDate: z.iso
    .date()
    .nullable()
    .meta({ description: 'First date from the label date on with odds at or under the limit for good' }),
  interval: intervalUsedSchema,
};

/** The user's own label entry by which something was judged. */
const ownEntrySchema = z
  .strictObject({ id: z.string(), name: z.string().meta({ description: 'What the user calls the product' }) })
  .nullable()
  .meta({ description: 'The user’s own label entry that it goes by; null where the catalogue counts' });

export const residualRowSchema = z
  .strictObject({
    residual: z.string().meta({ description: 'The active, or those of an own product' }),
    labelEntry: ownEntrySchema,
    group: z.string().meta({ description: 'Mode-of-action group' }),
    ...pairShape,
    labelAllows: z.boolean().meta({
      description:
        'Whether the planting date is not before the label date, and no condition of the label forbids',
    }),
    withinLimit: z.boolean().meta({ description: 'Whether label and odds both allow the planting date' }),
    oddsAtPlanting: odds('Carryover odds on the planting date').nullable(),
    oddsRange: z.strictObject({ low: odds('Lower end'), high: odds('Upper end'), years: z.int() }).nullable(),
    thirdOdds: thirdOddsSchema.nullable(),
    oddsAtLabelDate: odds('Carryover odds on the label date').nullable(),
    weeksOfControl: z
      .strictObject({
        dry: weeks('Dry third'),
        middle: weeks('Median of all years'),
        wet: weeks('Wet third'),
      })
      .nullable()
      .meta({ description: 'Weeks until little is left in the median soil; null without a half-life' }),
    halfLife: z
      .strictObject({
        days: z.number().meta({ description: 'Field half-life used', unit: 'd' }),
        mark: z.union([markSchema, z.literal('own label')]),
        sources: z.array(z.string()).meta({ description: 'Titles of its sources' }),
      })
      .nullable(),
  })
  .meta({ id: 'ResidualRow' });
export type ResidualRow = z.infer<typeof residualRowSchema>;

/** A residual or crop that cannot be judged, and why. */
export const unjudgedSchema = z
  .strictObject({
    name: z.string(),
    code: z.enum(['INTERVAL_MISSING', 'HALF_LIFE_MISSING', 'TOO_FEW_YEARS', 'CROP_UNKNOWN']),
    reason: z.string().meta({ description: 'What is missing, in words' }),
  })
  .meta({ id: 'Unjudged' });
export type Unjudged = z.infer<typeof unjudgedSchema>;

export const comparisonSchema = z
  .strictObject({
    question: comparisonQuestionSchema,
    crop: z.string(),
    activation: z
      .strictObject({
        odds: odds('Odds of enough rain or irrigation soon enough'),
        low: odds('Lower end, from the number of years'),
        high: odds('Upper end'),
        neededMm: z.number().meta({ unit: 'mm' }),
        withinDays: z.int().meta({ unit: 'd' }),
      })
      .nullable()
      .meta({
        description: 'Whether rain puts a soil residual to work; null where no residual can be judged',
      }),
    residuals: z.array(residualRowSchema).meta({
      description:
        'Those that label and limit allow first, then those the label allows, then the rest; by odds',
    }),
    unjudged: z
      .array(unjudgedSchema)
      .meta({ description: 'Residuals without an interval before this crop, or without what the odds need' }),
    cautions: z.array(z.string()),
    model: modelUsedSchema,
  })
  .meta({ id: 'Comparison' });
/** Residuals before one crop and date, each with its odds [0-1], dates and weeks of control. */
export type Comparison = z.infer<typeof comparisonSchema>;

/** Most planting dates, and crops, of one grid. */
const MOST_DATES = 400;
const MOST_CROPS = 100;

/**
 * One treatment, many crops and planting dates. The field's other treatments stand beside it; an interval of theirs
 * belongs to one crop and is not taken.
 */
export const cropGridQuestionSchema = questionSchema
  .omit({ crop: true, plantOn: true, interval: true, evidence: true, zones: true })
  .extend({
    residual: productShape.residual,
    crops: z
      .array(z.string().min(1).max(80))
      .min(1)
      .max(MOST_CROPS)
      .optional()
      .meta({ description: 'Crops to look at; all of the catalogue where absent' }),
    plantFrom: z.iso.date().meta({ description: 'First planting date' }),
    plantTo: z.iso.date().meta({ description: 'Last planting date' }),
    stepDays: z
      .int()
      .min(1)
      .max(92)
      .default(7)
      .meta({ description: `Days from one date to the next; at most ${MOST_DATES} dates`, unit: 'd' }),
  })
  .refine(...NAMES_PRODUCT)
  .meta({ id: 'CropGridQuestion' });
/** A question for crops after one treatment, over planting dates, as it is given. */
export type CropGridInput = z.input<typeof cropGridQuestionSchema>;
export { MOST_DATES };

const oddsByDate = (description: string) =>
  z
    .array(odds('Odds'))
    .nullable()
    .meta({ description: `${description}, one for each date`, unit: '0-1' });

export const cropRowSchema = z
  .strictObject({
    crop: z.string(),
    ...pairShape,
    labelForbids: z
      .boolean()
      .optional()
      .meta({ description: 'Present where a condition of the label has failed and the crop may not follow' }),
    odds: oddsByDate('All years'),
    oddsRange: z
      .strictObject({
        low: z.array(z.number().min(0).max(1)).meta({ description: 'Lower end, 90 %', unit: '0-1' }),
        high: z.array(z.number().min(0).max(1)).meta({ description: 'Upper end, 90 %', unit: '0-1' }),
        years: z.array(z.int().min(0)).meta({ description: 'Past years that the odds rest on' }),
      })
      .nullable()
      .meta({ description: 'Range of the odds from the number of years alone, one of each for each date' }),
    dry: oddsByDate('Dry third'),
    wet: oddsByDate('Wet third'),
  })
  .meta({ id: 'CropRow' });
export type CropRow = z.infer<typeof cropRowSchema>;

export const cropGridSchema = z
  .strictObject({
    question: cropGridQuestionSchema,
    residual: z.string().meta({ description: 'The active, or those of an own product' }),
    labelEntry: ownEntrySchema,
    dates: z.array(z.iso.date()).meta({ description: 'Planting dates, the columns of every row' }),
    crops: z.array(cropRowSchema).meta({ description: 'By clear date, then by label date' }),
    unjudged: z.array(unjudgedSchema),
    cautions: z.array(z.string()),
    model: modelUsedSchema,
  })
  .meta({ id: 'CropGrid' });
/** Crops after one treatment: for each planting date the odds [0-1], and where the label forbids it. */
export type CropGrid = z.infer<typeof cropGridSchema>;
