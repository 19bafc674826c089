import type { RegionRow } from '../api/contract.ts';
import { MAP_BOX, onMap } from '../weather/map/albers.ts';
import { type Mark, type MarkShape, type Measure, markOf } from './measures.ts';

/** A station where it stands on the map. [px of the map's frame] */
export interface PlacedStation {
  readonly row: RegionRow;
  readonly x: number;
  readonly y: number;
}

/** All marks of one kind as one path, so that thousands of stations draw as a few. */
export interface MarkGroup {
  readonly key: string;
  readonly shape: MarkShape;
  readonly fill: string;
  readonly path: string;
}

export interface MapBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Radius of the smallest and of the largest mark on screen. [px] */
const RADIUS_PX = [4, 10] as const;
/** Room around the stations, and the least width that is looked at. [px of the map's frame] */
const AROUND = 45;
const LEAST_WIDTH = 220;
/** Height over width of what is looked at. */
const FLATTEST = 0.5;
const STEEPEST = 0.9;

/** The stations that have a place on the map, and how many have none. */
export function placeStations(rows: readonly RegionRow[]): { placed: PlacedStation[]; off: number } {
  const placed = rows.flatMap((row) => {
    const { latitudeDeg, longitudeDeg } = row;
    const at = latitudeDeg === null || longitudeDeg === null ? null : onMap(latitudeDeg, longitudeDeg);
    return at === null ? [] : [{ row, x: at[0], y: at[1] }];
  });
  return { placed, off: rows.length - placed.length };
}

/** The part of the map that holds all stations; the whole of it where there is none. */
export function boxAround(placed: readonly PlacedStation[]): MapBox {
  if (placed.length === 0) return MAP_BOX;
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of placed) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  let width = Math.max(LEAST_WIDTH, right - left + 2 * AROUND);
  const height = Math.max(width * FLATTEST, bottom - top + 2 * AROUND);
  width = Math.max(width, height / STEEPEST);
  return { left: (left + right - width) / 2, top: (top + bottom - height) / 2, width, height };
}

/** How much smaller marks become where many stations share the map. */
const crowding = (count: number): number =>
  count <= 80 ? 1 : count <= 500 ? 0.7 : count <= 3000 ? 0.5 : 0.35;

/**
 * Marks of all stations, grouped into paths, those of higher odds last, and the arcs that tell how complete each record is.
 * @param perPx frame units in a pixel of the screen
 */
export function mapMarks(
  placed: readonly PlacedStation[],
  measure: Measure,
  oddsLimit: number,
  perPx: number,
): { groups: MarkGroup[]; arcs: string } {
  const unit = perPx * crowding(placed.length);
  const groups = new Map<string, { mark: Mark; path: string[] }>();
  const arcs: string[] = [];
  for (const { row, x, y } of placed) {
    const mark = markOf(row, measure, oddsLimit);
    const radius = (RADIUS_PX[0] + (RADIUS_PX[1] - RADIUS_PX[0]) * mark.size) * unit;
    const key = `${mark.shape} ${mark.fill}`;
    const group = groups.get(key) ?? { mark, path: [] };
    group.path.push(outline(mark.shape, x, y, radius));
    groups.set(key, group);
    arcs.push(arc(x, y, radius + 3.5 * unit, row.rainPercent / 100));
  }
  return {
    groups: [...groups]
      .sort(([, a], [, b]) => a.mark.size - b.mark.size)
      .map(([key, { mark, path }]) => ({ key, shape: mark.shape, fill: mark.fill, path: path.join('') })),
    arcs: arcs.join(''),
  };
}

/** The station nearest to a point, within reach. [px of the map's frame] */
export function nearestTo(
  placed: readonly PlacedStation[],
  x: number,
  y: number,
  reach: number,
): PlacedStation | null {
  let [found, least]: [PlacedStation | null, number] = [null, reach];
  for (const one of placed) {
    const away = Math.hypot(one.x - x, one.y - y);
    if (away < least) [found, least] = [one, away];
  }
  return found;
}

const n = (value: number): string => value.toFixed(1);
const lines = (points: readonly (readonly [number, number])[]): string =>
  `M${points.map(([x, y]) => `${n(x)},${n(y)}`).join('L')}Z`;

/** A mark of about the same area in every shape. */
export function outline(shape: MarkShape, x: number, y: number, r: number): string {
  if (shape === 'circle' || shape === 'ring') {
    return `M${n(x - r)},${n(y)}a${n(r)},${n(r)} 0 1 0 ${n(2 * r)},0a${n(r)},${n(r)} 0 1 0 ${n(-2 * r)},0Z`;
  }
  if (shape === 'cross')
    return `M${n(x - r)},${n(y - r)}l${n(2 * r)},${n(2 * r)}m0,${n(-2 * r)}l${n(-2 * r)},${n(2 * r)}`;
  if (shape === 'triangle')
    return lines([
      [x, y - 1.35 * r],
      [x + 1.2 * r, y + 0.85 * r],
      [x - 1.2 * r, y + 0.85 * r],
    ]);
  if (shape === 'diamond')
    return lines([
      [x, y - 1.3 * r],
      [x + 1.3 * r, y],
      [x, y + 1.3 * r],
      [x - 1.3 * r, y],
    ]);
  const half = 0.95 * r;
  return lines([
    [x - half, y - half],
    [x + half, y - half],
    [x + half, y + half],
    [x - half, y + half],
  ]);
}

/** An arc from the top on, as long as the share of days with rain. */
function arc(x: number, y: number, r: number, share: number): string {
  const angle = 2 * Math.PI * Math.min(0.9999, Math.max(0, share));
  const [ex, ey] = [x + r * Math.sin(angle), y - r * Math.cos(angle)];
  return `M${n(x)},${n(y - r)}A${n(r)},${n(r)} 0 ${share > 0.5 ? 1 : 0} 1 ${n(ex)},${n(ey)}`;
}
