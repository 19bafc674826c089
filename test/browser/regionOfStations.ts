import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { WEATHER_FILE } from '../../src/store/weatherStore.ts';
import { generateStore } from '../bench/generatedStore.ts';

/** Columns from west to east, the wetter the further east, and rows from south to north. */
const COLUMNS = 20;
const ROWS = 5;

/** A store of invented stations spread over two states, dry in the west and wet in the east, for pictures. */
export async function inventRegion(folder: string): Promise<void> {
  await generateStore(folder, COLUMNS * ROWS, 25);
  const instance = await DuckDBInstance.create(join(folder, WEATHER_FILE));
  const connection = await instance.connect();
  await connection.run(
    `UPDATE station SET name = 'Invented ' || station_key,
       longitude_deg = -115.2 + (station_key - 1) % ${COLUMNS} * 0.93 + hash(station_key) % 60 / 100.0,
       latitude_deg = 45.2 + (station_key - 1) // ${COLUMNS} * 0.78 + hash(station_key + 7) % 50 / 100.0`,
  );
  await connection.run(
    `UPDATE daily SET rain_tenths_mm = (rain_tenths_mm * (0.12 + (station_key - 1) % ${COLUMNS} * 0.022
       + hash(station_key + 3) % 100 / 700.0))::INTEGER`,
  );
  connection.closeSync();
  instance.closeSync();
}
