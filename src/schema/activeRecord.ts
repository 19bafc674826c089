import { z } from 'zod';
import { provenanceSchema } from './provenance.ts';

const words = (description: string) => z.string().min(1).meta({ description });
const optionalWords = (description: string) => z.string().nullable().meta({ description });
const positive = (description: string, unit: string) =>
  z.number().gt(0).nullable().meta({ description, unit });

const ACTIVE_FIGURES = [
  'group',
  'halfLifeTypical',
  'halfLifeLow',
  'halfLifeHigh',
  'koc',
  'typicalRate',
  'topRate',
  'mainLossRoute',
  'moistureExponent',
  'q10',
  'handling',
] as const;
type ActiveFigure = (typeof ACTIVE_FIGURES)[number];

const maximum = (limit: number, description: string, unit: string) =>
  z.number().gt(0).max(limit).nullable().meta({ description, unit });

/** An active ingredient as one line of actives.csv writes it; null where nothing is known. */
export const activeRecordSchema = z
  .strictObject({
    isoName: words('ISO common name'),
    aliases: z.array(z.string().min(1)).meta({ description: 'Other common spellings; never a brand' }),
    group: z.int().min(0).max(40).meta({ description: 'Mode-of-action group number' }),
    soilResidual: z
      .enum(['yes', 'no'])
      .meta({ description: 'no where roots take up next to nothing of what soil holds' }),
    fieldHalfLifeDays: z
      .strictObject({
        typical: maximum(5000, 'Typical field half-life', 'd'),
        low: maximum(5000, 'Shortest half-life published', 'd'),
        high: maximum(5000, 'Longest half-life published', 'd'),
      })
      .nullable(),
    kocMlPerG: z
      .strictObject({
        typical: positive('Sorption to organic carbon, Koc', 'mL/g'),
        low: positive('Lowest Koc', 'mL/g'),
        high: positive('Highest Koc', 'mL/g'),
      })
      .nullable(),
    typicalRateGramsPerHa: z
      .strictObject({
        low: z.number().gt(0).meta({ description: 'Lowest usual rate', unit: 'g/ha' }),
        high: z.number().gt(0).meta({ description: 'Highest usual rate', unit: 'g/ha' }),
      })
      .nullable(),
    topRateGramsPerHa: positive('Top rate of active ingredient in field crops', 'g/ha'),
    topRateBasis: z.enum(['label', 'upper typical rate']).nullable().meta({
      description: 'Whether the top rate was read on a label, or is the upper end of the usual rates',
    }),
    mainLossRoute: optionalWords('What takes most of it away'),
    moistureExponent: z
      .number()
      .min(0)
      .max(3)
      .nullable()
      .meta({ description: 'Own exponent B of the moisture response; null takes the default', unit: '-' }),
    q10: z
      .number()
      .min(1)
      .max(6)
      .nullable()
      .meta({ description: 'Own speed-up of breakdown per 10 °C; null takes the default', unit: '-' }),
    handling: optionalWords('What people who handle it must mind'),
    cautions: z.array(z.string().min(1)).meta({ description: 'What to mind, one sentence each' }),
    provenance: z
      .strictObject(
        Object.fromEntries(ACTIVE_FIGURES.map((name) => [name, provenanceSchema.nullable()])) as Record<
          ActiveFigure,
          z.ZodNullable<typeof provenanceSchema>
        >,
      )
      .meta({ description: 'Mark and sources of each figure' }),
  })
  .superRefine((active, context) => {
    const life = active.fieldHalfLifeDays;
    const given: Record<ActiveFigure, unknown> = {
      ...active,
      halfLifeTypical: life?.typical,
      halfLifeLow: life?.low,
      halfLifeHigh: life?.high,
      koc: active.kocMlPerG,
      typicalRate: active.typicalRateGramsPerHa,
      topRate: active.topRateGramsPerHa,
    };
    const path: Partial<Record<ActiveFigure, string[]>> = {
      halfLifeTypical: ['fieldHalfLifeDays', 'typical'],
      halfLifeLow: ['fieldHalfLifeDays', 'low'],
      halfLifeHigh: ['fieldHalfLifeDays', 'high'],
      koc: ['kocMlPerG', 'typical'],
      typicalRate: ['typicalRateGramsPerHa', 'low'],
      topRate: ['topRateGramsPerHa'],
    };
    const refuse = (at: string[], message: string) =>
      context.addIssue({ code: 'custom', path: at, message, input: active });
    for (const name of ACTIVE_FIGURES) {
      if (((given[name] ?? null) === null) !== (active.provenance[name] === null)) {
        refuse(path[name] ?? [name], 'a value and its mark stand together or not at all');
      }
    }
    if ((active.topRateGramsPerHa === null) !== (active.topRateBasis === null)) {
      refuse(['topRateBasis'], 'a top rate and its basis stand together or not at all');
    }
    const { low = null, high = null, typical = null } = life ?? {};
    if (low !== null && low > (typical ?? high ?? low)) {
      refuse(
        ['fieldHalfLifeDays', 'low'],
        'the low half-life is above the typical one, or above the high one',
      );
    }
    if (high !== null && high < (typical ?? high)) {
      refuse(['fieldHalfLifeDays', 'high'], 'the high half-life is below the typical one');
    }
    if (life !== null && typical === null && (low === null || high === null)) {
      refuse(
        ['fieldHalfLifeDays', 'typical'],
        'without a typical half-life both ends of the range are needed',
      );
    }
  });
export type ActiveRecord = z.infer<typeof activeRecordSchema>;
