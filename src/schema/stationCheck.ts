import { z } from 'zod';
import { monthNormalsSchema, recentRainSchema, yearCompletenessSchema } from './completeness.ts';
import { fileProblemSchema } from './importSummary.ts';
import { readingSchema, stationSchema } from './weather.ts';

const yearRainSchema = z.object({
  year: z.int().meta({ description: 'Calendar year' }),
  rainMm: z.number().meta({ description: 'Its rain [mm]' }),
});

/** What a station's record is worth: its extent, its gaps and its yearly rain. */
export const stationCheckSchema = z
  .object({
    station: stationSchema,
    source: z.string().meta({ description: 'File names, or "invented"' }),
    firstDate: z.iso.date().meta({ description: 'First day with any value' }),
    lastDate: z.iso.date().meta({ description: 'Last day with any value' }),
    days: z.int().meta({ description: 'Days from first to last, both included [d]' }),
    rainDays: z.int().meta({ description: 'Days with an accepted daily rain value [d]' }),
    rainMissingFraction: z
      .number()
      .min(0)
      .max(1)
      .meta({ description: 'Share of days without an accepted daily rain value (0-1)' }),
    spreadDays: z.int().meta({ description: 'Days that get a share of a total of several days [d]' }),
    filledDays: z
      .int()
      .meta({ description: 'Days with neither, filled with the mean of their time of year [d]' }),
    longestGaps: z
      .array(
        z.object({
          firstDate: z.iso.date().meta({ description: 'First filled day' }),
          lastDate: z.iso.date().meta({ description: 'Last filled day' }),
          days: z.int().meta({ description: 'Length [d]' }),
        }),
      )
      .meta({ description: 'The longest runs of filled days, longest first, five at most' }),
    temperatureDays: z.int().meta({ description: 'Days with both accepted temperatures [d]' }),
    temperatureMissingFraction: z
      .number()
      .min(0)
      .max(1)
      .meta({ description: 'Share of days without both accepted temperatures (0-1)' }),
    fullYears: z.int().meta({
      description: 'Calendar years with a daily rain value on at least 98 % of their days',
    }),
    meanAnnualRainMm: z.number().nullable().meta({
      description:
        'Mean rain of those years, totals of several days included, nothing filled in [mm]; null without such years',
    }),
    driestYear: yearRainSchema.nullable().meta({ description: 'The driest of those years' }),
    wettestYear: yearRainSchema.nullable().meta({ description: 'The wettest of those years' }),
    gapCount: z.int().meta({ description: 'Runs of filled days in all' }),
    completeness: z
      .array(yearCompletenessSchema)
      .meta({ description: 'Each calendar year of the record, month by month, by the WMO rules' }),
    normals: monthNormalsSchema,
    recent: recentRainSchema.nullable().meta({
      description: 'The last twelve whole months; null where the record is shorter',
    }),
    implausible: z
      .array(
        z.object({
          rule: z.string().meta({ description: 'Rule of our own that the days break' }),
          count: z.int().meta({ description: 'How often it is broken' }),
          shown: z
            .array(
              z.object({
                date: z.iso.date().meta({ description: 'The day, or the first of a run' }),
                value: z.number().meta({ description: 'Rain [mm], or temperature [°C]' }),
                against: z.number().meta({
                  description:
                    'What it was held against: the limit [mm], the minimum or the nearer neighbour [°C], or the length of the run [d]',
                }),
              }),
            )
            .meta({ description: 'The latest of them, five at most, latest first' }),
        }),
      )
      .meta({ description: 'Values that look wrong, by rule; nothing is dropped for it' }),
    changes: z
      .object({
        observationTime: z
          .object({
            periods: z
              .array(
                z.object({
                  time: z.string().meta({ description: 'Time of day, local, HH:MM up to 24:00' }),
                  firstDate: z.iso.date().meta({ description: 'First reading at it' }),
                  lastDate: z.iso.date().meta({ description: 'Last reading at it' }),
                  readings: z.int().meta({ description: 'Days with a reading known to be at it [d]' }),
                }),
              )
              .meta({ description: 'Oldest first; two or more mean that the hour was changed' }),
            exceptions: z.int().meta({ description: 'Readings at other hours, fewer than 30 in a row [d]' }),
            knownDays: z.int().meta({ description: 'Days with rain whose record says the hour [d]' }),
            unknownDays: z.int().meta({ description: 'Days with rain whose record does not [d]' }),
          })
          .meta({ description: 'When the rain was read' }),
        formerPositions: z
          .array(
            z.object({
              latitudeDeg: z.number().nullable(),
              longitudeDeg: z.number().nullable(),
              elevationM: z.number().nullable(),
              replacedBy: z.string().meta({ description: 'Source that gave the next position' }),
              movedKm: z.number().nullable().meta({ description: 'Way to the next position', unit: 'km' }),
              movedTowards: z
                .string()
                .nullable()
                .meta({ description: 'Point of the compass towards which; null where there is no way' }),
              raisedM: z
                .number()
                .nullable()
                .meta({ description: 'Height of the next position above it', unit: 'm' }),
            }),
          )
          .meta({ description: 'Positions that earlier sources gave otherwise, oldest first' }),
      })
      .meta({
        description: 'Changes of the hour of reading and of the station’s position that the sources tell of',
      }),
    reading: readingSchema,
    problem: fileProblemSchema.nullable().meta({
      description: 'Why no odds can be worked out from this record at all; null where they can',
    }),
  })
  .meta({ id: 'StationCheck' });
export type StationCheck = z.infer<typeof stationCheckSchema>;
