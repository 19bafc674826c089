import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import topojson, { type AreaGeometry } from 'topojson-client';
import { SourceFailedError } from '../errors.ts';
import type { County } from '../schema/place.ts';
import { STATE_LETTERS } from '../schema/usStates.ts';
import { areaMiddle } from './areaMiddle.ts';

const SHAPES = 'us-atlas/counties-10m.json';

/** County codes from here on are cities that belong to no county, in these states. */
const CITY_CODES: Readonly<Record<string, number>> = { VA: 510, MD: 510, MO: 510, NV: 510 };

interface Shapes {
  readonly objects: Readonly<Record<'counties' | 'states', object>>;
}

/**
 * All US counties and county equivalents with the middle of their areas, from the installed `us-atlas` package.
 * @throws {SourceFailedError} FILE_NOT_FOUND where the package is not installed
 */
export async function readUsCounties(): Promise<County[]> {
  const shapes = await readShapes();
  const states = new Map(featuresOf(shapes, 'states').map(({ id, name }) => [id, name]));
  const counties = featuresOf(shapes, 'counties').map(({ id, name, geometry }) => {
    const state = STATE_LETTERS.get(id.slice(0, 2)) ?? '??';
    return {
      fips: id,
      name,
      independentCity: Number(id.slice(2)) >= (CITY_CODES[state] ?? Number.POSITIVE_INFINITY),
      state,
      stateName: states.get(id.slice(0, 2)) ?? state,
      ...areaMiddle(polygonsOf(geometry)),
    };
  });
  const times = new Map<string, number>();
  for (const { name, state } of counties) {
    times.set(`${name}, ${state}`, (times.get(`${name}, ${state}`) ?? 0) + 1);
  }
  return counties.map((county) => ({
    ...county,
    fullName: `${county.name}${
      times.get(`${county.name}, ${county.state}`) === 1 ? '' : county.independentCity ? ' city' : ' County'
    }, ${county.state}`,
  }));
}

function featuresOf(
  shapes: Shapes,
  object: 'counties' | 'states',
): { id: string; name: string; geometry: AreaGeometry }[] {
  return topojson
    .feature(shapes, shapes.objects[object])
    .features.map(({ id, properties, geometry }) => ({ id: String(id), name: properties.name, geometry }));
}

const polygonsOf = (geometry: AreaGeometry): number[][][][] =>
  geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates;

async function readShapes(): Promise<Shapes> {
  try {
    return JSON.parse(await readFile(createRequire(import.meta.url).resolve(SHAPES), 'utf8'));
  } catch (cause) {
    throw new SourceFailedError(
      'FILE_NOT_FOUND',
      'The county outlines of the package us-atlas are not there.',
      {
        hint: 'Install the project with npm ci, or give latitude and longitude instead of a county.',
        cause,
      },
    );
  }
}
