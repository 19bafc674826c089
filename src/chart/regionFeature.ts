import type { RegionRow } from '../schema/region.ts';

/** A station as a GeoJSON feature; without geometry where its place is not known. */
export function regionFeature(row: RegionRow): object {
  const { longitudeDeg, latitudeDeg, elevationM, ...properties } = row;
  const height = elevationM === null ? [] : [elevationM];
  return {
    type: 'Feature',
    id: row.station,
    geometry:
      longitudeDeg === null || latitudeDeg === null
        ? null
        : { type: 'Point', coordinates: [longitudeDeg, latitudeDeg, ...height] },
    properties,
  };
}
