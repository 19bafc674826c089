import { z } from 'zod';
import { questionSchema } from './question.ts';
import { recordIdSchema } from './recordId.ts';
import { restrictedUseSchema } from './restrictedUse.ts';

const asked = questionSchema.shape;

/** A part of the field that got more than the rest. */
export const doseZoneSchema = z
  .strictObject({
    name: z.string().min(1).max(60).meta({ description: 'What it is called, such as "turn rows"' }),
    overlapFactor: asked.overlapFactor,
  })
  .meta({ id: 'DoseZone' });

/** One application to a field: an active, or a product of the user's own label entries. */
export const fieldTreatmentSchema = z
  .strictObject({
    id: recordIdSchema.meta({ description: 'Name inside the field' }),
    appliedOn: asked.appliedOn,
    residual: asked.residual.optional(),
    labelEntry: asked.labelEntry,
    interval: asked.interval,
    halfLifeDays: asked.halfLifeDays,
    rateFraction: asked.rateFraction,
    overlapFactor: asked.overlapFactor,
    canopyFraction: asked.canopyFraction,
    areaHa: z
      .number()
      .gt(0)
      .max(100_000)
      .optional()
      .meta({ description: 'Area treated; the whole field where not given', unit: 'ha' }),
    zones: z
      .array(doseZoneSchema)
      .max(6)
      .default(() => [])
      .meta({ description: 'Overlaps and turn rows, answered beside the field' }),
    record: restrictedUseSchema.optional(),
  })
  .refine(({ residual, labelEntry }) => residual !== undefined || labelEntry !== undefined, {
    path: ['residual'],
    message: 'name an active or an own label entry',
  })
  .meta({ id: 'FieldTreatment' });
export type FieldTreatment = z.infer<typeof fieldTreatmentSchema>;
