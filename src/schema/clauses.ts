import { z } from 'zod';
import { type Provenance, provenanceSchema } from './provenance.ts';
import { TEXTURE_GROUPS } from './soil.ts';

const mm = (description: string) => z.number().gt(0).max(5000).meta({ description, unit: 'mm' });
const monthDay = z.string().regex(/^(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/, 'a date MM-DD');

/** What holds where a clause fails. */
const ifNotSchema = z
  .union([
    z.strictObject({ months: z.number().min(0).max(120).meta({ description: 'Interval', unit: 'months' }) }),
    z.strictObject({ days: z.int().min(0).max(3660).meta({ description: 'Interval', unit: 'd' }) }),
    z.enum(['not allowed', 'bioassay', 'not stated']),
  ])
  .meta({
    description:
      'Another interval; not allowed = the crop waits until it is met; bioassay = a field bioassay decides; not stated = longer, without a length',
  });
export type IfNot = z.infer<typeof ifNotSchema>;

const shared = {
  grants: z.enum(['interval', 'short end']).default('interval').meta({
    description: 'What the row gives where the clause is met: its interval, or only the shorter end of it',
  }),
  ifNot: ifNotSchema,
};

const counts = z.enum(['rain', 'rain and irrigation']).meta({ description: 'Which water is summed' });

/** One condition that a source ties an interval to. */
export const clauseSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('water'),
      minMm: mm('Least sum of water in the window'),
      counts,
      window: z.strictObject({
        from: z.union([z.literal('application'), monthDay]).meta({ description: 'First day that counts' }),
        to: z.union([z.enum(['planting', 'interval end', 'spring end', 'unknown']), monthDay]).meta({
          description: 'Last day that counts; unknown = the source could not be read so far',
        }),
      }),
      ...shared,
    }),
    z.strictObject({
      kind: z.literal('startingRain'),
      minMm: mm('Rain after which the interval begins to count'),
      onDrySoilOnly: z.boolean().meta({ description: 'True where this holds for spray on dry soil only' }),
      ...shared,
    }),
    z.strictObject({
      kind: z.literal('stormGuard'),
      minMm: mm('Rain that must have fallen by then, so that late heavy storms alone do not count'),
      by: z
        .union([z.literal('spring end'), monthDay])
        .meta({ description: 'Day by which it must have fallen' }),
      ...shared,
    }),
    z.strictObject({
      kind: z.literal('annualRain'),
      minMm: mm('Least mean water of a year at the place'),
      counts,
      ...shared,
    }),
    z.strictObject({
      kind: z.literal('soilPh'),
      atLeast: z.number().min(3).max(11).optional().meta({ description: 'Lowest pH, included', unit: 'pH' }),
      below: z.number().min(3).max(11).optional().meta({ description: 'Upper pH, excluded', unit: 'pH' }),
      ...shared,
    }),
    z.strictObject({
      kind: z.literal('organicMatter'),
      minPercent: z.number().gt(0).max(20).meta({ description: 'Least organic matter', unit: '% by mass' }),
      ...shared,
    }),
    z.strictObject({
      kind: z.literal('soilTexture'),
      groups: z
        .array(z.enum(TEXTURE_GROUPS))
        .min(1)
        .max(2)
        .refine((groups) => new Set(groups).size === groups.length, 'a group stands twice')
        .meta({ description: 'Soils that it holds for: coarse, medium or fine' }),
      ...shared,
    }),
    z.strictObject({ kind: z.literal('tillage'), ...shared }),
    z.strictObject({
      kind: z.literal('zone'),
      words: z.string().min(1).meta({ description: 'Place, climate or practice in words' }),
      ...shared,
    }),
    z.strictObject({
      kind: z.literal('rate'),
      fromGramsPerHa: z.number().gt(0).optional().meta({ description: 'Lowest rate', unit: 'g/ha' }),
      toGramsPerHa: z.number().gt(0).optional().meta({ description: 'Highest rate', unit: 'g/ha' }),
      ...shared,
    }),
    z.strictObject({
      kind: z.literal('bioassay'),
      role: z
        .enum(['required', 'alternative'])
        .meta({ description: 'Must pass in any case, or may stand in for the other clauses' }),
      ...shared,
    }),
  ])
  .refine(
    (clause) =>
      (clause.kind !== 'soilPh' || clause.atLeast !== undefined || clause.below !== undefined) &&
      (clause.kind !== 'rate' || clause.fromGramsPerHa !== undefined || clause.toGramsPerHa !== undefined),
    { message: 'a band needs at least one end' },
  )
  .meta({ id: 'Clause' });
export type Clause = z.infer<typeof clauseSchema>;

/** One entry of clauses.yaml: clauses that hold for each of some interval rows. */
export const clauseEntrySchema = z.strictObject({
  rows: z.array(z.int().min(1)).min(1).meta({ description: 'Numbers of rows in intervals.csv' }),
  ...provenanceSchema.shape,
  clauses: z.array(clauseSchema).min(1),
});

/** A clause with its mark and sources, as it hangs on an interval row. */
export type TracedClause = Clause & Provenance;
