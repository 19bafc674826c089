import { z } from 'zod';

const share = (description: string) => z.number().min(0).max(1).meta({ description, unit: '0-1' });

/** Crops of kept fields that were looked at, against the odds that stood on their planting day. */
export const outcomeTallySchema = z
  .strictObject({
    sentence: z.string().meta({ description: 'The finding in words' }),
    meaning: z.string().meta({ description: 'What this tests, and what it does not' }),
    counted: z.int().meta({ description: 'Outcomes with odds to hold them against' }),
    injured: z.int().meta({ description: 'Those of them that were hurt' }),
    expected: z
      .number()
      .nullable()
      .meta({ description: 'How many the odds said: their sum; null where none is counted' }),
    brier: z
      .number()
      .nullable()
      .meta({ description: 'Mean squared difference of odds and outcomes; 0 is perfect; null where none' }),
    skill: z.number().nullable().meta({
      description: '1 − Brier score over that of always giving the share hurt; null where all or none were',
    }),
    bins: z.array(
      z.strictObject({
        from: share('Lower end of the odds'),
        to: share('Upper end of the odds'),
        outcomes: z.int().meta({ description: 'Outcomes in it' }),
        injured: z.int().meta({ description: 'Those that were hurt' }),
        meanOdds: share('Mean of the odds'),
        low: share('Lower end of the 95 % interval of the share hurt'),
        high: share('Upper end'),
      }),
    ),
    outcomes: z
      .array(
        z.strictObject({
          fieldId: z.string(),
          name: z.string().meta({ description: 'Farm and field' }),
          residual: z.string().meta({ description: 'The latest treatment before planting' }),
          crop: z.string(),
          plantOn: z.iso.date(),
          lookedAtOn: z.iso.date(),
          odds: share('Odds with what was observed by planting'),
          injured: z.boolean(),
          injuredPercent: z.number().nullable().meta({ description: 'Share of the stand', unit: '%' }),
        }),
      )
      .meta({ description: 'Each outcome counted, by planting date' }),
    leftOut: z
      .array(
        z.strictObject({
          fieldId: z.string(),
          name: z.string(),
          crop: z.string(),
          lookedAtOn: z.iso.date(),
          reason: z.string(),
        }),
      )
      .meta({ description: 'Outcomes without odds, and why' }),
  })
  .meta({ id: 'OutcomeTally' });
export type OutcomeTally = z.infer<typeof outcomeTallySchema>;
