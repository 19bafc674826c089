import { z } from 'zod';
import { stationExtentSchema } from './weather.ts';

/** A US county or county equivalent with the middle of its area. */
export const countySchema = z
  .object({
    fips: z.string().length(5).meta({ description: 'Federal code, state and county' }),
    name: z.string().meta({ description: 'Name without "County" or the like' }),
    fullName: z.string().meta({ description: 'Name that tells it from others, with the state’s letters' }),
    independentCity: z.boolean().meta({ description: 'True for a city that belongs to no county' }),
    state: z.string().length(2).meta({ description: 'Letters of the state' }),
    stateName: z.string().meta({ description: 'Name of the state' }),
    latitudeDeg: z.number().meta({ description: 'Latitude of the middle', unit: '°' }),
    longitudeDeg: z.number().meta({ description: 'Longitude of the middle, east positive', unit: '°' }),
  })
  .meta({ id: 'County' });
export type County = z.infer<typeof countySchema>;

const km = (description: string) => z.number().meta({ description, unit: 'km' });

/** Stations around a point, best first, with what spoke for and against each. */
export const nearestStationsSchema = z
  .object({
    place: z.object({
      name: z.string().nullable().meta({ description: 'County, where one was named' }),
      latitudeDeg: z.number().meta({ description: 'Latitude', unit: '°' }),
      longitudeDeg: z.number().meta({ description: 'Longitude, east positive', unit: '°' }),
      elevationM: z.number().nullable().meta({ description: 'Height, where it was given', unit: 'm' }),
    }),
    suggested: z
      .string()
      .nullable()
      .meta({ description: 'Id of the station suggested; null where none will do' }),
    reason: z.string().meta({ description: 'Why that one, in one sentence' }),
    stations: z.array(
      stationExtentSchema.extend({
        distanceKm: km('Distance'),
        elevationDifferenceM: z
          .number()
          .nullable()
          .meta({ description: 'Its height less the place’s; null where either is unknown', unit: 'm' }),
        years: z.number().meta({ description: 'Years of rain: days with a value over 365.25', unit: 'a' }),
        rainPercent: z.number().meta({ description: 'Days of its record with rain', unit: '%' }),
        temperaturePercent: z
          .number()
          .meta({ description: 'Days of its record with both temperatures', unit: '%' }),
        elements: z.array(z.enum(['rain', 'temperatures'])).meta({ description: 'What it measures' }),
        cost: z
          .object({
            distanceKm: km('Distance itself'),
            elevationKm: km('1 km for every 10 m of height difference'),
            shortRecordKm: km('4 km for every year under 30'),
            gapsKm: km('3 km for every per cent of rain days missing'),
            temperaturesKm: km('40 km where there are not ten years of temperatures'),
            endedKm: km('3 km for every year since its last day, up to 60'),
            totalKm: km('Their sum: the smallest is suggested'),
          })
          .meta({ description: 'What counts against it, all in kilometres' }),
      }),
    ),
    withoutPosition: z.int().meta({ description: 'Stations left out because their position is not known' }),
  })
  .meta({ id: 'NearestStations' });
export type NearestStations = z.infer<typeof nearestStationsSchema>;
