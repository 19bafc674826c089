import { z } from 'zod';
import { answerSchema, problemSchema } from './answer.ts';
import { modelUsedSchema } from './modelUsed.ts';

const { sentence, labelDate, clearDate, oddsAtPlanting, oddsRange, conditions } = answerSchema.shape;

/** The answer for one planned crop of a field; where none can be given, `problem` says why. */
export const fieldAnswerSchema = z
  .strictObject({
    planId: z.string(),
    question: z.looseObject({}).nullable().meta({
      description: 'The whole question, as it may be asked again; null where the field does not make one',
    }),
    sentence: sentence.nullable(),
    labelDate: labelDate.nullable(),
    clearDate,
    oddsAtPlanting,
    oddsRange,
    conditions,
    model: modelUsedSchema,
    problem: problemSchema.optional(),
  })
  .meta({ id: 'FieldAnswer' });
export type FieldAnswer = z.infer<typeof fieldAnswerSchema>;

/** What is remembered of an answer, to tell what has changed since. */
export const lastAnswerSchema = z
  .strictObject({
    on: z.iso.date().meta({ description: 'Day on which it was given' }),
    crop: z.string(),
    plantOn: z.iso.date(),
    labelDate: labelDate.nullable(),
    clearDate,
    oddsAtPlanting,
    conditions: z.array(
      z.strictObject({
        name: z.string().meta({ description: 'What the condition asks for' }),
        state: conditions.element.shape.state,
      }),
    ),
  })
  .meta({ id: 'LastAnswer' });
export type LastAnswer = z.infer<typeof lastAnswerSchema>;

export const CHANGE_REASONS = [
  'clear date past planting',
  'condition failed',
  'condition newly met',
  'odds moved',
] as const;

/** How one answer differs from the last one kept. */
export const answerChangeSchema = z
  .strictObject({
    fieldId: z.string(),
    planId: z.string(),
    was: lastAnswerSchema,
    is: lastAnswerSchema,
    why: z.enum(CHANGE_REASONS),
    text: z.string().meta({ description: 'The change in one sentence' }),
  })
  .meta({ id: 'AnswerChange' });
export type AnswerChange = z.infer<typeof answerChangeSchema>;

/** What was asked of the public records service, and what came of it. */
export const broughtUpSchema = z
  .strictObject({
    fetched: z.boolean().meta({ description: 'Whether newer weather was asked for' }),
    stations: z.array(
      z.strictObject({
        id: z.string(),
        lastDate: z.iso.date().nullable().meta({ description: 'Last day of its record now' }),
        text: z.string().meta({ description: 'What became of it, in words' }),
      }),
    ),
    text: z.string().meta({ description: 'The whole in one sentence' }),
  })
  .meta({ id: 'BroughtUp' });
export type BroughtUp = z.infer<typeof broughtUpSchema>;

/** All fields answered again. */
export const refreshSchema = z
  .strictObject({
    at: z.iso.datetime().meta({ description: 'When' }),
    weather: broughtUpSchema,
    answered: z.int().meta({ description: 'Planned crops that have an answer' }),
    changes: z.array(answerChangeSchema).meta({ description: 'What has changed, largest first' }),
    problems: z
      .array(z.strictObject({ fieldId: z.string(), planId: z.string(), problem: problemSchema }))
      .meta({ description: 'Planned crops without an answer, and why' }),
    model: modelUsedSchema,
  })
  .meta({ id: 'Refresh' });
export type Refresh = z.infer<typeof refreshSchema>;
