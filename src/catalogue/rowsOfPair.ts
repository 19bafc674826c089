import type { Active, Catalogue, Crop, IntervalRow } from '../schema/catalogue.ts';

/**
 * How a row comes to speak of a crop: it names it, or a crop it is a kind of or that is a kind of it; it names a group
 * the crop belongs to; or it is the line for crops that the label does not name.
 */
export type RowReach = 'crop' | 'group' | 'unnamed crops';

export interface ReachingRow {
  readonly row: IntervalRow;
  readonly reach: RowReach;
}

type PairRows = WeakMap<Active, WeakMap<Crop, readonly ReachingRow[]>>;
const known = new WeakMap<Catalogue, PairRows>();

/** Every row of an active that speaks of a crop, in the order of the file. A catalogue never changes: looked for once. */
export function rowsOfPair(catalogue: Catalogue, active: Active, crop: Crop): readonly ReachingRow[] {
  const ofCatalogue: PairRows = known.get(catalogue) ?? new WeakMap();
  known.set(catalogue, ofCatalogue);
  const ofActive = ofCatalogue.get(active) ?? new WeakMap<Crop, readonly ReachingRow[]>();
  ofCatalogue.set(active, ofActive);
  const rows = ofActive.get(crop) ?? lookFor(catalogue, active, crop);
  ofActive.set(crop, rows);
  return rows;
}

function lookFor(catalogue: Catalogue, active: Active, crop: Crop): ReachingRow[] {
  const reaches = reachesOf(catalogue, crop);
  return catalogue.intervals.flatMap((row) => {
    const reach = row.active === active.isoName ? reaches.get(row.crop) : undefined;
    return reach === undefined ? [] : [{ row, reach }];
  });
}

function reachesOf({ crops, cropGroups }: Catalogue, crop: Crop): Map<string, RowReach> {
  const groups = new Map(cropGroups.map(({ name, reach }) => [name, reach]));
  const reaches = new Map<string, RowReach>([[crop.name, 'crop']]);
  for (const wider of crop.partOf) reaches.set(wider, groups.has(wider) ? 'group' : 'crop');
  for (const { name, partOf } of crops) if (partOf.includes(crop.name)) reaches.set(name, 'crop');
  for (const [name, reach] of groups) {
    if (reach === 'every crop') reaches.set(name, 'group');
    if (reach === 'crops without a row') reaches.set(name, 'unnamed crops');
  }
  return reaches;
}
