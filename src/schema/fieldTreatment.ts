import { z } from 'zod';
import { recordIdSchema } from './recordId.ts';
import { restrictedUseSchema } from './restrictedUse.ts';
import { NAMES_PRODUCT, productShape, zonesSchema } from './treatmentEntry.ts';

/** One application to a field: an active, or a product of the user's own label entries. */
export const fieldTreatmentSchema = z
  .strictObject({
    id: recordIdSchema.meta({ description: 'Name inside the field' }),
    ...productShape,
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
