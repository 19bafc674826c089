import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { MAP_BOX, onMap, placeAt } from '../../web/src/weather/map/albers.ts';
import { outlinesOf, type Topology } from '../../web/src/weather/map/outlines.ts';

const topology: Topology = JSON.parse(
  readFileSync(createRequire(import.meta.url).resolve('us-atlas/states-albers-10m.json'), 'utf8'),
);
/** All points of the outlines, as the package has projected them. */
const points = (() => {
  const { scale, translate } = topology.transform;
  return topology.arcs.flatMap((arc) => {
    let [x, y] = [0, 0];
    return arc.map(([dx, dy]) => {
      x += dx;
      y += dy;
      return [x * scale[0] + translate[0], y * scale[1] + translate[1]] as const;
    });
  });
})();
const nearest = ([x, y]: readonly [number, number]) =>
  Math.min(...points.map(([px, py]) => Math.hypot(px - x, py - y)));

describe('the projection of the map', () => {
  // Corners of state borders, as statute puts them; they must meet the package's own projected corners.
  it.each([
    ['Four Corners', 36.999, -109.045],
    ['Colorado, Nebraska and Kansas', 40.003, -102.052],
    ['Utah, Wyoming and Idaho', 42.0, -111.047],
    ['Alaska and Canada at the Arctic', 69.645, -141.003],
  ])('meets the outlines at the corner of %s', (_, latitude, longitude) => {
    const at = onMap(latitude, longitude);
    expect(at).not.toBeNull();
    if (at) expect(nearest(at)).toBeLessThan(1);
  });

  it('is undone by its inverse: lower states, prairies, Alaska, Hawaii', () => {
    for (const [latitude, longitude] of [
      [45.66, -111.05],
      [25.8, -80.2],
      [52.1, -106.6],
      [57.05, -135.3],
      [64.8, -147.7],
      [21.3, -157.9],
    ]) {
      const at = onMap(latitude, longitude);
      expect(at).not.toBeNull();
      if (!at) continue;
      const { latitudeDeg, longitudeDeg } = placeAt(at);
      expect(latitudeDeg).toBeCloseTo(latitude, 6);
      expect(longitudeDeg).toBeCloseTo(longitude, 6);
    }
  });

  it('leaves out what is not on it, and gives every point of it a place', () => {
    expect(onMap(50.09, 14.4)).toBeNull();
    const { left, top, width, height } = MAP_BOX;
    for (const [x, y] of [
      [left, top],
      [left + width, top + height],
      [left, top + height],
    ] as const) {
      expect(Number.isFinite(placeAt([x, y]).latitudeDeg)).toBe(true);
    }
  });
});

describe('outlines', () => {
  it('draw every line once and the land as closed rings', () => {
    const { borders, land } = outlinesOf(topology);
    expect(borders.match(/M/g)?.length).toBe(topology.arcs.length);
    expect(land.match(/M/g)?.length).toBe(land.match(/Z/g)?.length);
    expect(borders + land).not.toMatch(/NaN|undefined/);
  });

  it('walk a line backwards where its number is below zero', () => {
    const { land } = outlinesOf({
      transform: { scale: [1, 1], translate: [0, 0] },
      arcs: [
        [
          [0, 0],
          [4, 0],
        ],
        [
          [0, 0],
          [0, 3],
          [4, -3],
        ],
      ],
      objects: { nation: { geometries: [{ arcs: [[[0, -2]]] }] } },
    });
    expect(land).toBe('M0.0,0.0L4.0,0.0L0.0,3.0L0.0,0.0Z');
  });
});
