import { z } from 'zod';

/** Another station that lent temperatures or rain. */
const lenderSchema = z.strictObject({
  id: z.string().meta({ description: 'Station id' }),
  name: z.string().meta({ description: 'Station name' }),
  distanceKm: z.number().nullable().meta({ description: 'Distance [km]; null where a position is unknown' }),
});

/** What an answer's weather rests on beside the station's own record. */
export const weatherHelpSchema = z
  .strictObject({
    temperatureStation: lenderSchema
      .extend({
        elevationDifferenceM: z
          .number()
          .nullable()
          .meta({ description: 'Its height less the station’s [m]; null where either is unknown' }),
        addedC: z.number().meta({ description: 'Added for the height, 6.5 °C per km [°C]' }),
      })
      .nullable()
      .meta({ description: 'Station whose temperatures are used; null where the station has its own' }),
    rainNeighbours: z
      .array(
        lenderSchema.extend({
          days: z.int().meta({ description: 'Days that it helped to fill', unit: 'd' }),
        }),
      )
      .meta({ description: 'Stations that rain gaps were filled from' }),
    neighbourRainDays: z.int().meta({
      description: 'Days whose rain was filled from neighbours; they count as missing',
      unit: 'd',
    }),
    gaugeDays: z.int().meta({ description: 'Days on which the own gauge replaces the station', unit: 'd' }),
    gaugeDaysOutside: z.int().meta({ description: 'Own gauge days outside the record, not used', unit: 'd' }),
  })
  .meta({ id: 'WeatherHelp' });
export type WeatherHelp = z.infer<typeof weatherHelpSchema>;
