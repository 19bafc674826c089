import { z } from 'zod';
import { recordIdSchema } from './recordId.ts';
import { restrictedUseSchema } from './restrictedUse.ts';
import { NAMES_PRODUCT, productShape, zonesSchema } from './treatmentEntry.ts';

const intervalBeforeSchema = z
  .strictObject({
    crop: z.string().min(1).max(160).meta({ description: 'Crop, written as the planned crop is' }),
    interval: z.string().min(1).max(60).meta({ description: 'Rotation interval, such as "9 months"' }),
  })
  .meta({ id: 'IntervalBefore' });

/** One application to a field: an active, or a product of the user's own label entries. */
export const fieldTreatmentSchema = z
  .strictObject({
    id: recordIdSchema.meta({ description: 'Name inside the field' }),
    ...productShape,
    interval: productShape.interval.meta({
      description:
        'Rotation interval from the user’s own label before every crop that `intervals` does not name',
    }),
    intervals: z
      .array(intervalBeforeSchema)
      .max(20)
      .default(() => [])
      .meta({ description: 'Rotation intervals from the user’s own label, crop by crop; they win' }),
    areaHa: z
      .number()
      .gt(0)
      .max(100_000)
      .optional()
      .meta({ description: 'Area treated; the whole field where not given', unit: 'ha' }),
    zones: zonesSchema,
    record: restrictedUseSchema.optional(),
  })
  .refine(...NAMES_PRODUCT)
  .meta({ id: 'FieldTreatment' });
export type FieldTreatment = z.infer<typeof fieldTreatmentSchema>;
