import { createFileReader, prepareSeries, type StationClimate, stationClimate } from '../../../src/index.ts';
import { assumptions } from '../seasonOf.ts';
import { normanClimate } from './normanRecord.ts';
import { recordOutOf } from './oneStation.ts';

/** Real records that stand in for the sites of the trials; none of them is a trial's own. */
const STATIONS = {
  bozeman: ['derived', 'USC00241044', 45.662, 'Bozeman, Montana (475 mm a year)'],
  grandJunction: ['derived', 'USW00023066', 39.134, 'Grand Junction, Colorado (222 mm)'],
  portal: ['derived', 'USC00026716', 31.883, 'Portal, Arizona (506 mm)'],
  saskatoon: ['derived', 'X00SA068135', 52.15, 'Saskatoon, Saskatchewan (446 mm)'],
  ottawa: ['ghcnd', 'CA006105976', 45.383, 'Ottawa, Ontario (880 mm)'],
  greer: ['ghcnd', 'USW00003870', 34.883, 'Greer, South Carolina (1247 mm)'],
  milwaukee: ['bench/ghcn-dev-long.csv.gz', 'USW00014839', 42.955, 'Milwaukee, Wisconsin'],
  seattle: ['bench/ghcn-dev-long.csv.gz', 'USW00024233', 47.445, 'Seattle, Washington (985 mm, dry summers)'],
} as const;

export type Place = keyof typeof STATIONS | 'norman';

/** Name of a stand-in place, for the assumptions of a case. */
export const placeName = (place: Place): string =>
  place === 'norman' ? 'Norman, Oklahoma (893 mm)' : STATIONS[place][3];

/** Latitude of a stand-in place. [°] */
export const latitudeOf = (place: Exclude<Place, 'norman'>): number => STATIONS[place][2];

export interface Places {
  climate(place: Place): Promise<StationClimate>;
}

/** Climates of the stand-in records under a folder, each read once. */
export function placesIn(folder: string): Places {
  const read = new Map<Place, Promise<StationClimate>>();
  return {
    climate(place) {
      const known = read.get(place) ?? open(folder, place);
      read.set(place, known);
      return known;
    },
  };
}

async function open(folder: string, place: Place): Promise<StationClimate> {
  if (place === 'norman') return normanClimate(folder);
  const [path, station, latitudeDeg] = STATIONS[place];
  const file = `${folder}/${path}`;
  const record = path.startsWith('bench/')
    ? await recordOutOf(file, station)
    : await createFileReader([file], { station }).record(station);
  return stationClimate(prepareSeries(record), latitudeDeg, assumptions);
}
