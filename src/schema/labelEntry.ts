import { z } from 'zod';
import { clauseSchema } from './clauses.ts';
import { recordIdSchema, removedSchema, versionSchema } from './recordId.ts';

const words = (most: number, description: string) => z.string().max(most).meta({ description });

/** An active of a product, with the rate that the label gives. */
const labelActiveSchema = z
  .strictObject({
    name: words(80, 'Active ingredient, ISO common name').min(1),
    rateGramsPerHa: z
      .number()
      .gt(0)
      .max(20_000)
      .optional()
      .meta({ description: 'Active ingredient at the product’s top label rate', unit: 'g/ha' }),
    halfLifeDays: z
      .number()
      .min(0.1)
      .max(5000)
      .optional()
      .meta({ description: 'Field half-life; wins over the catalogue', unit: 'd' }),
  })
  .meta({ id: 'LabelActive' });

/** What a label asks for before one crop. */
const labelIntervalSchema = z
  .strictObject({
    crop: words(80, 'Rotation crop, as in the catalogue or as the user calls it').min(1),
    interval: words(60, 'Rotation interval, such as "9 months" or "1 month 15 days"').min(1),
    foodFeedInterval: words(
      60,
      'Wait until the stand may be harvested or grazed, where the label gives it apart from the crop’s own safety',
    )
      .min(1)
      .optional(),
    clauses: z
      .array(clauseSchema)
      .max(12)
      .default(() => [])
      .meta({ description: 'Conditions that can be judged' }),
    conditions: words(500, 'Conditions in the label’s words; shown and not judged').default(''),
  })
  .meta({ id: 'LabelInterval' });

/** A product of the user's shed, as its own label has it; wins over the catalogue. */
export const labelEntrySchema = z
  .strictObject({
    id: recordIdSchema.meta({ description: 'Short name in small letters, digits and hyphens' }),
    name: words(120, 'What the user calls the product').min(1),
    actives: z.array(labelActiveSchema).min(1).max(6),
    intervals: z.array(labelIntervalSchema).min(1).max(60),
    labelVersion: words(80, 'Version or date printed on the label'),
    enteredOn: z.iso.date().meta({ description: 'Day on which it was read from the label' }),
    note: words(1000, 'Remark').default(''),
  })
  .refine(({ actives }) => isUnlike(actives.map(({ name }) => name)), {
    path: ['actives'],
    message: 'an active stands twice',
  })
  .refine(({ intervals }) => isUnlike(intervals.map(({ crop }) => crop)), {
    path: ['intervals'],
    message: 'a crop stands twice',
  })
  .meta({ id: 'LabelEntry' });
export type LabelEntry = z.infer<typeof labelEntrySchema>;

const isUnlike = (names: readonly string[]): boolean =>
  new Set(names.map((name) => name.trim().toLowerCase())).size === names.length;

/** An entry as it is kept: its version goes up by one with every change. */
export const storedLabelSchema = z
  .strictObject({
    version: versionSchema,
    entry: labelEntrySchema,
  })
  .meta({ id: 'StoredLabel' });
export type StoredLabel = z.infer<typeof storedLabelSchema>;

/** An entry with what can be done about its last change. */
export const keptLabelSchema = storedLabelSchema
  .extend({
    canUndo: z.boolean().meta({ description: 'Whether there is a version before this one' }),
    removed: z
      .boolean()
      .meta({ description: 'True where this version is a removal, as after taking back an undone one' }),
  })
  .meta({ id: 'KeptLabel' });
export type KeptLabel = z.infer<typeof keptLabelSchema>;

/** All entries of the shed, by name, and those that were removed. */
export const labelListSchema = z
  .strictObject({ labels: z.array(keptLabelSchema), removed: z.array(removedSchema) })
  .meta({ id: 'Labels' });
export type LabelList = z.infer<typeof labelListSchema>;
