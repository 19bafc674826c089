import { z } from 'zod';
import { MARKS } from './provenance.ts';

const probability = (description: string) => z.number().min(0).max(1).meta({ description, unit: '0-1' });
const water = (description: string) => z.number().min(0).meta({ description, unit: 'mm' });

/** How a condition stands: open while it may still go either way, or while a fact about the field is not given. */
export const CONDITION_STATES = ['met', 'not met', 'open'] as const;

const rangeSchema = z
  .strictObject({
    low: probability('Lower end of the Wilson interval'),
    high: probability('Upper end of the Wilson interval'),
    years: z.int().meta({ description: 'Years of weather behind it' }),
  })
  .nullable();

/** One condition that a label ties its interval to, against the field's own weather and soil. */
export const labelConditionSchema = z
  .strictObject({
    kind: z.enum([
      'water',
      'startingRain',
      'stormGuard',
      'annualRain',
      'soilPh',
      'organicMatter',
      'soilTexture',
      'tillage',
      'zone',
      'rate',
      'bioassay',
    ]),
    name: z.string().meta({
      description:
        'What it asks for, in the same words whatever units and dates are asked for; tells conditions apart',
    }),
    text: z.string().meta({ description: 'The condition and how it stands, in words' }),
    state: z.enum(CONDITION_STATES),
    oddsMet: probability('Odds of being met by the date; null where weather does not decide it').nullable(),
    range: rangeSchema,
    amountMm: water('Water that counts so far; of a mean year for a yearly sum').nullable(),
    requiredMm: water('Water asked for').nullable(),
    byDate: z.iso.date().nullable().meta({ description: 'Last day that counts' }),
    intervalIfMet: z.string().nullable().meta({ description: 'What the label then gives, in words' }),
    intervalIfNot: z
      .string()
      .nullable()
      .meta({ description: 'The interval otherwise; null where the label gives none' }),
    otherwise: z
      .enum(['interval', 'not allowed', 'bioassay', 'not stated'])
      .meta({ description: 'What holds where it fails' }),
    setsDate: z.boolean().meta({
      description:
        'False where it moves no date: shown beside an interval that the user gave, or of a line that another one takes the place of',
    }),
    source: z.string().nullable().meta({ description: 'Titles of the sources' }),
    mark: z.enum([...MARKS, 'own label']),
  })
  .meta({ id: 'LabelCondition' });
export type LabelCondition = z.infer<typeof labelConditionSchema>;

/** A published counting rule beside the model: advice by region, which sets no date. */
export const countingAdviceSchema = z
  .strictObject({
    id: z.string(),
    kind: z.enum(['threshold', 'other window', 'raise', 'caution', 'not credited']),
    advice: z.string().meta({ description: 'What the rule says' }),
    region: z.string().meta({ description: 'Region it was written for' }),
    from: z.iso.date().nullable().meta({ description: 'First day that counts' }),
    to: z.iso.date().nullable().meta({ description: 'Last day that counts' }),
    thresholdMm: water('Sum below which it speaks').nullable(),
    sumMm: water('Rain of the window so far; null while none of it is observed').nullable(),
    through: z.iso.date().nullable().meta({ description: 'Last observed day of the window' }),
    state: z.enum(['under', 'reached', 'open']).nullable().meta({
      description: 'Against the threshold; null for rules without one, and for windows after planting',
    }),
    oddsUnder: probability('Odds that the window ends under the threshold').nullable(),
    range: rangeSchema,
    source: z.string(),
    mark: z.enum(MARKS),
  })
  .meta({ id: 'CountingAdvice' });
export type CountingAdvice = z.infer<typeof countingAdviceSchema>;
