import { z } from 'zod';
import { stationSchema } from './weather.ts';

const rain = (description: string) => z.number().meta({ description, unit: 'mm' });

/** Rain normals of a window of the calendar at one station, and the season so far against them. */
export const stationNormalsSchema = z
  .object({
    station: stationSchema,
    source: z.string().meta({ description: 'File names, or "invented"' }),
    from: z.string().meta({ description: 'First day of the window, MM-DD' }),
    to: z
      .string()
      .meta({ description: 'Last day of the window, MM-DD; in the next year where it comes before' }),
    base: z.object({
      from: z.int().meta({ description: 'First year' }),
      to: z.int().meta({ description: 'Last year' }),
      kind: z.enum(['given', 'standard', 'all']).meta({
        description:
          'given by the user; the latest standard 30 years; or all years, where the standard ones are not usable enough',
      }),
      usableYears: z.int().meta({ description: 'Years with a usable window' }),
      stands: z.boolean().meta({ description: 'Whether they are at least 80 % of the base period (WMO)' }),
    }),
    meanMm: rain('Mean'),
    medianMm: rain('Median'),
    lowerTercileMm: rain('Limit of the driest third'),
    upperTercileMm: rain('Limit of the wettest third'),
    years: z.array(
      z.object({
        year: z.int().meta({ description: 'Year in which the window begins' }),
        rainMm: rain('Rain, missing days at the mean of their time of year'),
        missingDays: z.int().meta({ description: 'Missing rain days', unit: 'd' }),
      }),
    ),
    season: z
      .object({
        firstDate: z.iso.date(),
        lastDate: z.iso.date().meta({ description: 'Last day that counts' }),
        complete: z.boolean().meta({ description: 'Whether the window is over' }),
        rainMm: rain('Rain on the days that have it'),
        missingDays: z
          .int()
          .meta({ description: 'Days without rain; left out of the base years too', unit: 'd' }),
        usable: z.boolean().meta({ description: 'At most 5 % of the days missing and no run over 10 days' }),
        normalMm: rain('Mean of the base years over the same days'),
        percentOfNormal: z.number().nullable().meta({ description: 'Rain over that mean', unit: '%' }),
        rank: z.int().meta({ description: '1 = driest' }),
        outOf: z.int().meta({ description: 'The base years and this one' }),
        nonExceedance: z
          .number()
          .meta({ description: 'Weibull chance of a year with no more rain', unit: '0-1' }),
        third: z.enum(['dry', 'middle', 'wet']).meta({ description: 'Third of the base years it falls in' }),
      })
      .nullable()
      .meta({
        description: 'The season so far, or the last whole one; null where the record does not hold it',
      }),
  })
  .meta({ id: 'StationNormals' });
export type StationNormals = z.infer<typeof stationNormalsSchema>;
