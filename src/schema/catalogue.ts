import { z } from 'zod';
import type { ActiveRecord } from './activeRecord.ts';
import type { BioassayEntry } from './bioassay.ts';
import type { TracedClause } from './clauses.ts';
import type { CountingWindow } from './countingWindow.ts';
import type { PhResponse } from './phResponse.ts';
import { markSchema, provenanceSchema, sourceIdSchema } from './provenance.ts';

const words = (description: string) => z.string().min(1).meta({ description });
const optionalWords = (description: string) => z.string().nullable().meta({ description });

/** A publication, or a heap of memory (ids beginning with M), that the catalogue leans on. */
export const sourceSchema = z
  .strictObject({
    id: sourceIdSchema,
    reference: words('Title, publisher, year, and place in it'),
    seen: words('What of it was read: text, part, note, abstract, or nothing'),
  })
  .meta({ id: 'CatalogueSource' });
export type CatalogueSource = z.infer<typeof sourceSchema>;

/** An active ingredient of the catalogue: the record, its typical half-life worked out, its pH response beside it. */
export interface Active extends Omit<ActiveRecord, 'fieldHalfLifeDays'> {
  /** Typical, and the span of what is published [d]; null where only label figures are held. */
  readonly fieldHalfLifeDays: {
    readonly typical: number;
    readonly low: number | null;
    readonly high: number | null;
  } | null;
  /** What soil pH does to it; null where nothing is known. */
  readonly ph: PhResponse | null;
}

/** A rotation crop. */
export const cropSchema = z
  .strictObject({
    name: words('Name used in answers'),
    botanicalName: words('Botanical name'),
    aliases: z.array(z.string().min(1)).meta({ description: 'Other names that mean this crop here' }),
    kind: words('Kind of crop'),
    partOf: z
      .array(z.string().min(1))
      .meta({ description: 'Wider crops and crop groups whose rows hold for it too' }),
    sensitivity: z
      .strictObject({
        groups: z
          .array(z.string().regex(/^\d{1,2}$/, 'a group number'))
          .meta({ description: 'Mode-of-action groups whose residues usually hurt it' }),
        text: words('What residues are known to do to it'),
        ...provenanceSchema.shape,
      })
      .nullable()
      .meta({ description: 'null where no source was seen' }),
    use: z.strictObject({
      harvestedFor: words('What the stand is harvested for'),
      grazedOrHayed: z
        .enum(['yes', 'no'])
        .meta({ description: 'Whether the stand is often grazed or hayed' }),
      coverCrop: z.enum(['yes', 'no']).meta({ description: 'Whether it is often sown as a cover crop' }),
      ...provenanceSchema.shape,
    }),
  })
  .meta({ id: 'Crop' });
export type Crop = z.infer<typeof cropSchema>;

/** A wider name that sources use for several crops. */
export const cropGroupSchema = z.strictObject({
  name: words('Name as interval rows write it'),
  reach: z
    .enum(['members', 'every crop', 'crops without a row'])
    .meta({ description: 'Which crops a row of this group speaks of' }),
  meaning: words('Who belongs to it'),
  ...provenanceSchema.shape,
});
export type CropGroup = z.infer<typeof cropGroupSchema>;

/** What an interval row reports. */
export const INTERVAL_KINDS = ['label', 'field finding', 'advice'] as const;

/** Countries of interval rows; fields lie in the first two. */
export const ROW_COUNTRIES = ['US', 'CA', 'AU', 'other'] as const;
export type RowCountry = (typeof ROW_COUNTRIES)[number];

const length = (description: string, unit: string) =>
  z.number().min(0).max(3660).nullable().meta({ description, unit });

/** One published or recalled rotation interval, or a statement that none is given, as intervals.csv writes it. */
export const intervalRecordSchema = z
  .strictObject({
    rowId: z.int().min(1).meta({ description: 'Number of the row, never reused' }),
    active: words('ISO common name, as in actives.csv'),
    partners: z
      .array(z.string().min(1))
      .meta({ description: 'Other actives of the ready mix that the row speaks of' }),
    crop: words('Crop, as in crops.csv, or group, as in crop-groups.csv'),
    cropOnSource: words('Crop as the source names it'),
    kind: z.enum(INTERVAL_KINDS).meta({
      description:
        'label = a label, its summary or a use in the crop; field finding = a trial; advice = extension or trade advice',
    }),
    minMonths: length('Shortest interval', 'months'),
    maxMonths: length('Longest interval; empty beside a shortest one means "at least"', 'months'),
    minDays: length('Shortest interval', 'd'),
    maxDays: length('Longest interval; empty beside a shortest one means "at least"', 'd'),
    rateConditionGramsPerHa: optionalWords('Rate of active ingredient it goes with [g/ha], in words'),
    condition: optionalWords('Site or condition it goes with, in words; numbers stand in clauses.yaml'),
    variety: z
      .enum(['ordinary', 'tolerant'])
      .nullable()
      .meta({ description: 'Varieties it is limited to; a row for tolerant ones never sets a date' }),
    bioassay: z
      .enum(['no', 'yes', 'instead of the condition'])
      .meta({ description: 'Whether a field bioassay is required' }),
    country: z.enum(ROW_COUNTRIES).meta({ description: 'Country of the source' }),
    region: words('Region of the source'),
    source: sourceIdSchema,
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
  .meta({ id: 'IntervalRecord' });
export type IntervalRecord = z.infer<typeof intervalRecordSchema>;

/** An interval row with the clauses that the source ties it to. */
export interface IntervalRow extends IntervalRecord {
  readonly clauses: readonly TracedClause[];
}

/** The whole catalogue as loaded. */
export interface Catalogue {
  readonly actives: readonly Active[];
  readonly crops: readonly Crop[];
  readonly cropGroups: readonly CropGroup[];
  readonly intervals: readonly IntervalRow[];
  readonly countingWindows: readonly CountingWindow[];
  readonly bioassay: readonly BioassayEntry[];
  readonly sources: readonly CatalogueSource[];
}
