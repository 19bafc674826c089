import { z } from 'zod';
import { problemSchema } from './answer.ts';
import { modelUsedSchema } from './modelUsed.ts';

const share = (description: string) => z.number().min(0).max(1).meta({ description, unit: '0-1' });

/** What is answered for one field of a list. */
export const batchAnswerSchema = z
  .strictObject({
    oddsAtPlanting: share('Carryover odds on the planting date').nullable(),
    oddsLow: share('Lower end of their range, from the number of years').nullable(),
    oddsHigh: share('Upper end').nullable(),
    years: z.int().nullable().meta({ description: 'Past years behind the odds' }),
    oddsInWords: z.string().meta({ description: 'The odds as a person says them' }),
    labelDate: z.iso.date().meta({ description: 'Never earlier than this' }),
    clearDate: z.iso
      .date()
      .nullable()
      .meta({ description: 'First date from the label date on with odds at or under the limit for good' }),
    daysAfterLabel: z.int().nullable().meta({ description: 'From label date to clear date', unit: 'd' }),
    oddsAtLabelDate: share('Carryover odds on the label date').nullable(),
    withinLimit: z.boolean().meta({ description: 'Whether label and odds both allow the planting date' }),
    interval: z.string().meta({ description: 'Rotation interval used' }),
    intervalConfirmed: z.boolean().meta({ description: 'Whether it is the user’s own entry' }),
  })
  .meta({ id: 'BatchAnswer' });

/** One field answered, or refused with the reason. */
export type BatchAnswer =
  | { readonly answer: z.infer<typeof batchAnswerSchema>; readonly problem: null }
  | { readonly answer: null; readonly problem: z.infer<typeof problemSchema> };

export const batchRowSchema = z
  .strictObject({
    line: z.int().meta({ description: 'Line of the file, the head being line 1' }),
    rank: z
      .int()
      .meta({ description: '1 = most area at risk; rows without an area follow by odds, refused ones last' }),
    areaHectares: z.number().nullable().meta({ description: 'Area of the field', unit: 'ha' }),
    hectaresAtRisk: z.number().nullable().meta({ description: 'Odds times area', unit: 'ha' }),
    given: z.record(z.string(), z.string()).meta({ description: 'The row as it was given, all its columns' }),
    answer: batchAnswerSchema.nullable(),
    problem: problemSchema.nullable(),
  })
  .meta({ id: 'BatchRow' });
export type BatchRow = z.infer<typeof batchRowSchema>;

export const batchSchema = z
  .strictObject({
    file: z.string(),
    answered: z.int(),
    refused: z.int(),
    unknownColumns: z.array(z.string()).meta({ description: 'Columns that were kept but mean nothing here' }),
    cautions: z.array(z.string()),
    model: modelUsedSchema,
    rows: z.array(batchRowSchema).meta({ description: 'By rank' }),
  })
  .meta({ id: 'Batch' });
export type Batch = z.infer<typeof batchSchema>;
