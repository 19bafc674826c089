import type { RegionEvent, RegionRow } from '../schema/region.ts';

type Start = Extract<RegionEvent, { step: 'start' }>;

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

/**
 * A region as a GeoJSON feature collection. `about`, a member that GeoJSON leaves to whoever writes it, says what was
 * asked, with which cautions it is to be read and by which version it was made.
 */
export function regionCollection(start: Start, rows: readonly RegionRow[]): object {
  const { residual, crop, question, cautions, model } = start;
  return {
    type: 'FeatureCollection',
    about: { residual, crop, question, cautions, model },
    features: rows.map(regionFeature),
  };
}
