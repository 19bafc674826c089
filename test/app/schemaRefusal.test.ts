import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { readQuestion } from '../../src/app/readQuestion.ts';
import { datesIn, datesReworded } from '../../src/dateWords.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { DrywakeError } from '../../src/errors.ts';
import { cropGridQuestionSchema } from '../../src/schema/comparison.ts';
import { fieldName } from '../../src/schema/fieldNames.ts';
import { fieldRecordSchema } from '../../src/schema/fieldRecord.ts';
import { hindcastQuestionSchema } from '../../src/schema/hindcast.ts';
import { labelEntrySchema } from '../../src/schema/labelEntry.ts';
import { questionSchema } from '../../src/schema/question.ts';
import { regionQuestionSchema } from '../../src/schema/region.ts';
import { larkrise } from '../fixtures/fields/larkrise.ts';

/** The refusal of something that a schema does not take. */
function refusalOf(given: object, schema: z.ZodType = questionSchema): DrywakeError {
  try {
    readQuestion(schema, given);
  } catch (error) {
    if (error instanceof DrywakeError) return error;
    throw error;
  }
  throw new Error('It was taken.');
}

describe('a question that a schema does not take', () => {
  it.each([
    [
      { gauge: [{ date: '2026-13-40', rainMm: 3 }] },
      'Your own rain gauge, line 1, day: “2026-13-40” is no day of the calendar.',
      'Give a date such as 2027-05-10.',
    ],
    [
      {
        irrigation: [
          { date: '2026-09-04', mm: 3 },
          { date: '2026-09-05', mm: 900 },
        ],
      },
      'Irrigation, line 2, amount: “900” is too large.',
      'It takes at most 500 mm.',
    ],
    [{ plantOn: undefined }, 'Planting date is missing.', 'Fill it in.'],
    [{ crop: '' }, 'Next crop is empty.', 'Fill it in.'],
    [{ rateFraction: 'x' }, 'Rate: “x” is no number.', 'Give a number.'],
    [{ rateFraction: 0 }, 'Rate: “0” is too small.', 'It takes more than 0.'],
    [{ soilClass: 'lom' }, 'Soil: “lom” is none of the choices.', 'Did you mean loam?'],
    [
      { otherTreatments: [{ appliedOn: 'May', residual: 'atrazine' }] },
      'Other treatment 1, date of spraying: “May” is no day of the calendar.',
      'Give a date such as 2027-05-10.',
    ],
    [
      { evidence: [{ kind: 'soil test', on: '2026-09-09' }] },
      'Finding 1, residue found: give either the fraction left or the concentration.',
      'Dates are written YYYY-MM-DD, fractions from 0 to 1, percentages from 0 to 100.',
    ],
    [{ assume: { q10: 99 } }, 'Speed-up by warmth: “99” is too large.', 'It takes at most 6.'],
    [{ gauge: 5 }, 'Your own rain gauge: “5” is no list.', 'Give a list.'],
    [{ plantUn: '2027-05-10' }, 'Nothing is called “plantUn” here.', 'Did you mean plantOn?'],
  ])('%o is refused in the words of the page', (change, message, hint) => {
    const refusal = refusalOf({ ...demoQuestion, ...change });
    expect([refusal.message, refusal.hint]).toEqual([message, hint]);
  });
});

/** Every path of a schema, entries of lists by 0. */
function pathsOf(schema: z.ZodType, at: readonly string[] = []): string[] {
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodNullable || schema instanceof z.ZodDefault)
    return pathsOf(schema.unwrap() as z.ZodType, at);
  if (schema instanceof z.ZodArray) return pathsOf(schema.element as z.ZodType, [...at, '0']);
  if (schema instanceof z.ZodUnion) return schema.options.flatMap((one) => pathsOf(one as z.ZodType, at));
  if (!(schema instanceof z.ZodObject)) return [];
  return Object.entries(schema.shape).flatMap(([key, part]) => {
    const path = [...at, key];
    return [path.join('.'), ...pathsOf(part as z.ZodType, path)];
  });
}

it.each([
  ['a question', questionSchema],
  ['a crop grid', cropGridQuestionSchema],
  ['a look back', hindcastQuestionSchema],
  ['a region', regionQuestionSchema],
  ['a kept field', fieldRecordSchema],
  ['a label entry', labelEntrySchema],
])('every field of %s has a name of its own in refusals', (_, schema) => {
  const paths = pathsOf(schema);
  expect(paths.length).toBeGreaterThan(8);
  expect(paths.filter((path) => fieldName(path).includes('“'))).toEqual([]);
});

it.each(Object.keys(fieldRecordSchema.shape))(
  'a kept field with nonsense under %s is refused without a key or a word of the schema’s own',
  (key) => {
    const { message, hint } = refusalOf({ ...larkrise, [key]: { no: 'sense' } }, fieldRecordSchema);
    expect(`${message} ${hint}`.replaceAll(/“[^”]*”/g, '')).not.toMatch(
      /Invalid|expected|received|\b[a-z]{3,}[A-Z]/,
    );
  },
);

it('dates of a refusal follow the reader’s style; what is no date stays', () => {
  const text = 'From 2026-08-14 to 2026-13-40; demo-2026-08-14-x.';
  expect(datesReworded(text, datesIn('us'))).toBe('From August 14, 2026 to 2026-13-40; demo-2026-08-14-x.');
  expect(datesReworded(text, datesIn('iso'))).toBe(text);
});
