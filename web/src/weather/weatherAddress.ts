/** A place that stations are looked for around: a point, or a county by name. */
export type SoughtPlace =
  | { readonly kind: 'point'; readonly latitudeDeg: number; readonly longitudeDeg: number }
  | { readonly kind: 'county'; readonly county: string };

/** What the address of the weather records says. */
export interface WeatherAddress {
  /** The station that is looked at; null for all of them. */
  readonly station: string | null;
  readonly place: SoughtPlace | null;
  /** Height of the field. [m] */
  readonly elevationM: number | null;
}

const DEGREES = 2;

/** Reads the query of an address of the weather records. */
export function readWeatherAddress(search: string): WeatherAddress {
  const query = new URLSearchParams(search);
  const at = query.get('at');
  const county = query.get('county');
  const elevation = query.get('elevation');
  const [latitudeDeg, longitudeDeg] = (at ?? '').split(',').map(Number);
  const isPoint = at !== null && Math.abs(latitudeDeg) <= 90 && Math.abs(longitudeDeg) <= 180;
  return {
    station: query.get('station') || null,
    place: isPoint
      ? { kind: 'point', latitudeDeg, longitudeDeg }
      : county !== null && county.trim() !== ''
        ? { kind: 'county', county }
        : null,
    elevationM:
      elevation === null || elevation === '' || Number.isNaN(Number(elevation)) ? null : Number(elevation),
  };
}

/** The address of the weather records that says that. */
export function weatherAddress({
  station = null,
  place = null,
  elevationM = null,
}: Partial<WeatherAddress>): string {
  const query = new URLSearchParams();
  if (station !== null) query.set('station', station);
  if (place?.kind === 'county') query.set('county', place.county);
  if (place?.kind === 'point') query.set('at', pointText(place).replace(' ', ''));
  if (elevationM !== null) query.set('elevation', `${elevationM}`);
  const text = query.toString().replaceAll('%2C', ',');
  return `/weather${text && `?${text}`}`;
}

/** "45.68, -111.05" */
export const pointText = ({
  latitudeDeg,
  longitudeDeg,
}: {
  latitudeDeg: number;
  longitudeDeg: number;
}): string => `${latitudeDeg.toFixed(DEGREES)}, ${longitudeDeg.toFixed(DEGREES)}`;

/** "45.68° N, 111.05° W" */
export const sayPoint = (latitudeDeg: number, longitudeDeg: number): string =>
  `${Math.abs(latitudeDeg).toFixed(DEGREES)}° ${latitudeDeg < 0 ? 'S' : 'N'}, ${Math.abs(longitudeDeg).toFixed(DEGREES)}° ${longitudeDeg < 0 ? 'W' : 'E'}`;

/** The query by which the server looks for stations around a place. */
export function nearQuery(place: SoughtPlace, elevationM: number | null): string {
  const query = new URLSearchParams(
    place.kind === 'county'
      ? { county: place.county }
      : { lat: `${place.latitudeDeg}`, lon: `${place.longitudeDeg}` },
  );
  if (elevationM !== null) query.set('elevation', `${elevationM}`);
  return `/api/weather/near?${query}`;
}
