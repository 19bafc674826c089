import { z } from 'zod';
import { fieldTreatmentSchema } from './fieldTreatment.ts';
import { irrigationSchema, questionSchema } from './question.ts';
import { recordIdSchema, removedSchema, versionSchema } from './recordId.ts';

const asked = questionSchema.shape;
const words = (most: number, description: string) => z.string().max(most).meta({ description });
const date = (description: string) => z.iso.date().meta({ description });
const list = <T extends z.ZodType>(of: T, most: number, description: string) =>
  z
    .array(of)
    .max(most)
    .default(() => [])
    .meta({ description });

/** A day's rain in the field's own gauge. */
const gaugeEntrySchema = z
  .strictObject({
    date: date('Day'),
    mm: z.number().min(0).max(2000).meta({ description: 'Rain', unit: 'mm' }),
  })
  .meta({ id: 'GaugeEntry' });

/** A crop that may follow, and when. */
export const fieldPlanSchema = z
  .strictObject({
    id: recordIdSchema.meta({ description: 'Name inside the field' }),
    crop: asked.crop,
    plantOn: asked.plantOn,
    standUse: asked.standUse,
    oddsLimit: asked.oddsLimit,
  })
  .meta({ id: 'FieldPlan' });
export type FieldPlan = z.infer<typeof fieldPlanSchema>;

/** What became of a crop. */
const outcomeSchema = z
  .strictObject({
    on: date('Day on which it was looked at'),
    crop: asked.crop,
    state: z.enum(['clean', 'injured']),
    injuredPercent: z
      .number()
      .min(0)
      .max(100)
      .optional()
      .meta({ description: 'Share of the stand that was hurt', unit: '%' }),
  })
  .meta({ id: 'FieldOutcome' });

/** One field with all that was done to it and seen on it. Metric; dates YYYY-MM-DD. */
export const fieldRecordSchema = z
  .strictObject({
    id: recordIdSchema.meta({ description: 'Short name in small letters, digits and hyphens' }),
    farm: words(120, 'Farm').default(''),
    name: words(120, 'What the field is called').min(1),
    country: asked.country,
    areaHa: z.number().gt(0).max(100_000).nullable().default(null).meta({ description: 'Size', unit: 'ha' }),
    place: z
      .strictObject({
        latitudeDeg: z.number().min(-90).max(90).meta({ description: 'Latitude', unit: '°' }),
        longitudeDeg: z
          .number()
          .min(-180)
          .max(180)
          .meta({ description: 'Longitude, east positive', unit: '°' }),
      })
      .nullable()
      .default(null),
    station: asked.station
      .nullable()
      .default(null)
      .meta({ description: 'Station whose weather stands for the field; answers need one' }),
    soilClass: asked.soilClass,
    sandPercent: asked.sandPercent,
    clayPercent: asked.clayPercent,
    organicMatterPercent: asked.organicMatterPercent,
    coverFraction: asked.coverFraction,
    soilPh: asked.soilPh,
    phNote: words(500, 'What is known of the pH: history, zones, liming').default(''),
    treatments: list(fieldTreatmentSchema, 20, 'What was sprayed'),
    gauge: list(gaugeEntrySchema, 1200, 'Rain in the field’s own gauge'),
    irrigation: list(irrigationSchema, 400, 'Water given'),
    tillage: list(z.strictObject({ date: date('Day'), note: words(300, 'What was done') }), 100, 'Tillage'),
    plans: list(fieldPlanSchema, 20, 'Crops that may follow'),
    evidence: asked.evidence,
    outcomes: list(outcomeSchema, 50, 'What became of the crops'),
    note: words(2000, 'Remark').default(''),
  })
  .refine(({ treatments }) => areUnlike(treatments.map(({ id }) => id)), {
    path: ['treatments'],
    message: 'an id stands twice',
  })
  .refine(({ plans }) => areUnlike(plans.map(({ id }) => id)), {
    path: ['plans'],
    message: 'an id stands twice',
  })
  .refine(({ gauge }) => areUnlike(gauge.map(({ date: day }) => day)), {
    path: ['gauge'],
    message: 'a day stands twice',
  })
  .refine(({ sandPercent, clayPercent }) => (sandPercent === undefined) === (clayPercent === undefined), {
    path: ['clayPercent'],
    message: 'sand and clay go together',
  })
  .meta({ id: 'FieldRecord' });
export type FieldRecord = z.infer<typeof fieldRecordSchema>;
/** A field as a client writes it: what has a default may be left out. */
export type FieldRecordInput = z.input<typeof fieldRecordSchema>;

const areUnlike = (names: readonly string[]): boolean => new Set(names).size === names.length;

/** A field as it is kept. */
export const storedFieldSchema = z
  .strictObject({
    version: versionSchema,
    record: fieldRecordSchema,
    canUndo: z.boolean().meta({ description: 'Whether there is a version before this one' }),
    removed: z
      .boolean()
      .meta({ description: 'True where this version is a removal, as after taking back an undone one' }),
  })
  .meta({ id: 'StoredField' });
export type StoredField = z.infer<typeof storedFieldSchema>;

/** All fields, by farm and name, and those that were removed. */
export const fieldListSchema = z
  .strictObject({ fields: z.array(storedFieldSchema), removed: z.array(removedSchema) })
  .meta({ id: 'Fields' });
export type FieldList = z.infer<typeof fieldListSchema>;
