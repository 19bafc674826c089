/** Builds a store of version 1, just as the program that had it did, with one station of two days. Never change it. */
export const VERSION_ONE: readonly string[] = [
  'CREATE TABLE schema_version (version INTEGER NOT NULL)',
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
  'INSERT INTO schema_version VALUES (1)',
  "INSERT INTO station VALUES (1, 'TST00000001', 'NOWHERE', 45.5, -110.25, 1320, false, 10000, 10001, 2, 1)",
  "INSERT INTO reading VALUES (1, 1, 'small.dly', 4, 1, 2, 3, 4, 5)",
  'INSERT INTO daily VALUES (1, 10000, 12, 100, -20, NULL, NULL), (1, 10001, 0, NULL, NULL, NULL, NULL)',
];
