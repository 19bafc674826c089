import { z } from 'zod';

/** A value, or a series of values with one row of the table each. */
const valueSchema = z.union([z.number(), z.array(z.number()).min(1)]);

/** How a value is known. Only a value known from memory alone does not gate. */
export const MARKS = ['seen', 'computed', 'from memory, recomputed', 'from memory'] as const;

const sourceSchema = z.strictObject({
  title: z.string().min(1),
  publisher: z.string().min(1),
  year: z.number().int().nullable().describe('null where the year was not noted'),
  place: z.string().min(1).describe('table or equation'),
});

const caseSchema = z.strictObject({
  id: z.string().min(1),
  mark: z.enum(MARKS),
  note: z.string().optional(),
  equation: z.string().min(1).describe('name in the registry'),
  inputs: z.record(z.string(), z.unknown()),
  expected: z.record(z.string(), valueSchema),
  unit: z.union([z.string(), z.record(z.string(), z.string())]).describe('one for all, or one per quantity'),
  tolerance: z
    .union([
      z.number().min(0),
      z.record(z.string(), z.union([z.number().min(0), z.array(z.number().min(0))])),
    ])
    .describe('absolute; one for all, one per quantity, or one per value of a series'),
  toleranceWhy: z.string().min(1),
});

/** One file of `test/published`. */
export const caseFileSchema = z.strictObject({
  about: z.string().min(1),
  source: sourceSchema,
  seenWhere: z.string().min(1),
  cases: z.array(caseSchema).min(1),
});

export type PublishedCase = z.infer<typeof caseSchema>;

/** One published number and the tolerance that goes with it. */
export interface PublishedValue {
  quantity: string;
  index: number | null;
  published: number;
  tolerance: number | undefined;
  unit: string | undefined;
}

/** The single numbers of a case, in file order; tolerance and unit are undefined where the file lacks them. */
export function publishedValues({ expected, tolerance, unit }: PublishedCase): PublishedValue[] {
  return Object.entries(expected).flatMap(([quantity, value]): PublishedValue[] => {
    const own = typeof tolerance === 'number' ? tolerance : tolerance[quantity];
    const ownUnit = typeof unit === 'string' ? unit : unit[quantity];
    const toleranceOf = (i: number) => (Array.isArray(own) ? own[i] : own);
    return Array.isArray(value)
      ? value.map((published, index) => ({
          quantity,
          index,
          published,
          tolerance: toleranceOf(index),
          unit: ownUnit,
        }))
      : [{ quantity, index: null, published: value, tolerance: toleranceOf(0), unit: ownUnit }];
  });
}
