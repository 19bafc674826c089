import { z } from 'zod';
import { INTERCEPTION_CROPS } from './codes.ts';

/** Most other treatments, and overlap zones, of one question. */
const MOST_OTHER_TREATMENTS = 10;
const MOST_ZONES = 6;

/** A growing crop that was sprayed over, by its growth stage: stands for the share that its leaves catch. */
export const growthStageSchema = z
  .strictObject({
    plants: z.enum(INTERCEPTION_CROPS).meta({ description: 'Crop that was sprayed over' }),
    bbch: z
      .int()
      .min(0)
      .max(99)
      .meta({ description: 'Its growth stage on the day of spraying, two-digit BBCH code' }),
    establishedTurf: z.boolean().default(false).meta({ description: 'An old sward of grass' }),
  })
  .meta({ id: 'GrowthStage' });

/** A treatment wherever one is entered: in a question, beside its main one, and on a kept field. */
export const treatmentShape = {
  appliedOn: z.iso.date().meta({ description: 'Date of application' }),
  residual: z.string().min(1).max(80).meta({ description: 'Active ingredient, ISO common name' }),
  labelEntry: z.string().min(1).max(60).optional().meta({
    description: 'Id of the user’s own label entry, which wins over the catalogue',
  }),
  rateFraction: z
    .number()
    .gt(0)
    .max(10)
    .default(1)
    .meta({ description: 'Rate as a fraction of the top label rate' }),
  rateGramsPerHa: z.number().gt(0).max(20_000).optional().meta({
    description:
      'Active ingredient sprayed: label lines and conditions by rate are judged by it; the dose stays the fraction [g/ha]',
  }),
  overlapFactor: z
    .number()
    .min(1)
    .max(5)
    .default(1)
    .meta({ description: 'Dose factor of overlaps and turn rows' }),
  canopyFraction: z
    .number()
    .min(0)
    .max(1)
    .default(0)
    .meta({ description: 'Spray caught by green leaves [0-1]' }),
  growthStage: growthStageSchema
    .optional()
    .meta({ description: 'A growing crop in place of a share caught by leaves, by the EPPO PP 1/207 table' }),
  interval: z.string().max(60).optional().meta({
    description: 'Rotation interval from the user’s own label, such as "9 months" or "1 month 15 days"; wins',
  }),
  halfLifeDays: z
    .number()
    .min(0.1)
    .max(5000)
    .optional()
    .meta({ description: 'Field half-life [d]; wins over the catalogue' }),
};

/** The same where an own label entry may stand in place of the active. */
export const productShape = { ...treatmentShape, residual: treatmentShape.residual.optional() };

/** What a treatment must name: refused where neither is there. */
export const NAMES_PRODUCT = [
  ({ residual, labelEntry }: { readonly residual?: string; readonly labelEntry?: string }): boolean =>
    residual !== undefined || labelEntry !== undefined,
  { path: ['residual'], message: 'name an active or an own label entry' },
] satisfies [unknown, { path: string[]; message: string }];

/** Another treatment of the same field, before the main one or after it. */
const otherTreatmentSchema = z
  .strictObject(productShape)
  .refine(...NAMES_PRODUCT)
  .meta({ id: 'OtherTreatment' });

/** Other treatments of the field, judged together with the main one. */
export const otherTreatmentsSchema = z
  .array(otherTreatmentSchema)
  .max(MOST_OTHER_TREATMENTS)
  .default(() => [])
  .meta({
    description:
      'Other treatments of the field: residues of one mode-of-action group add up, of different groups the worst governs',
  });

/** A part of the field that got more than the rest. */
export const zoneSchema = z
  .strictObject({
    name: z.string().min(1).max(60).meta({ description: 'What the user calls it, such as "turn rows"' }),
    overlapFactor: z
      .number()
      .min(1)
      .max(5)
      .meta({ description: 'Dose of the main treatment there, in single passes' }),
  })
  .meta({ id: 'Zone' });

/** Parts of the field that got more than the rest. */
export const zonesSchema = z
  .array(zoneSchema)
  .max(MOST_ZONES)
  .default(() => [])
  .meta({ description: 'Parts of the field with another overlap, answered beside the rest' });
