import type { Station } from '../schema/weather.ts';
import { damagedFile } from './damagedFile.ts';

/** Name of the station list, plain or gzip-packed. */
export const isStationList = (fileName: string): boolean => /^ghcnd-stations\.txt(\.gz)?$/i.test(fileName);

// id 1-11, latitude 13-20, longitude 22-30, elevation 32-37, state 39-40, name 42-71; -999.9 = unknown.
const ID_LENGTH = 11;
const SHORTEST_LINE = 37;
const UNKNOWN = -999.9;
const LINE_FEED = 10;

/**
 * Stations of the fixed-width station list, by id.
 * @param wanted only these ids; every other line is passed over
 * @throws {SourceFailedError} FILE_DAMAGED, naming file, line and column
 */
export function parseStationList(
  bytes: Buffer,
  fileName: string,
  wanted?: ReadonlySet<string>,
): Map<string, Station> {
  const stations = new Map<string, Station>();
  for (let at = 0, line = 1, next = 0; at < bytes.length; at = next, line++) {
    const lineFeed = bytes.indexOf(LINE_FEED, at);
    next = lineFeed < 0 ? bytes.length : lineFeed + 1;
    const id = bytes.toString('latin1', at, Math.min(at + ID_LENGTH, next));
    if (wanted !== undefined && !wanted.has(id)) continue;
    const text = bytes.toString('latin1', at, next).trimEnd();
    if (text !== '') stations.set(id, stationIn(text, fileName, line));
  }
  return stations;
}

function stationIn(text: string, fileName: string, line: number): Station {
  if (text.length < SHORTEST_LINE) {
    throw damagedFile(
      fileName,
      line,
      text.length + 1,
      `the line ends after ${text.length} characters; id, position and elevation take ${SHORTEST_LINE}`,
    );
  }
  const numberIn = (from: number, to: number, most: number, what: string): number | null => {
    const field = text.slice(from, to);
    const value = Number(field);
    if (value === UNKNOWN) return null;
    if (field.trim() === '' || !(Math.abs(value) <= most)) {
      throw damagedFile(fileName, line, from + 1, `"${field}" is no ${what}`);
    }
    return value;
  };
  const id = text.slice(0, ID_LENGTH);
  return {
    id,
    name: text.slice(41, 71).trim() || id,
    latitudeDeg: numberIn(12, 20, 90, 'latitude from -90 to 90'),
    longitudeDeg: numberIn(21, 30, 180, 'longitude from -180 to 180'),
    elevationM: numberIn(31, 37, 9000, 'elevation in metres'),
    invented: false,
  };
}
