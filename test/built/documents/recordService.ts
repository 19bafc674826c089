import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { gzipSync } from 'node:zlib';
import { isoDateOf, parseIsoDate } from '../../../src/calendar.ts';
import { inventedRecord } from '../../../src/demo/inventedRecord.ts';
import type { StationRecord } from '../../../src/schema/weather.ts';
import { inventoryLine, stationLine } from '../../source/service/fakeService.ts';

/** The station of the documents' commands. Its weather here is the demo's: invented. */
export const STATION = 'USC00241044';
const PLACE = { latitudeDeg: 45.662, longitudeDeg: -111.045 };

/** The record's three elements, with the codes that the files use. */
const elementsOf = ({ rainTenthsMm, maxTempTenthsC, minTempTenthsC }: StationRecord) =>
  ({ PRCP: rainTenthsMm, TMAX: maxTempTenthsC, TMIN: minTempTenthsC }) as const;

/** First year that the files hold where none is asked for: long enough for odds, short enough to be read in no time. */
const FIRST_YEAR = 1996;

/** The invented record in the by-station layout, and its line in the list of stations. */
export function recordFiles(firstYear = FIRST_YEAR): {
  byStation: string;
  stations: string;
  inventory: string;
} {
  const record = inventedRecord();
  const elements = Object.entries(elementsOf(record));
  const lines: string[] = [];
  for (const [code, values] of elements) {
    for (let day = parseIsoDate(`${firstYear}-01-01`) - record.firstDay; day < values.length; day++) {
      const date = isoDateOf(record.firstDay + day).replaceAll('-', '');
      lines.push(`${STATION},${date},${code},${values[day]},,,7,\n`);
    }
  }
  const { latitudeDeg, longitudeDeg } = PLACE;
  return {
    byStation: lines.join(''),
    stations: stationLine(STATION, latitudeDeg, longitudeDeg, 'MT', 'INVENTED FOR A TEST'),
    inventory: elements
      .map(([code]) => inventoryLine(STATION, latitudeDeg, longitudeDeg, code, firstYear, 2026))
      .join(''),
  };
}

/** A record service on a loopback address that knows this one station. */
export async function startRecordService(files = recordFiles()) {
  const texts: Record<string, Buffer | string> = {
    '/ghcnd-stations.txt': files.stations,
    '/ghcnd-inventory.txt': files.inventory,
    [`/by_station/${STATION}.csv.gz`]: gzipSync(files.byStation),
  };
  const server = createServer(({ url = '' }, response) => {
    const found = texts[url];
    response.writeHead(found === undefined ? 404 : 200, { etag: '"1"' }).end(found);
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close() {
      server.closeAllConnections();
      server.close();
    },
  };
}
