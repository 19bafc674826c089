import type { DuckDBConnection } from '@duckdb/node-api';
import type { Station } from '../schema/weather.ts';
import { inventedConflict } from './storeRefusals.ts';

/** Names and positions of ids, from station lists; ids that no list holds are left out. */
export type DescribeStations = (ids: readonly string[]) => Promise<ReadonlyMap<string, Station>>;

/** Steps within which two positions are one: half the last digit that the station list gives. [°, °, m] */
const SAME_PLACE = [0.00005, 0.00005, 0.05] as const;

/** Whether a station's stored position is known and a given one is another. */
export const placeDiffers = (...given: readonly [string, string, string]): string =>
  `(${['latitude_deg', 'longitude_deg', 'elevation_m']
    .map(
      (column, index) => `coalesce(abs(${column} - ${given[index]}::DOUBLE) > ${SAME_PLACE[index]}, false)`,
    )
    .join(' OR ')})`;

/**
 * Gives every incoming station its row and key; a known name or position is never lost. To be called inside a
 * transaction, after staging.
 * @param source name of the file, under which a change of position is noted
 * @throws {ConflictError} STATION_INVENTED where a station is stored as an invented record
 */
export async function giveKeys(
  connection: DuckDBConnection,
  describe: DescribeStations,
  source: string,
): Promise<void> {
  const invented = await connection.runAndReadAll(
    'SELECT id FROM incoming_station i JOIN station s USING (id) WHERE s.invented LIMIT 1',
  );
  if (invented.currentRowCount > 0) throw inventedConflict(invented.getRows()[0][0] as string, true);
  await connection.run('UPDATE incoming_station SET is_new = id NOT IN (SELECT id FROM station)');
  await connection.run(
    `INSERT INTO station
     SELECT (SELECT coalesce(max(station_key), 0) FROM station) + row_number() OVER (ORDER BY id), id, id,
       NULL, NULL, NULL, false, 0, 0, 0, 0
     FROM incoming_station WHERE is_new`,
  );
  await connection.run(
    `UPDATE incoming_station SET station_key = s.station_key FROM station s WHERE s.id = incoming_station.id`,
  );
  const ids = await connection.runAndReadAll('SELECT id FROM incoming_station ORDER BY id');
  const listed = await describe(ids.getRows().map(([id]) => id as string));
  if (listed.size > 0) await writePlaces(connection, [...listed.values()], source);
}

async function writePlaces(
  connection: DuckDBConnection,
  stations: readonly Station[],
  source: string,
): Promise<void> {
  await connection.run(
    `CREATE OR REPLACE TEMP TABLE place
       (id VARCHAR, name VARCHAR, latitude_deg DOUBLE, longitude_deg DOUBLE, elevation_m DOUBLE)`,
  );
  const appender = await connection.createAppender('place', 'main', 'temp');
  try {
    for (const { id, name, latitudeDeg, longitudeDeg, elevationM } of stations) {
      appender.appendVarchar(id);
      appender.appendVarchar(name);
      for (const number of [latitudeDeg, longitudeDeg, elevationM]) {
        if (number === null) appender.appendNull();
        else appender.appendDouble(number);
      }
      appender.endRow();
    }
    appender.flushSync();
  } finally {
    appender.closeSync();
  }
  await connection.run(
    `INSERT INTO former_place
     SELECT s.station_key, s.latitude_deg, s.longitude_deg, s.elevation_m, $1
     FROM station s JOIN (SELECT id, latitude_deg AS lat, longitude_deg AS lon, elevation_m AS height FROM place) p
       USING (id)
     WHERE ${placeDiffers('lat', 'lon', 'height')}`,
    [source],
  );
  await connection.run(
    `UPDATE station SET
       name = CASE WHEN p.name = p.id THEN station.name ELSE p.name END,
       latitude_deg = coalesce(p.latitude_deg, station.latitude_deg),
       longitude_deg = coalesce(p.longitude_deg, station.longitude_deg),
       elevation_m = coalesce(p.elevation_m, station.elevation_m)
     FROM place p WHERE p.id = station.id`,
  );
  await connection.run('DROP TABLE place');
}
