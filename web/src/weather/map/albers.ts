/** A point of the map. [px of its 975 x 610 frame] */
export type MapPoint = readonly [x: number, y: number];

/** One equal-area conic frame of the map: its projection, and the rectangle that it fills. */
interface Frame {
  /** Meridian that stands upright, and the centre along it. [rad] */
  readonly meridian: number;
  readonly parallels: readonly [number, number];
  readonly centre: readonly [number, number];
  readonly scale: number;
  readonly at: MapPoint;
  readonly box: readonly [left: number, top: number, right: number, bottom: number];
}

const RAD = Math.PI / 180;
const SCALE = 1300;
const [MIDDLE_X, MIDDLE_Y] = [487.5, 305];
const place = (x: number, y: number): MapPoint => [MIDDLE_X + x * SCALE, MIDDLE_Y + y * SCALE];

/** Room above the lower states, where stations of the Canadian prairies lie. [px] */
export const MAP_TOP = -80;
export const MAP_BOX = { left: -60, top: MAP_TOP, width: 1040, height: 705 } as const;

/** The frames of the us-atlas outlines: Alaska and Hawaii in boxes of their own, then everything else. */
const FRAMES: readonly Frame[] = [
  {
    meridian: -154 * RAD,
    parallels: [55 * RAD, 65 * RAD],
    centre: [-2 * RAD, 58.5 * RAD],
    scale: SCALE * 0.35,
    at: place(-0.307, 0.201),
    box: [...place(-0.425, 0.12), ...place(-0.214, 0.234)],
  },
  {
    meridian: -157 * RAD,
    parallels: [8 * RAD, 18 * RAD],
    centre: [-3 * RAD, 19.9 * RAD],
    scale: SCALE,
    at: place(-0.205, 0.212),
    box: [...place(-0.214, 0.166), ...place(-0.115, 0.234)],
  },
  {
    meridian: -96 * RAD,
    parallels: [29.5 * RAD, 45.5 * RAD],
    centre: [-0.6 * RAD, 38.7 * RAD],
    scale: SCALE,
    at: [MIDDLE_X, MIDDLE_Y],
    box: [MAP_BOX.left, MAP_BOX.top, MAP_BOX.left + MAP_BOX.width, MAP_BOX.top + MAP_BOX.height],
  },
];

/** Places of the outlines whose stations are shown in their own boxes. [°] */
const isAlaska = (latitudeDeg: number, longitudeDeg: number) => latitudeDeg > 50 && longitudeDeg < -129;
const isHawaii = (latitudeDeg: number, longitudeDeg: number) => latitudeDeg < 25 && longitudeDeg < -150;

/** Meridians and parallels of the main frame, every five degrees, as one path. */
export function graticule(): string {
  const lines: MapPoint[][] = [];
  const steps = (from: number, to: number, step: number) =>
    Array.from({ length: Math.round((to - from) / step) + 1 }, (_, index) => from + index * step);
  for (const longitude of steps(-140, -50, 5)) {
    lines.push(steps(20, 60, 2).map((latitude) => forward(FRAMES[2], latitude * RAD, longitude * RAD)));
  }
  for (const latitude of steps(20, 60, 5)) {
    lines.push(steps(-140, -50, 2).map((longitude) => forward(FRAMES[2], latitude * RAD, longitude * RAD)));
  }
  return lines
    .map((line) => `M${line.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join('L')}`)
    .join('');
}

/** Where a place lies on the map; null where it is not on it. */
export function onMap(latitudeDeg: number, longitudeDeg: number): MapPoint | null {
  const frame = FRAMES[isAlaska(latitudeDeg, longitudeDeg) ? 0 : isHawaii(latitudeDeg, longitudeDeg) ? 1 : 2];
  const [x, y] = forward(frame, latitudeDeg * RAD, longitudeDeg * RAD);
  const [left, top, right, bottom] = frame.box;
  return x >= left && x <= right && y >= top && y <= bottom ? [x, y] : null;
}

/** Which place a point of the map stands for; the inverse of {@link onMap}. [°] */
export function placeAt([x, y]: MapPoint): { latitudeDeg: number; longitudeDeg: number } {
  for (const frame of FRAMES) {
    const [left, top, right, bottom] = frame.box;
    if (x < left || x > right || y < top || y > bottom) continue;
    const [latitude, longitude] = backward(frame, x, y);
    const place = { latitudeDeg: latitude / RAD, longitudeDeg: longitude / RAD };
    const isOwn =
      frame === FRAMES[0]
        ? isAlaska(place.latitudeDeg, place.longitudeDeg)
        : frame === FRAMES[1]
          ? isHawaii(place.latitudeDeg, place.longitudeDeg)
          : true;
    if (isOwn) return place;
  }
  const [latitude, longitude] = backward(FRAMES[2], x, y);
  return { latitudeDeg: latitude / RAD, longitudeDeg: longitude / RAD };
}

/** Constants of the equal-area conic: cone constant, radius scale. */
function cone({ parallels: [south, north] }: Frame) {
  const n = (Math.sin(south) + Math.sin(north)) / 2;
  const c = 1 + Math.sin(south) * (2 * n - Math.sin(south));
  return { n, c, r0: Math.sqrt(c) / n };
}

function raw(frame: Frame, latitude: number, longitude: number): MapPoint {
  const { n, c, r0 } = cone(frame);
  const r = Math.sqrt(c - 2 * n * Math.sin(latitude)) / n;
  return [r * Math.sin(longitude * n), r0 - r * Math.cos(longitude * n)];
}

function forward(frame: Frame, latitude: number, longitude: number): MapPoint {
  const [cx, cy] = raw(frame, frame.centre[1], frame.centre[0]);
  let turned = longitude - frame.meridian;
  if (turned > Math.PI) turned -= 2 * Math.PI;
  const [x, y] = raw(frame, latitude, turned);
  return [frame.at[0] + (x - cx) * frame.scale, frame.at[1] - (y - cy) * frame.scale];
}

function backward(frame: Frame, px: number, py: number): [latitude: number, longitude: number] {
  const { n, c, r0 } = cone(frame);
  const [cx, cy] = raw(frame, frame.centre[1], frame.centre[0]);
  const x = (px - frame.at[0]) / frame.scale + cx;
  const y = r0 - ((frame.at[1] - py) / frame.scale + cy);
  const r2 = x * x + y * y;
  const longitude = Math.atan2(x, y) / n + frame.meridian;
  return [Math.asin(Math.max(-1, Math.min(1, (c - r2 * n * n) / (2 * n)))), longitude];
}
