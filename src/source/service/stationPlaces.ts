import { nextLineAt } from '../lineBytes.ts';

// Of the fixed-width station list: id 1-11, latitude 13-20, longitude 22-30, state or province 39-40.
const SHORTEST_LINE = 37;

/** Where a station lies. */
export interface StationPlace {
  readonly id: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  /** State or province code; empty outside the United States and Canada. */
  readonly state: string;
}

/** Places of all stations of the list, made one at a time; lines too short to hold one are passed over. */
export function* stationPlaces(list: Buffer): Generator<StationPlace> {
  for (let at = 0, next = 0; at < list.length; at = next) {
    next = nextLineAt(list, at);
    const line = list.toString('latin1', at, next);
    if (line.length < SHORTEST_LINE) continue;
    yield {
      id: line.slice(0, 11),
      latitudeDeg: Number(line.slice(12, 20)),
      longitudeDeg: Number(line.slice(21, 30)),
      state: line.slice(38, 40).trim(),
    };
  }
}
