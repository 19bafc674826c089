/**
 * Steps that build the weather store, oldest first; the file's version is the number of steps done.
 * Never change a step that has been released: add one.
 *
 * Tables: `station` one row per station with the extent of its record; `reading` one row per import that still has a
 * part in a station's record, `notes` a JSON list of sentences; `former_place` a row per position that a later import
 * gave otherwise; `imported_file` the state in which a file was last
 * imported whole; `upkeep` what has come about since the last compaction; `daily` one row per day with any value, in
 * tenths, NULL where absent, a station's days together and in order as far as imports allow. `daily` has no key of its
 * own: its order does the work of one, and a key would be checked against rows deleted in the same transaction.
 */
export const MIGRATIONS: readonly (readonly string[])[] = [
  [
    `CREATE TABLE station (
       station_key INTEGER PRIMARY KEY,
       id VARCHAR NOT NULL UNIQUE,
       name VARCHAR NOT NULL,
       latitude_deg DOUBLE,
       longitude_deg DOUBLE,
       elevation_m DOUBLE,
       invented BOOLEAN NOT NULL,
       first_day INTEGER NOT NULL,
       last_day INTEGER NOT NULL,
       rain_days INTEGER NOT NULL,
       temperature_days INTEGER NOT NULL
     )`,
    `CREATE TABLE reading (
       station_key INTEGER NOT NULL,
       import_number INTEGER NOT NULL,
       source VARCHAR NOT NULL,
       values_read INTEGER NOT NULL,
       dropped_by_flag INTEGER NOT NULL,
       implausible INTEGER NOT NULL,
       presumed_zero INTEGER NOT NULL,
       duplicated INTEGER NOT NULL,
       ignored_elements INTEGER NOT NULL
     )`,
    `CREATE TABLE daily (
       station_key INTEGER NOT NULL,
       day_number INTEGER NOT NULL,
       rain_tenths_mm INTEGER,
       max_temp_tenths_c INTEGER,
       min_temp_tenths_c INTEGER,
       multi_day_rain_tenths_mm INTEGER,
       multi_day_count INTEGER
     )`,
  ],
  [
    "ALTER TABLE reading ADD COLUMN notes VARCHAR DEFAULT '[]'",
    `CREATE TABLE imported_file (
       name VARCHAR NOT NULL,
       bytes BIGINT NOT NULL,
       modified_ms BIGINT NOT NULL
     )`,
    'CREATE TABLE upkeep (scattered_files INTEGER NOT NULL)',
    'INSERT INTO upkeep VALUES (0)',
  ],
  [
    'ALTER TABLE daily ADD COLUMN rain_time_hhmm INTEGER',
    `CREATE TABLE former_place (
       station_key INTEGER NOT NULL,
       latitude_deg DOUBLE,
       longitude_deg DOUBLE,
       elevation_m DOUBLE,
       replaced_by VARCHAR NOT NULL
     )`,
    // Files that were imported before hold hours of reading that the store does not: none passes for imported.
    'DELETE FROM imported_file',
  ],
];

/** Version of the weather store that this program reads and writes. */
export const WEATHER_VERSION = MIGRATIONS.length;

/** The columns of `daily` that hold values, in the order of a record's columns. */
export const VALUE_COLUMNS = [
  'rain_tenths_mm',
  'max_temp_tenths_c',
  'min_temp_tenths_c',
  'multi_day_rain_tenths_mm',
  'multi_day_count',
] as const;

/** Time of day at which the day's rain was read, HHMM; goes with the rain value and is no value of its own. */
export const RAIN_TIME = 'rain_time_hhmm';

/** All columns of `daily` behind station and day. */
export const DAY_COLUMNS = [...VALUE_COLUMNS, RAIN_TIME] as const;
