import { z } from 'zod';

const days = (description: string) => z.int().min(0).meta({ description, unit: 'd' });

/** How a month's rain total stands. */
export const rainStateSchema = z.enum(['complete', 'accumulated', 'incomplete', 'none']).meta({
  description:
    'complete: every day has a value of its own; accumulated: missing days lie under totals of several days read in the same month; incomplete: no total by the WMO rule; none: no value at all',
});

/** How a month's mean temperature stands. */
export const temperatureStateSchema = z.enum(['complete', 'kept', 'incomplete', 'none']).meta({
  description:
    'complete: both temperatures on every day; kept: at most 10 days missing and at most 4 in a row; incomplete: no mean by the WMO rule; none: no value at all',
});

/** Completeness of one calendar month of one year; days outside the record are missing. */
export const monthCompletenessSchema = z
  .object({
    month: z.int().min(1).max(12).meta({ description: 'Calendar month' }),
    days: days('Length of the month'),
    rainDays: days('Days with a daily rain value of their own'),
    spreadDays: days('Days that get a share of a total of several days'),
    rainMm: z.number().nullable().meta({ description: 'Rain total, where it stands', unit: 'mm' }),
    rain: rainStateSchema,
    temperatureDays: days('Days with both temperatures'),
    temperature: temperatureStateSchema,
  })
  .meta({ id: 'MonthCompleteness' });
export type MonthCompleteness = z.infer<typeof monthCompletenessSchema>;

/** Completeness of one calendar year. */
export const yearCompletenessSchema = z
  .object({
    year: z.int().meta({ description: 'Calendar year' }),
    rainDays: days('Days with a daily rain value of their own'),
    spreadDays: days('Days that get a share of a total of several days'),
    filledDays: days('Days with neither inside the record, filled for odds'),
    temperatureDays: days('Days with both temperatures'),
    rainMonths: z.int().min(0).max(12).meta({ description: 'Months whose rain total stands' }),
    temperatureMonths: z.int().min(0).max(12).meta({ description: 'Months whose mean temperature stands' }),
    rainMm: z
      .number()
      .nullable()
      .meta({ description: 'Rain of the year; null unless all twelve totals stand', unit: 'mm' }),
    months: z.array(monthCompletenessSchema).length(12),
  })
  .meta({ id: 'YearCompleteness' });
export type YearCompleteness = z.infer<typeof yearCompletenessSchema>;

/** Rain normals of the calendar months over one base period. */
export const monthNormalsSchema = z
  .object({
    baseFrom: z.int().meta({ description: 'First year of the base period' }),
    baseTo: z.int().meta({ description: 'Last year of the base period' }),
    standard: z.boolean().meta({
      description: 'True for the latest standard 30 years; false for all years of the record instead',
    }),
    months: z
      .array(
        z.object({
          month: z.int().min(1).max(12),
          validYears: z.int().min(0).meta({ description: 'Years whose total of this month stands' }),
          stands: z
            .boolean()
            .meta({ description: 'Whether that is at least 80 % of the base period’s years' }),
          meanMm: z
            .number()
            .nullable()
            .meta({ description: 'Mean of those totals; null without any', unit: 'mm' }),
        }),
      )
      .length(12),
  })
  .meta({ id: 'MonthNormals' });
export type MonthNormals = z.infer<typeof monthNormalsSchema>;

/** Rain of the last twelve whole calendar months against their normals. */
export const recentRainSchema = z
  .object({
    months: z
      .array(
        z.object({
          month: z
            .string()
            .regex(/^\d{4}-\d{2}$/)
            .meta({ description: 'Year and month' }),
          missingDays: days('Days without rain, read or covered'),
          rainMm: z
            .number()
            .nullable()
            .meta({ description: 'Total; null where it does not stand', unit: 'mm' }),
          normalMm: z.number().nullable().meta({ description: 'Mean of the base period', unit: 'mm' }),
          percentOfNormal: z.number().nullable().meta({ description: 'Total over normal', unit: '%' }),
        }),
      )
      .length(12),
    monthsCounted: z.int().meta({ description: 'Months with both total and normal' }),
    rainMm: z.number().meta({ description: 'Rain of the months counted', unit: 'mm' }),
    normalMm: z.number().meta({ description: 'Normal of the months counted', unit: 'mm' }),
    percentOfNormal: z
      .number()
      .nullable()
      .meta({ description: 'One over the other; null where no month counts', unit: '%' }),
  })
  .meta({ id: 'RecentRain' });
export type RecentRain = z.infer<typeof recentRainSchema>;
