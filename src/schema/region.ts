import { z } from 'zod';
import { modelUsedSchema } from './modelUsed.ts';
import { questionSchema } from './question.ts';
import { TEXTURE_CLASSES } from './soil.ts';
import { weatherHelpSchema } from './weatherHelp.ts';

const share = (description: string) => z.number().min(0).max(1).meta({ description, unit: '0-1' });
const mm = (description: string) => z.number().meta({ description, unit: 'mm' });
const percent = (description: string) => z.number().meta({ description, unit: '%' });

/** Most stations that may be given a soil of their own in one request. */
const MOST_SOILS = 5000;

/** One treatment, crop and planting date over many stations. */
export const regionQuestionSchema = questionSchema
  .omit({
    station: true,
    latitudeDeg: true,
    elevationM: true,
    temperatureStation: true,
    fillFromNeighbours: true,
    gauge: true,
    irrigation: true,
    evidence: true,
    outlook: true,
    labelEntry: true,
  })
  .extend({
    states: z
      .array(z.string().length(2))
      .max(60)
      .optional()
      .meta({ description: 'Letters of the US states whose stations count; all stations where absent' }),
    box: z
      .strictObject({
        west: z.number().min(-180).max(180),
        south: z.number().min(-90).max(90),
        east: z.number().min(-180).max(180),
        north: z.number().min(-90).max(90),
      })
      .optional()
      .meta({ description: 'Stations within these limits only', unit: '°' }),
    soilByStation: z
      .record(z.string(), z.enum(TEXTURE_CLASSES))
      .refine((soils) => Object.keys(soils).length <= MOST_SOILS, `at most ${MOST_SOILS} stations`)
      .default(() => ({}))
      .meta({ description: 'Soil texture class by station id; elsewhere the soil of the question' }),
  })
  .meta({ id: 'RegionQuestion' });
export type RegionInput = z.input<typeof regionQuestionSchema>;
export type RegionQuestion = z.infer<typeof regionQuestionSchema>;

/** Rain of a stretch of the season against the same stretch of past years. */
const againstNormal = z.strictObject({
  fromDate: z.iso.date(),
  throughDate: z.iso.date().meta({ description: 'Last day that counts' }),
  mm: mm('Rain so far'),
  normalMm: mm('Mean of the past years over the same days'),
  percentOfNormal: percent('Rain over that mean').nullable(),
  years: z.int().meta({ description: 'Past years in the mean' }),
});

/** A published sum that the rain of a counting window is held against. */
const countedSchema = z.strictObject({
  id: z.string().meta({ description: 'Id of the rule in the catalogue' }),
  region: z
    .string()
    .meta({ description: 'Region it was written for; other places are shown for comparison' }),
  thresholdMm: mm('Sum below which the rule speaks'),
  sumMm: mm('Rain of the window, through its end or the as-of day'),
  complete: z.boolean().meta({ description: 'Whether the window is over' }),
  under: z
    .boolean()
    .nullable()
    .meta({ description: 'Whether the sum stays under; null while it may still come' }),
});

export const regionFiguresSchema = z
  .strictObject({
    years: z.int().meta({ description: 'Past years behind the odds' }),
    labelDate: z.iso.date(),
    oddsNormal: share('Odds at planting in a normal year: planned, nothing observed'),
    oddsNow: share('Odds at planting with the weather up to the as-of day').nullable(),
    oddsRange: z.strictObject({ low: share('Lower end'), high: share('Upper end') }).meta({
      description: 'Range of the odds now, or of the normal ones, from the number of years',
    }),
    labelTooShortShare: share(
      'Share of past years whose own odds were still above the limit on the label date',
    ),
    clearDate: z.iso
      .date()
      .nullable()
      .meta({ description: 'As the answer has it; null where there is none' }),
    daysAfterLabel: z.int().nullable().meta({ description: 'From label date to clear date', unit: 'd' }),
    summerRain: againstNormal.nullable().meta({ description: 'June to August of the application’s season' }),
    warmRain: againstNormal.nullable().meta({ description: 'Warm rain from the application on' }),
    counted: z.array(countedSchema),
  })
  .meta({ id: 'RegionFigures' });

export const regionRowSchema = z
  .strictObject({
    station: z.string(),
    name: z.string(),
    latitudeDeg: z.number().nullable(),
    longitudeDeg: z.number().nullable(),
    elevationM: z.number().nullable(),
    invented: z.boolean(),
    soilClass: z.string(),
    firstDate: z.iso.date(),
    lastDate: z.iso.date(),
    rainPercent: percent('Days of the record with rain'),
    temperatureStation: weatherHelpSchema.shape.temperatureStation,
    figures: regionFiguresSchema.nullable().meta({ description: 'Null where the station cannot answer' }),
    code: z.string().nullable().meta({ description: 'Why not: TOO_FEW_YEARS, TEMPERATURES_MISSING, …' }),
    reason: z.string().nullable().meta({ description: 'The same in words' }),
    notNow: z
      .string()
      .nullable()
      .meta({ description: 'Why there are no odds for this season; null where there are' }),
  })
  .meta({ id: 'RegionRow' });
export type RegionRow = z.infer<typeof regionRowSchema>;
export type RegionFigures = z.infer<typeof regionFiguresSchema>;

/** What a region is told as, line by line. */
export const regionEventSchema = z
  .discriminatedUnion('step', [
    z.strictObject({
      step: z.literal('start'),
      stations: z.int(),
      residual: z.string(),
      crop: z.string(),
      question: regionQuestionSchema,
      cautions: z.array(z.string()),
      model: modelUsedSchema,
    }),
    z.strictObject({ step: z.literal('rows'), done: z.int(), of: z.int(), rows: z.array(regionRowSchema) }),
    z.strictObject({ step: z.literal('end'), answered: z.int(), of: z.int() }),
    z.strictObject({
      step: z.literal('refused'),
      problem: z.object({
        code: z.string(),
        message: z.string(),
        hint: z.string(),
        details: z.record(z.string(), z.unknown()),
      }),
    }),
  ])
  .meta({ id: 'RegionEvent' });
export type RegionEvent = z.infer<typeof regionEventSchema>;
