import { z } from 'zod';
import { provenanceSchema } from './provenance.ts';

const ph = (description: string) => z.number().min(3).max(11).meta({ description, unit: 'pH' });
const factor = (description: string) => z.number().gt(0).max(20).meta({ description, unit: '-' });

const shared = {
  words: z.string().min(1).meta({ description: 'Which way soil pH shifts how long the active lasts' }),
  injury: z
    .string()
    .min(1)
    .optional()
    .meta({ description: 'A second, separate term: what pH does to the harm a given residue causes' }),
  caution: z.string().min(1).meta({ description: 'What to mind because of it' }),
  basis: z.string().min(1).optional().meta({ description: 'The published figures behind the numbers' }),
  ...provenanceSchema.shape,
};

/** Half-life times factorPerUnit for each unit of pH above the reference, within bounds. */
const slopeSchema = z
  .strictObject({
    kind: z.literal('slope'),
    factorPerUnit: factor('Factor on the half-life per unit of pH'),
    referencePh: ph('pH at which the typical half-life is taken to hold'),
    lowPh: ph('Lowest pH that the slope reaches; below it the factor stays'),
    highPh: ph('Highest pH that the slope reaches; above it the factor stays'),
    ...shared,
  })
  .refine(({ lowPh, referencePh, highPh }) => lowPh <= referencePh && referencePh <= highPh, {
    path: ['referencePh'],
    message: 'the reference pH lies outside the bounds',
  });

/** Half-life times the factor of the step that the pH lies in. */
const stepsSchema = z
  .strictObject({
    kind: z.literal('steps'),
    steps: z
      .array(
        z.strictObject({
          fromPh: ph('Lower end, included; absent in the first step').optional(),
          toPh: ph('Upper end, not included; absent in the last step').optional(),
          factor: factor('Factor on the half-life'),
        }),
      )
      .min(2),
    ...shared,
  })
  .refine(
    ({ steps }) =>
      steps[0].fromPh === undefined &&
      steps[steps.length - 1].toPh === undefined &&
      steps.slice(1).every(({ fromPh }, i) => fromPh !== undefined && fromPh === steps[i].toPh) &&
      steps.slice(1, -1).every(({ fromPh = 0, toPh = 0 }) => fromPh < toPh),
    { path: ['steps'], message: 'the steps must follow each other without gap, open at both ends' },
  );

/** Only words are known; no factor is applied. */
const directionSchema = z.strictObject({ kind: z.literal('direction'), ...shared });

export const phResponseSchema = z
  .discriminatedUnion('kind', [slopeSchema, stepsSchema, directionSchema])
  .meta({ id: 'PhResponse', description: 'What soil pH does to how long an active lasts' });
export type PhResponse = z.infer<typeof phResponseSchema>;

const entry = { active: z.string().min(1).meta({ description: 'ISO common name, as in actives.csv' }) };
/** One entry of ph-responses.yaml. */
export const phEntrySchema = z.discriminatedUnion('kind', [
  slopeSchema.safeExtend(entry),
  stepsSchema.safeExtend(entry),
  directionSchema.extend(entry),
]);
