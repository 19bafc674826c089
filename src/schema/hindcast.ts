import { z } from 'zod';
import { modelUsedSchema } from './modelUsed.ts';
import { outcomeTallySchema } from './outcomeTally.ts';
import { questionSchema } from './question.ts';
import { NAMES_PRODUCT, productShape } from './treatmentEntry.ts';

const share = (description: string) => z.number().min(0).max(1).meta({ description, unit: '0-1' });
const score = (description: string) => z.number().meta({ description, unit: '-' });

/** A question looked back on: what is known only of its own season is left aside. */
export const hindcastQuestionSchema = questionSchema
  .extend({
    leadDays: z
      .array(z.int().min(0).max(1100))
      .min(1)
      .max(12)
      .default(() => [180, 120, 90, 60, 30])
      .meta({ description: 'Days before planting on which the odds are given', unit: 'd' }),
  })
  .meta({
    id: 'HindcastQuestion',
    description:
      'As-of date, outlook, rest-of-season rain, gauge, irrigation and evidence belong to one season and are left aside',
  });

/** A hindcast as it is asked for: one that names a label entry need not name its active too. */
export const askedHindcastSchema = hindcastQuestionSchema
  .extend({ residual: productShape.residual })
  .refine(...NAMES_PRODUCT)
  .meta({ id: 'AskedHindcast' });
/** A question to look back on, as it is given. */
export type HindcastInput = z.input<typeof askedHindcastSchema>;
export type HindcastQuestion = z.infer<typeof hindcastQuestionSchema>;

export const reliabilityBinSchema = z
  .strictObject({
    from: share('Lower end of the odds'),
    to: share('Upper end of the odds'),
    forecasts: z.int().meta({ description: 'Odds given, one for each year and lead' }),
    years: z.int().meta({ description: 'Different years among them' }),
    meanOdds: share('Their mean'),
    observed: share('Share of soils and years in which residue would have harmed'),
    low: share('Lower end of its 95 % interval, from the number of different years alone'),
    high: share('Upper end'),
  })
  .meta({ id: 'ReliabilityBin' });

const scoresShape = {
  brier: score('Mean squared difference of odds and outcomes; 0 is perfect'),
  skill: score('1 − Brier score over that of always giving the base rate').nullable(),
  brierWithWeatherKnown: score('What is left of the score where the weather is known: the soils’ own spread'),
  baseRate: share('Share of all soils and years in which residue would have harmed'),
  reliability: score('Part of the score from odds that lie beside what came; 0 is best'),
  resolution: score('Part taken off because outcomes differ with the odds'),
  uncertainty: score('Spread of the outcomes themselves'),
  bins: z.array(reliabilityBinSchema),
};

/** Odds given before each past year's planting, without that year, against what its weather brought. */
export const hindcastSchema = z
  .strictObject({
    question: hindcastQuestionSchema,
    residual: z.string(),
    crop: z.string(),
    labelEntries: z.array(z.strictObject({ id: z.string(), name: z.string() })).meta({
      description: 'The user’s own label entries that it goes by, the main treatment’s first',
    }),
    station: z.strictObject({ id: z.string(), name: z.string(), invented: z.boolean() }),
    soilsPerYear: z.int().meta({ description: 'Equally likely soils that each year is tried on' }),
    sentence: z.string().meta({ description: 'The finding in words' }),
    meaning: z.string().meta({ description: 'What this tests, and what it does not' }),
    overall: z.strictObject(scoresShape),
    leads: z.array(
      z.strictObject({
        leadDays: z.int().meta({ unit: 'd' }),
        plan: z.boolean().meta({
          description: 'True where that day lies before the application: nothing was observed yet',
        }),
        ...scoresShape,
      }),
    ),
    years: z.array(
      z.strictObject({
        year: z.int(),
        probability: share('Probability of harm with the year’s own weather'),
        harmed: z.int().meta({ description: 'Soils harmed, of those tried' }),
        odds: z.array(share('Odds given, one for each lead')),
      }),
    ),
    recorded: outcomeTallySchema.nullable().meta({
      description:
        'Outcomes recorded in kept fields, whatever residual and crop; null where no fields are looked at',
    }),
    model: modelUsedSchema,
  })
  .meta({ id: 'Hindcast' });
/** Odds of past years, each left out in turn, against what its own weather brought. */
export type Hindcast = z.infer<typeof hindcastSchema>;
