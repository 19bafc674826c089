import { z } from 'zod';
import { assumptionsSchema } from './assumptions.ts';
import { FIELD_COUNTRIES, STAND_USES } from './codes.ts';
import { findingSchema, MOST_FINDINGS } from './evidence.ts';
import { TEXTURE_CLASSES } from './soil.ts';
import {
  NAMES_PRODUCT,
  otherTreatmentsSchema,
  productShape,
  treatmentShape,
  zonesSchema,
} from './treatmentEntry.ts';

const date = (description: string) => z.iso.date().meta({ description });

/** Seasonal outlook: chances of a dry, middling or wet stretch, and the stretch they speak of. */
export const outlookSchema = z
  .strictObject({
    belowPercent: z.number().min(0).max(100).meta({ description: 'Chance of below-normal rain [%]' }),
    nearPercent: z.number().min(0).max(100).meta({ description: 'Chance of near-normal rain [%]' }),
    abovePercent: z.number().min(0).max(100).meta({ description: 'Chance of above-normal rain [%]' }),
    from: date('First day of the outlook’s own window').optional(),
    to: date('Last day of the outlook’s own window').optional(),
  })
  .meta({
    id: 'Outlook',
    description: 'Chances must add up to 100; the window defaults to application … planting',
  });

/** Most days that a question may bring of a grower's own gauge: three years and more, and within one request. */
const MOST_GAUGE_DAYS = 1200;
/** Most irrigations that a question may bring. */
const MOST_IRRIGATIONS = 400;

/** Rain that the grower's own gauge caught on a day. */
export const gaugeDaySchema = z
  .strictObject({
    date: date('Day of the reading'),
    rainMm: z.number().min(0).max(2000).meta({ description: 'Rain in the field’s own gauge [mm]' }),
  })
  .meta({ id: 'GaugeDay' });
export type GaugeDay = z.infer<typeof gaugeDaySchema>;

/** Water given to the field on a day. */
export const irrigationSchema = z
  .strictObject({
    date: date('Day of the irrigation'),
    mm: z.number().min(0).max(500).meta({ description: 'Water given [mm]' }),
  })
  .meta({ id: 'Irrigation' });
export type Irrigation = z.infer<typeof irrigationSchema>;

/** One field, one treatment, one crop, one date: everything an answer depends on. Metric; dates YYYY-MM-DD. */
export const questionSchema = z
  .strictObject({
    station: z.string().min(1).max(80).meta({ description: 'Station id' }),
    latitudeDeg: z
      .number()
      .min(-90)
      .max(90)
      .optional()
      .meta({ description: 'Latitude where the record holds none, or to override it [°]' }),
    elevationM: z
      .number()
      .min(-430)
      .max(6000)
      .optional()
      .meta({ description: 'Height of the station above sea level, where the record holds none [m]' }),
    temperatureStation: z.string().min(1).max(80).optional().meta({
      description:
        'Station to borrow temperatures from where the station has none; default: the nearest fit one',
    }),
    fillFromNeighbours: z.boolean().default(false).meta({
      description:
        'Fill gaps in the station’s rain from neighbouring stations first; such days still count as missing',
    }),
    gauge: z
      .array(gaugeDaySchema)
      .max(MOST_GAUGE_DAYS)
      .default(() => [])
      .meta({
        description: 'Own gauge: takes the place of the station’s rain on its days',
      }),
    irrigation: z
      .array(irrigationSchema)
      .max(MOST_IRRIGATIONS)
      .default(() => [])
      .meta({
        description: 'Irrigation: adds to the rain on its days, in every year’s course of the season',
      }),
    soilClass: z
      .enum(TEXTURE_CLASSES)
      .optional()
      .meta({ description: 'Soil texture class, loam where nothing is given' }),
    sandPercent: z
      .number()
      .min(0)
      .max(100)
      .optional()
      .meta({ description: 'Sand, with clay instead of a class [%]' }),
    clayPercent: z
      .number()
      .min(0)
      .max(60)
      .optional()
      .meta({ description: 'Clay, with sand instead of a class [%]' }),
    organicMatterPercent: z
      .number()
      .min(0)
      .max(8)
      .optional()
      .meta({ description: 'Soil organic matter, 2 % where nothing is given [% by mass]' }),
    coverFraction: z.number().min(0).max(1).default(0.6).meta({
      description: 'Ground covered by straw or dead weeds [0-1]; 0.6 is taken for standing stubble',
    }),
    soilPh: z.number().min(3).max(11).optional().meta({ description: 'Soil pH (water)' }),
    country: z.enum(FIELD_COUNTRIES).default('US').meta({
      description: 'Country of the field: only its label rows set a date (US or CA)',
    }),
    ...treatmentShape,
    otherTreatments: otherTreatmentsSchema,
    zones: zonesSchema,
    crop: z.string().min(1).max(160).meta({
      description: 'Rotation crop; a mix names its species with plus signs, such as "radish + pea"',
    }),
    standUse: z.enum(STAND_USES).optional().meta({
      description: 'What becomes of the stand; harvested where nothing is given',
    }),
    plantOn: date('Planting date asked about'),
    oddsLimit: z
      .number()
      .gt(0)
      .lt(1)
      .default(0.1)
      .meta({ description: 'Carryover odds that the user accepts [0-1]' }),
    baseFrom: z.int().min(1700).max(2200).optional().meta({ description: 'First year of the base period' }),
    baseTo: z.int().min(1700).max(2200).optional().meta({ description: 'Last year of the base period' }),
    asOf: z.iso
      .date()
      .optional()
      .meta({ description: 'Last day whose weather counts as observed; absent while planning' }),
    evidence: z
      .array(findingSchema)
      .max(MOST_FINDINGS)
      .default(() => [])
      .meta({ description: 'Soil residue tests and field bioassays of the season so far' }),
    outlook: outlookSchema.optional(),
    restOfSeasonRain: z
      .number()
      .min(0)
      .max(5)
      .default(1)
      .meta({ description: 'Factor on the rain of days not yet observed (0.8 = 80 % of each year’s own)' }),
    assume: assumptionsSchema.default(() => assumptionsSchema.parse({})),
  })
  .meta({ id: 'Question' });
/** A question as the schema has read it, with its defaults. */
export type Question = z.infer<typeof questionSchema>;

/** A question as it is asked: one that names a label entry need not name its active too. */
export const askedQuestionSchema = questionSchema
  .extend({ residual: productShape.residual })
  .refine(...NAMES_PRODUCT)
  .meta({ id: 'AskedQuestion' });
export type AskedQuestion = z.input<typeof askedQuestionSchema>;
/** A question as a client writes it: fields with a default may be left out. */
export type QuestionInput = z.input<typeof questionSchema>;
