/** Longitude and latitude. [°] */
type Position = readonly number[];
/** A polygon as GeoJSON gives it: outer ring, then holes. */
type Polygon = readonly (readonly Position[])[];

/**
 * Middle of an area: the centroid of its polygons, holes taken off. [°]
 *
 * Equation   area-weighted mean of the shoelace centroids, longitudes shrunk by cos φ0 of the first corner
 * Symbols    φ0 = latitude of the first corner; longitudes counted from the first corner, so that areas across
 *            the date line hold together
 * Valid      areas the size of a county; one that its outline has drawn together to a line has the mean of its corners
 * Source     centroid of a polygon, textbook
 * Checked    test/app/findCounty.test.ts
 */
export function areaMiddle(polygons: readonly Polygon[]): { latitudeDeg: number; longitudeDeg: number } {
  const [longitude0, latitude0] = polygons[0][0][0];
  const shrink = Math.cos((latitude0 * Math.PI) / 180);
  const x = (position: Position) => wrapped(position[0] - longitude0) * shrink;
  const y = (position: Position) => position[1] - latitude0;
  let area = 0;
  let sumX = 0;
  let sumY = 0;
  for (const polygon of polygons) {
    for (const [index, ring] of polygon.entries()) {
      const own = ringMoments(ring.map((position) => [x(position), y(position)]));
      // Whichever way the rings turn, an outer ring adds and a hole takes away.
      const sign = Math.sign(own.area) * (index === 0 ? 1 : -1);
      area += sign * own.area;
      sumX += sign * own.momentX;
      sumY += sign * own.momentY;
    }
  }
  if (area === 0) return middleOfCorners(polygons[0][0]);
  return {
    latitudeDeg: latitude0 + sumY / area,
    longitudeDeg: wrapped(longitude0 + sumX / area / shrink),
  };
}

function middleOfCorners(ring: Polygon[number]): { latitudeDeg: number; longitudeDeg: number } {
  const [longitude0] = ring[0];
  const corners = ring.slice(0, -1);
  const meanOf = (of: (position: Position) => number) =>
    corners.reduce((sum, position) => sum + of(position), 0) / corners.length;
  return {
    latitudeDeg: meanOf(([, latitude]) => latitude),
    longitudeDeg: wrapped(longitude0 + meanOf(([longitude]) => wrapped(longitude - longitude0))),
  };
}

function ringMoments(ring: readonly Position[]): { area: number; momentX: number; momentY: number } {
  let area = 0;
  let momentX = 0;
  let momentY = 0;
  for (let i = 0; i + 1 < ring.length; i++) {
    const [ax, ay] = ring[i];
    const [bx, by] = ring[i + 1];
    const cross = (ax * by - bx * ay) / 2;
    area += cross;
    momentX += (cross * (ax + bx)) / 3;
    momentY += (cross * (ay + by)) / 3;
  }
  return { area, momentX, momentY };
}

/** A longitude from −180 up to 180. */
const wrapped = (degrees: number): number => ((((degrees + 180) % 360) + 360) % 360) - 180;
