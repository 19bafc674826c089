import { z } from 'zod';
import { evidenceSchema } from './evidence.ts';
import { countingAdviceSchema, labelConditionSchema } from './labelCondition.ts';
import { storedLabelSchema } from './labelEntry.ts';
import { modelUsedSchema } from './modelUsed.ts';
import { questionSchema } from './question.ts';
import { seasonStorySchema } from './seasonStory.ts';
import { stationSchema } from './weather.ts';
import { weatherHelpSchema } from './weatherHelp.ts';
import { whySchema } from './why.ts';

const probability = (description: string) => z.number().min(0).max(1).meta({ description, unit: '0-1' });
const breakdownDays = (description: string) =>
  z.number().min(0).meta({ description, unit: 'breakdown days' });
const date = (description: string) => z.iso.date().meta({ description });

/** The third of the years a year belongs to, by warm rain. */
export const thirdNameSchema = z.enum(['dry', 'middle', 'wet']);

/** Something the user must know beside the numbers. */
export const cautionSchema = z
  .strictObject({
    code: z.string().meta({ description: 'Stable name of the caution' }),
    text: z.string().meta({ description: 'The caution in plain words' }),
    sources: z
      .array(z.string())
      .optional()
      .meta({ description: 'Titles of the sources it rests on, where it is the catalogue’s' }),
  })
  .meta({ id: 'Caution' });
export type Caution = z.infer<typeof cautionSchema>;

export const thirdSchema = z
  .strictObject({
    name: thirdNameSchema,
    odds: probability('Odds at planting in this third of the years'),
    clearDate: date('Median of the years’ own clear dates').nullable(),
    medianDaysToClear: z.number().nullable().meta({
      description: 'Median days from application to clear; null where half of them never clear',
      unit: 'd',
    }),
    daysAfterLabel: z.number().nullable().meta({ description: 'Clear date less label date', unit: 'd' }),
    warmRainMm: z
      .number()
      .meta({ description: 'Median warm rain from application to label date', unit: 'mm' }),
    years: z.array(z.int()).meta({ description: 'The years, by the date of application' }),
  })
  .meta({ id: 'Third' });

export const yearAnswerSchema = z
  .strictObject({
    year: z.int().meta({ description: 'Year of the application’s calendar date in the record' }),
    third: thirdNameSchema,
    weight: z.number().meta({ description: 'Weight in the odds' }),
    breakdownDays: breakdownDays('Breakdown days from application to planting'),
    probability: probability('Share of soils harmful at planting with this year’s weather'),
    clearDate: date('First date from which its own probability stays at or under the limit').nullable(),
    warmRainMm: z.number().meta({ description: 'Warm rain from application to label date', unit: 'mm' }),
  })
  .meta({ id: 'YearAnswer' });

/** A species of a mix, judged by itself. */
const mixedSpeciesSchema = z
  .strictObject({
    crop: z.string(),
    interval: z.string().meta({ description: 'Its interval in words' }),
    labelDate: date('Its own label date'),
    clearDate: date('Its clear date, not before the mix’s label date').nullable(),
    oddsAtPlanting: probability('Odds that it is hurt; null where no carryover is modelled').nullable(),
    rules: z.boolean().meta({ description: 'True for the one whose odds are the mix’s' }),
  })
  .meta({ id: 'MixedSpecies' });

/** Where the interval that set the label date comes from. */
export const intervalUsedSchema = z
  .strictObject({
    text: z.string().meta({ description: 'The interval in words' }),
    months: z.int(),
    days: z.int(),
    lengthDays: z.int().meta({ description: 'Label date less application date', unit: 'd' }),
    origin: z.enum(['own label', 'catalogue']),
    fromMemory: z.boolean().meta({ description: 'True where the catalogue row rests on memory' }),
    confirmed: z.boolean().meta({ description: 'True where the user gave it from a label' }),
    disagreement: z.string().nullable().meta({ description: 'How sources differ, where they do' }),
    sources: z.array(z.string()).meta({ description: 'Titles of the sources' }),
  })
  .meta({ id: 'IntervalUsed' });

/** Curves and rain for the charts; only on request. */
export const seasonSchema = z
  .strictObject({
    startDate: date('Date of the first value of every curve: the application'),
    odds: z.array(probability('Odds')).meta({ description: 'Odds on each day from the start on' }),
    yearStepDays: z
      .int()
      .meta({ description: 'Days from one value of a year’s curve to the next', unit: 'd' }),
    years: z.array(
      z.strictObject({
        year: z.int(),
        third: thirdNameSchema,
        probability: z.array(probability('Probability in this year’s weather')),
      }),
    ),
    quantileDates: z.array(z.iso.date().nullable()).length(20).meta({
      description:
        'Dot i of 20: the date from which the odds stay under 1 − (i − 0.5)/20; null past the horizon',
    }),
    rain: z.strictObject({
      observedMm: z
        .number()
        .meta({ description: 'Rain from application to the last observed day', unit: 'mm' }),
      normalMm: z.number().meta({ description: 'Mean of the years’ rain over the same days', unit: 'mm' }),
      percentOfNormal: z.number().nullable(),
      months: z.array(
        z.strictObject({
          month: z.string().regex(/^\d{4}-\d{2}$/),
          observedMm: z
            .number()
            .nullable()
            .meta({ description: 'Rain observed in this month since application', unit: 'mm' }),
          normalMm: z
            .number()
            .meta({ description: 'Mean rain of the month’s days inside the season', unit: 'mm' }),
        }),
      ),
    }),
    story: seasonStorySchema,
  })
  .meta({ id: 'Season' });
/** Curves and rain that the charts of an answer are drawn from. */
export type Season = z.infer<typeof seasonSchema>;

/** A residual with the half-life that counts. */
const residualUsedSchema = z
  .strictObject({
    name: z.string(),
    group: z.string().nullable().meta({ description: 'Mode-of-action group' }),
    halfLifeDays: z.number().nullable().meta({ description: 'Field half-life used', unit: 'd' }),
    halfLifeOrigin: z.enum(['own entry', 'catalogue', 'none']),
  })
  .meta({ id: 'ResidualUsed' });

/** The answer to one question. Numbers are unrounded; null means there is none, and a caution says why. */
export const answerSchema = z
  .strictObject({
    sentence: z.string().meta({ description: 'The answer in one sentence' }),
    advice: z.string().meta({ description: 'What to do about it, in one or two sentences' }),
    carryoverModelled: z
      .boolean()
      .meta({ description: 'False where the interval is 0: then there are no odds' }),
    labelDate: date('Application date plus the label’s rotation interval: never undercut'),
    clearDate: date(
      'First date on or after the label date from which the odds stay at or under the limit',
    ).nullable(),
    stretch: z
      .number()
      .nullable()
      .meta({ description: '(clear date − application) / (label date − application)' }),
    oddsAtPlanting: probability('Carryover odds on the planting date').nullable(),
    oddsRange: z
      .strictObject({
        low: probability('Lower end'),
        high: probability('Upper end'),
        years: z.int().meta({ description: 'Number of years of weather behind it' }),
      })
      .nullable(),
    oddsAtLabelDate: probability('Carryover odds on the label date').nullable(),
    demandBreakdownDays: breakdownDays('What the label interval asks for').nullable(),
    medianBreakdownDays: breakdownDays('Median over the years, application to planting').nullable(),
    thirds: z.array(thirdSchema),
    zones: z
      .array(
        z.strictObject({
          name: z.string(),
          overlapFactor: z.number(),
          oddsAtPlanting: probability('Odds at planting there; null where none can be reckoned').nullable(),
          clearDate: date('Clear date there; null where there is none').nullable(),
        }),
      )
      .meta({ description: 'Parts of the field with another overlap, beside the main answer' }),
    years: z.array(yearAnswerSchema),
    why: whySchema.nullable().meta({ description: 'Reasons behind the odds; null without odds' }),
    evidence: evidenceSchema
      .nullable()
      .meta({ description: 'What field evidence did, and what a bioassay would do; null without odds' }),
    conditions: z
      .array(labelConditionSchema)
      .meta({ description: 'What the label ties its interval to, against this field’s weather and soil' }),
    countingWindows: z
      .array(countingAdviceSchema)
      .meta({ description: 'Published counting rules of the country: advice that sets no date' }),
    mix: z
      .array(mixedSpeciesSchema)
      .meta({ description: 'Each species of a mix; empty where one crop was asked for' }),
    cautions: z.array(cautionSchema),
    inputs: z.strictObject({
      question: questionSchema,
      residual: residualUsedSchema,
      crop: z.string(),
      labelEntry: storedLabelSchema
        .nullable()
        .meta({ description: 'The user’s own label entry that the answer rests on' }),
      interval: intervalUsedSchema,
      mainInterval: intervalUsedSchema,
      otherTreatments: z
        .array(
          z.strictObject({
            residual: residualUsedSchema,
            appliedOn: date('Date of application'),
            interval: intervalUsedSchema,
            labelDate: date('Its own label date'),
            leavesResidue: z.boolean().meta({
              description: 'False where it takes no part: an interval of 0, or no uptake from soil',
            }),
          }),
        )
        .meta({ description: 'Other treatments of the field, judged together with the main one' }),
      canopyFraction: probability('Share caught by green leaves: as given, or by growth stage'),
      soil: z.strictObject({
        texture: z.string(),
        thetaFieldCapacity: z.number().meta({ description: 'Water at 33 kPa', unit: 'm3/m3' }),
        thetaWiltingPoint: z.number().meta({ description: 'Water at 1500 kPa', unit: 'm3/m3' }),
        evaporableWaterMm: z.number().meta({ description: 'Water the top 15 cm can lose', unit: 'mm' }),
      }),
    }),
    model: modelUsedSchema,
    weather: z.strictObject({
      station: stationSchema,
      source: z.string(),
      firstDate: date('First day of the record'),
      lastDate: date('Last day of the record'),
      firstYear: z.int().nullable().meta({ description: 'First year used' }),
      lastYear: z.int().nullable().meta({ description: 'Last year used' }),
      yearsUsed: z.int(),
      missingRainPercent: z
        .number()
        .meta({ description: 'Days of the record without a rain value', unit: '%' }),
      help: weatherHelpSchema,
      spreadRainDays: z.int().meta({ description: 'Days given a share of a multi-day total', unit: 'd' }),
      filledTemperatureDays: z.int().meta({ description: 'Days with a filled temperature', unit: 'd' }),
      observedThrough: date('Last observed day that counts').nullable(),
    }),
    season: seasonSchema.optional(),
  })
  .meta({ id: 'Answer' });
/** The answer to a question: sentence, odds [0-1], dates, thirds, reasons and cautions, as the data dictionary explains. */
export type Answer = z.infer<typeof answerSchema>;

/** One error shape on every route. */
export const problemSchema = z
  .strictObject({
    code: z.string().meta({ description: 'Stable name of the problem' }),
    message: z.string().meta({ description: 'What was given and what is allowed' }),
    details: z.record(z.string(), z.unknown()).meta({ description: 'Figures and names behind it' }),
    hint: z.string().meta({ description: 'What to do about it' }),
  })
  .meta({ id: 'Problem' });
export type Problem = z.infer<typeof problemSchema>;
