import { z } from 'zod';

/** What the user says about files that do not say it themselves; whatever is absent is told from the files or asked. */
export const readOptionsSchema = z
  .object({
    units: z.enum(['us', 'metric', 'tenths']).optional().meta({
      description:
        'Units of the values: us = inches and °F, metric = mm and °C, tenths = tenths of mm and of °C. Concerns layouts that do not fix their units',
    }),
    dates: z
      .enum(['day-first', 'month-first'])
      .optional()
      .meta({ description: 'How dates such as 3/4/2020 are written' }),
    station: z
      .string()
      .regex(/^[\w-]+$/, 'letters, digits, "-" and "_" only')
      .optional()
      .meta({ description: 'Station id for files that hold none' }),
  })
  .meta({ id: 'ReadOptions' });
export type ReadOptions = z.infer<typeof readOptionsSchema>;

/** A system of units that a file's values may be in. */
export type UnitSystem = NonNullable<ReadOptions['units']>;
