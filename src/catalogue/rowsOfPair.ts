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

/** Every row of an active that speaks of a crop, in the order of the file. */
export function rowsOfPair(catalogue: Catalogue, active: Active, crop: Crop): ReachingRow[] {
  const reaches = reachesOf(catalogue, crop);
  return (rowsByActive(catalogue).get(active.isoName) ?? []).flatMap((row) => {
    const reach = reaches.get(row.crop);
    return reach === undefined ? [] : [{ row, reach }];
  });
}

const byActive = new WeakMap<Catalogue['intervals'], ReadonlyMap<string, IntervalRow[]>>();

/** The rows of each active; a catalogue is sorted once and never changes. */
function rowsByActive({ intervals }: Catalogue): ReadonlyMap<string, IntervalRow[]> {
  const found = byActive.get(intervals) ?? groupBy(intervals);
  byActive.set(intervals, found);
  return found;
}

function groupBy(intervals: Catalogue['intervals']): ReadonlyMap<string, IntervalRow[]> {
  const rows = new Map<string, IntervalRow[]>();
  for (const row of intervals) {
    const own = rows.get(row.active) ?? [];
    rows.set(row.active, own);
    own.push(row);
  }
  return rows;
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
