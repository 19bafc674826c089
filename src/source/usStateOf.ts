import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import topojson from 'topojson-client';
import { SourceFailedError } from '../errors.ts';
import { STATE_LETTERS } from '../schema/usStates.ts';

const SHAPES = 'us-atlas/states-10m.json';

type Ring = readonly (readonly [number, number])[];

/** One piece of land of a state with the box around it. */
interface Piece {
  readonly letters: string;
  readonly rings: readonly Ring[];
  readonly box: readonly [west: number, south: number, east: number, north: number];
}

/**
 * Tells the US state that a place lies in, by its letters, from the outlines of the installed `us-atlas` package; null
 * outside of them all. The outlines are simplified: a place within a kilometre or two of a border may be off.
 * @throws {SourceFailedError} SHAPES_MISSING
 */
export async function readUsStates(): Promise<(latitudeDeg: number, longitudeDeg: number) => string | null> {
  const pieces = await readPieces();
  return (latitudeDeg, longitudeDeg) =>
    pieces.find(
      ({ rings, box: [west, south, east, north] }) =>
        longitudeDeg >= west &&
        longitudeDeg <= east &&
        latitudeDeg >= south &&
        latitudeDeg <= north &&
        isInside(rings, longitudeDeg, latitudeDeg),
    )?.letters ?? null;
}

async function readPieces(): Promise<Piece[]> {
  try {
    const topology = JSON.parse(await readFile(createRequire(import.meta.url).resolve(SHAPES), 'utf8'));
    return topojson.feature(topology, topology.objects.states).features.flatMap(({ id, geometry }) => {
      const letters = STATE_LETTERS.get(String(id).padStart(2, '0'));
      if (letters === undefined) return [];
      const polygons = (geometry.type === 'Polygon'
        ? [geometry.coordinates]
        : geometry.coordinates) as unknown as Ring[][];
      return polygons.map((rings): Piece => {
        const east = rings[0].map(([lon]) => lon);
        const north = rings[0].map(([, lat]) => lat);
        return {
          letters,
          rings,
          box: [Math.min(...east), Math.min(...north), Math.max(...east), Math.max(...north)],
        };
      });
    });
  } catch (cause) {
    throw new SourceFailedError(
      'SHAPES_MISSING',
      'The state outlines of the package us-atlas are not there.',
      {
        hint: 'Install the program anew.',
        cause,
      },
    );
  }
}

/** Whether a ray to the east crosses the rings an odd number of times. */
function isInside(rings: readonly Ring[], lon: number, lat: number): boolean {
  let inside = false;
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [lonA, latA] = ring[i];
      const [lonB, latB] = ring[j];
      if (latA > lat !== latB > lat && lon < ((lonB - lonA) * (lat - latA)) / (latB - latA) + lonA)
        inside = !inside;
    }
  }
  return inside;
}
