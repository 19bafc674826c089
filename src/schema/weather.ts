import { z } from 'zod';

export * from './codes.ts';

/** A weather station as the public station list describes it. */
export const stationSchema = z
  .object({
    id: z.string().min(1).meta({ description: 'Station id as the record writes it; case matters' }),
    name: z.string().meta({ description: 'Station name, or the id where none is known' }),
    latitudeDeg: z
      .number()
      .min(-90)
      .max(90)
      .nullable()
      .meta({ description: 'Latitude, north positive [°]; null where the record does not hold it' }),
    longitudeDeg: z
      .number()
      .min(-180)
      .max(180)
      .nullable()
      .meta({ description: 'Longitude, east positive [°]; null where unknown' }),
    elevationM: z.number().nullable().meta({ description: 'Height above sea level [m]; null where unknown' }),
    invented: z.boolean().meta({ description: 'True for a made-up record (demo): never a real place' }),
  })
  .meta({ id: 'Station' });
/** A station: id, name, position [°] and height [m]. */
export type Station = z.infer<typeof stationSchema>;

/** A station with the extent of its record, as lists show it. */
export const stationExtentSchema = stationSchema
  .extend({
    firstDate: z.iso.date().meta({ description: 'First day with any value' }),
    lastDate: z.iso.date().meta({ description: 'Last day with any value' }),
    rainDays: z.int().min(0).meta({ description: 'Days with an accepted daily rain value [d]' }),
    temperatureDays: z.int().min(0).meta({ description: 'Days with both accepted temperatures [d]' }),
    source: z.string().meta({ description: 'Where the record came from: file names or "invented"' }),
  })
  .meta({ id: 'StationExtent' });
/** A station with how far its record reaches and how many days it holds [d]. */
export type StationExtent = z.infer<typeof stationExtentSchema>;

/** What reading a record found; every count is of element values, not of lines. */
export const readingSchema = z
  .object({
    valuesRead: z.int().meta({ description: 'Values of the five elements used, flagged ones included' }),
    droppedByFlag: z.int().meta({ description: 'Values dropped because a quality flag is set' }),
    implausible: z.int().meta({
      description:
        'Unflagged values dropped because they cannot be: rain below 0 or above 2000 mm a day, a temperature beyond ±70 °C, a day count below 1',
    }),
    presumedZero: z
      .int()
      .meta({ description: 'Rain values whose measurement flag says missing, presumed zero' }),
    duplicated: z
      .int()
      .meta({ description: 'Values that stood twice for one day and element; the last one counts' }),
    ignoredElements: z.int().meta({ description: 'Values of elements that are not used' }),
    notes: z.array(z.string()).default([]).meta({
      description: 'What was guessed, recognised or declared in reading, a sentence each, file named',
    }),
  })
  .meta({ id: 'Reading' });
export type Reading = z.infer<typeof readingSchema>;

/** A position of a station that another source gives otherwise. */
export interface FormerPlace extends Pick<Station, 'latitudeDeg' | 'longitudeDeg' | 'elevationM'> {
  /** The source that gave the next one. */
  readonly replacedBy: string;
}

/**
 * One station's raw daily record: five integer columns, dense from `firstDay`,
 * {@link ABSENT} where there is no accepted value (missing, or dropped by a quality flag).
 */
export interface StationRecord {
  readonly station: Station;
  /** Day number (days since 1970-01-01) of index 0 of every column. */
  readonly firstDay: number;
  /** Daily rain, PRCP [0.1 mm]. */
  readonly rainTenthsMm: Int32Array;
  /** Daily maximum air temperature, TMAX [0.1 °C]. */
  readonly maxTempTenthsC: Int32Array;
  /** Daily minimum air temperature, TMIN [0.1 °C]. */
  readonly minTempTenthsC: Int32Array;
  /** Rain total of several days that end on this day, MDPR [0.1 mm]. */
  readonly multiDayRainTenthsMm: Int32Array;
  /** Number of days in that total, this day included, DAPR [d]. */
  readonly multiDayCount: Int32Array;
  /** Time of day at which the rain was read, HHMM from 0 to 2400 local; absent where no line of the record says it. */
  readonly rainTimeHhmm?: Int32Array;
  /** Positions that an earlier source gave otherwise than `station` does, oldest first; absent where none did. */
  readonly formerPlaces?: readonly FormerPlace[];
  readonly reading: Reading;
  /** File names or "invented", for the answer's own words. */
  readonly source: string;
}

/** A gapless daily series made from a {@link StationRecord} by `prepareSeries`; index 0 is `firstDay`. */
export interface DailySeries {
  readonly station: Station;
  readonly firstDay: number;
  readonly days: number;
  /** Daily rain [mm]. */
  readonly rainMm: Float64Array;
  /** Daily maximum air temperature [°C]. */
  readonly maxTempC: Float64Array;
  /** Daily minimum air temperature [°C]. */
  readonly minTempC: Float64Array;
  /** RAIN_OBSERVED, RAIN_SPREAD, RAIN_FILLED, RAIN_NEIGHBOUR or RAIN_GAUGE per day. */
  readonly rainOrigin: Uint8Array;
  /** TEMP_OBSERVED, TEMP_INTERPOLATED or TEMP_CALENDAR_MEAN per day (the worse of the two temperatures). */
  readonly tempOrigin: Uint8Array;
}
