/** A file of the service and where it may lie, the likeliest place first; taken from the service's folder address. */
export interface ServiceFile {
  /** What messages call it: a station's id, a year or a list's name. */
  readonly title: string;
  readonly places: readonly string[];
}

// The archive keeps packed CSV in by_station/ and by_year/; its mirror in object storage has a folder csv.gz/ above them.

/** One station's whole record; the fixed-width file where there is no CSV. */
export const stationFile = (id: string): ServiceFile => ({
  title: id,
  places: [`by_station/${id}.csv.gz`, `csv.gz/by_station/${id}.csv.gz`, `all/${id}.dly`],
});

/** One year of every station. */
export const yearFile = (year: number): ServiceFile => ({
  title: String(year),
  places: [`by_year/${year}.csv.gz`, `csv.gz/by_year/${year}.csv.gz`],
});

export const STATION_LIST_FILE: ServiceFile = { title: 'ghcnd-stations.txt', places: ['ghcnd-stations.txt'] };
export const INVENTORY_FILE: ServiceFile = { title: 'ghcnd-inventory.txt', places: ['ghcnd-inventory.txt'] };

/** Name under which the file of a place is kept. */
export const nameOfPlace = (place: string): string => place.slice(place.lastIndexOf('/') + 1);
