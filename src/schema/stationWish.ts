import { z } from 'zod';

/** Which stations of the public lists are wanted. */
export const stationWishSchema = z
  .object({
    state: z
      .string()
      .regex(/^[A-Z]{2}$/, 'a state or province code of two letters, such as MT')
      .optional()
      .meta({ description: 'State or province code of the station list' }),
    box: z
      .object({
        southDeg: z.number().min(-90).max(90),
        westDeg: z.number().min(-180).max(180),
        northDeg: z.number().min(-90).max(90),
        eastDeg: z.number().min(-180).max(180),
      })
      .refine(({ southDeg, northDeg }) => southDeg < northDeg, 'a box whose south lies south of its north')
      .optional()
      .meta({ description: 'Box of latitude and longitude, borders included [°]' }),
    elements: z
      .array(z.string().regex(/^[A-Z][A-Z0-9]{3}$/, 'element names of four letters, such as PRCP'))
      .min(1)
      .meta({ description: 'Elements that a station must hold, all of them' }),
    since: z
      .int()
      .min(1700)
      .max(2200)
      .optional()
      .meta({ description: 'Year from which on, or before, every element must be held' }),
    until: z.int().min(1700).max(2200).optional().meta({
      description: 'Year up to which every element must be held; absent: until now, where `since` is given',
    }),
  })
  .meta({ id: 'StationWish' });
export type StationWish = z.infer<typeof stationWishSchema>;
