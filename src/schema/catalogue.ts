import { z } from 'zod';

/** How a figure or statement came into the catalogue. */
export const MARKS = ['seen', 'from memory', 'computed'] as const;

export const markSchema = z.enum(MARKS).meta({
  id: 'Mark',
  description:
    'seen = read in the source; from memory = recalled, to be checked; computed = worked out by us from a figure seen',
});
export type Mark = z.infer<typeof markSchema>;

const words = (description: string) => z.string().min(1).meta({ description });
const optionalWords = (description: string) => z.string().nullable().meta({ description });
const sourceId = z
  .string()
  .regex(/^[SM]\d{2,3}$/, 'a source id such as S04')
  .meta({ description: 'Id in sources.csv' });

/** Mark and sources of one figure or statement. */
export const provenanceSchema = z
  .strictObject({
    mark: markSchema,
    sources: z.array(sourceId).min(1).meta({ description: 'Where it stands, by id' }),
  })
  .meta({ id: 'Provenance' });
export type Provenance = z.infer<typeof provenanceSchema>;

/** A publication, or a heap of memory (ids beginning with M), that the catalogue leans on. */
export const sourceSchema = z
  .strictObject({
    id: sourceId,
    reference: words('Title, publisher, year, and place in it'),
    seen: words('What of it was read: text, part, note, abstract, or nothing'),
  })
  .meta({ id: 'CatalogueSource' });
export type CatalogueSource = z.infer<typeof sourceSchema>;

const halfLife = z
  .strictObject({
    typical: z.number().gt(0).max(5000).meta({ description: 'Typical field half-life', unit: 'd' }),
    low: z
      .number()
      .gt(0)
      .max(5000)
      .nullable()
      .meta({ description: 'Shortest half-life published', unit: 'd' }),
    high: z
      .number()
      .gt(0)
      .max(5000)
      .nullable()
      .meta({ description: 'Longest half-life published', unit: 'd' }),
  })
  .refine(({ typical, low }) => low === null || low <= typical, {
    path: ['low'],
    message: 'the low half-life is above the typical one',
  })
  .refine(({ typical, high }) => high === null || high >= typical, {
    path: ['high'],
    message: 'the high half-life is below the typical one',
  })
  .meta({ description: 'Field half-life: typical, and the span of what is published' });

/** An active ingredient that stays in the soil. */
export const activeSchema = z
  .strictObject({
    isoName: words('ISO common name'),
    aliases: z.array(z.string().min(1)).meta({ description: 'Other common spellings; never a brand' }),
    group: z.int().min(0).max(40).meta({ description: 'Mode-of-action group number' }),
    fieldHalfLifeDays: halfLife,
    kocMlPerG: z.number().gt(0).meta({ description: 'Sorption to organic carbon, Koc', unit: 'mL/g' }),
    topRateGramsPerHa: z
      .number()
      .gt(0)
      .meta({ description: 'Top rate of active ingredient in field crops', unit: 'g/ha' }),
    phEffect: z
      .strictObject({
        direction: words('Which way soil pH shifts persistence'),
        caution: words('What to mind because of it'),
      })
      .meta({ description: 'Effect of soil pH, in words; no pH factor is computed yet' }),
    mainLossRoute: words('What takes most of it away'),
    moistureExponent: z
      .number()
      .min(0)
      .max(3)
      .nullable()
      .meta({ description: 'Own exponent B of the moisture response; null takes the default', unit: '-' }),
    q10: z
      .number()
      .min(1)
      .max(6)
      .nullable()
      .meta({ description: 'Own speed-up of breakdown per 10 °C; null takes the default', unit: '-' }),
    cautions: z.array(z.string().min(1)).meta({ description: 'What to mind, one sentence each' }),
    provenance: z
      .strictObject({
        group: provenanceSchema,
        halfLifeTypical: provenanceSchema,
        halfLifeRange: provenanceSchema,
        koc: provenanceSchema,
        topRate: provenanceSchema,
        phEffect: provenanceSchema,
        mainLossRoute: provenanceSchema,
        moistureExponent: provenanceSchema.nullable(),
        q10: provenanceSchema.nullable(),
      })
      .meta({ description: 'Mark and sources of each figure' }),
  })
  .refine(({ q10, provenance }) => (q10 === null) === (provenance.q10 === null), {
    path: ['q10'],
    message: 'a value and its mark stand together or not at all',
  })
  .refine(
    ({ moistureExponent, provenance }) =>
      (moistureExponent === null) === (provenance.moistureExponent === null),
    { path: ['moistureExponent'], message: 'a value and its mark stand together or not at all' },
  )
  .meta({ id: 'Active' });
export type Active = z.infer<typeof activeSchema>;

/** A rotation crop. */
export const cropSchema = z
  .strictObject({
    name: words('Name used in answers'),
    aliases: z.array(z.string().min(1)).meta({ description: 'Other names that mean this crop here' }),
    kind: words('Kind of crop'),
    sensitivity: words('What residues are known to do to it'),
    sensitivityProvenance: provenanceSchema,
  })
  .meta({ id: 'Crop' });
export type Crop = z.infer<typeof cropSchema>;

/** What an interval row reports. */
export const INTERVAL_KINDS = ['label', 'field finding', 'advice'] as const;

const length = (description: string, unit: string) =>
  z.number().min(0).max(3660).nullable().meta({ description, unit });

/** One published or recalled rotation interval, or a statement that none is given. */
export const intervalRowSchema = z
  .strictObject({
    rowId: z.int().min(1).meta({ description: 'Number of the row, never reused' }),
    active: words('ISO common name, as in actives.csv'),
    crop: words('Crop, as in crops.csv'),
    cropOnSource: words('Crop as the source names it'),
    kind: z.enum(INTERVAL_KINDS).meta({
      description:
        'label = a label or its summary; field finding = a trial; advice = extension or trade advice',
    }),
    minMonths: length('Shortest interval', 'months'),
    maxMonths: length('Longest interval; empty beside a shortest one means "at least"', 'months'),
    minDays: length('Shortest interval', 'd'),
    maxDays: length('Longest interval; empty beside a shortest one means "at least"', 'd'),
    rateConditionGramsPerHa: optionalWords('Rate of active ingredient it goes with [g/ha]'),
    minRainMm: z.number().gt(0).nullable().meta({ description: 'Rain it asks for or splits at', unit: 'mm' }),
    rainCondition: optionalWords('What the rain condition says'),
    phCondition: optionalWords('Soil pH it goes with'),
    soilCondition: optionalWords('Organic matter, texture or tillage it goes with'),
    zoneCondition: optionalWords('Zone it goes with'),
    bioassay: z
      .enum(['no', 'yes', 'instead of the condition'])
      .meta({ description: 'Whether a field bioassay is required' }),
    region: words('Region of the source'),
    source: sourceId,
    mark: markSchema,
    note: optionalWords('Remark'),
  })
  .refine(({ minMonths, minDays }) => minMonths === null || minDays === null, {
    path: ['minDays'],
    message: 'a row counts in months or in days, not in both',
  })
  .refine(
    ({ minMonths, maxMonths, minDays, maxDays }) =>
      (maxMonths === null || (minMonths !== null && minMonths <= maxMonths)) &&
      (maxDays === null || (minDays !== null && minDays <= maxDays)),
    { path: ['minMonths'], message: 'the longest interval is below the shortest, or stands alone' },
  )
  .meta({ id: 'IntervalRow' });
export type IntervalRow = z.infer<typeof intervalRowSchema>;

/** The whole catalogue as loaded. */
export interface Catalogue {
  readonly actives: readonly Active[];
  readonly crops: readonly Crop[];
  readonly intervals: readonly IntervalRow[];
  readonly sources: readonly CatalogueSource[];
}
