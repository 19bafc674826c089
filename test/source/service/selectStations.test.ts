import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { DrywakeError } from '../../../src/errors.ts';
import type { StationWish } from '../../../src/schema/stationWish.ts';
import { selectStations } from '../../../src/source/service/selectStations.ts';
import { describeWithRecords } from '../../sharedWeather.ts';
import { inventoryLine, stationLine } from './fakeService.ts';

/** Id, latitude, longitude, state, and first and last year of each element. */
const STATIONS: [string, number, number, string, Record<string, [number, number]>][] = [
  ['US000000001', 45.6, -111.0, 'MT', { PRCP: [1893, 2025], TMAX: [1893, 2025], TMIN: [1893, 2025] }],
  ['US000000002', 46.1, -110.2, 'MT', { PRCP: [1950, 2025], TMAX: [1990, 2025], TMIN: [1950, 2025] }],
  ['US000000003', 47.0, -109.0, 'MT', { PRCP: [1900, 2024], TMAX: [1900, 2024], TMIN: [1900, 2024] }],
  ['US000000004', 48.0, -108.0, 'MT', { PRCP: [1920, 1975], TMAX: [1920, 1975], TMIN: [1920, 1975] }],
  ['US000000005', 45.9, -111.5, 'MT', { PRCP: [1998, 2025] }],
  ['US000000006', 44.0, -111.0, 'ID', { PRCP: [1940, 2025], TMAX: [1940, 2025], TMIN: [1940, 2025] }],
  ['FJ000000007', -18.1, 178.4, '', { PRCP: [1940, 2025] }],
  ['FJ000000008', -17.0, -179.5, '', { PRCP: [1940, 2025] }],
];
const lists = {
  stations: Buffer.from(
    STATIONS.map(([id, lat, lon, state]) => stationLine(id, lat, lon, state, `PLACE ${id}`)).join(''),
  ),
  inventory: Buffer.from(
    STATIONS.flatMap(([id, lat, lon, , spans]) =>
      Object.entries(spans).map(([element, [first, last]]) =>
        inventoryLine(id, lat, lon, element, first, last),
      ),
    ).join(''),
  ),
};
const ALL = ['PRCP', 'TMAX', 'TMIN'];

/** Last digits of the ids that a wish selects. */
const select = (wish: Partial<StationWish>) =>
  selectStations(lists, { elements: ALL, ...wish }).map((id) => Number(id.slice(-1)));

describe('stations of a state', () => {
  it('must hold every element', () => {
    expect(select({ state: 'MT' })).toEqual([1, 2, 3, 4]);
    expect(select({ state: 'MT', elements: ['PRCP'] })).toEqual([1, 2, 3, 4, 5]);
    expect(select({ state: 'ID' })).toEqual([6]);
  });

  it('must hold them since the year and still report, to the year before the newest', () => {
    expect(select({ state: 'MT', since: 1981 })).toEqual([1, 3]);
    expect(select({ state: 'MT', since: 1900 })).toEqual([1, 3]);
    expect(select({ state: 'MT', since: 1899 })).toEqual([1]);
    expect(select({ state: 'MT', since: 1990 })).toEqual([1, 2, 3]);
  });

  it('may have ended where a last year is given', () => {
    expect(select({ state: 'MT', since: 1930, until: 1975 })).toEqual([1, 3, 4]);
    expect(select({ state: 'MT', until: 2025 })).toEqual([1, 2]);
  });
});

describe('stations of a box', () => {
  const box = (southDeg: number, westDeg: number, northDeg: number, eastDeg: number) => ({
    box: { southDeg, westDeg, northDeg, eastDeg },
  });

  it('lie inside or on its border, in whatever state', () => {
    expect(select(box(44, -111, 46.1, -110))).toEqual([1, 2, 6]);
    expect(select({ ...box(44, -111, 46.1, -110), state: 'MT' })).toEqual([1, 2]);
  });

  it('may lie on both sides of the date line', () => {
    expect(select({ ...box(-20, 178, -15, -179), elements: ['PRCP'] })).toEqual([7, 8]);
  });
});

describe('a wish that nothing fits', () => {
  const refusal = (wish: Partial<StationWish>): DrywakeError => {
    try {
      select(wish);
    } catch (error) {
      if (error instanceof DrywakeError) return error;
    }
    throw new Error('expected a refusal');
  };

  it('is said in its own words', () => {
    const { code, message } = refusal({ state: 'ID', elements: ['PRCP', 'SNOW'], since: 1950 });
    expect(code).toBe('SELECTION_EMPTY');
    expect(message).toBe('No station in ID holds PRCP, SNOW since 1950.');
  });

  it('names the codes there are where the state is not one of them', () => {
    const { code, hint } = refusal({ state: 'XX' });
    expect([code, hint]).toEqual(['STATE_UNKNOWN', 'Its codes are ID, MT.']);
    expect(refusal({ state: 'TM' }).hint).toBe('Did you mean MT? Its codes are ID, MT.');
  });
});

// Counted apart from this project, with a dictionary of each station's spans by element over the same two files.
describeWithRecords('the real lists', (folder) => {
  it('hold 648 stations with rain and temperatures in MT, 142 of them since 1981 and reporting still', () => {
    const read = (name: string) => gunzipSync(readFileSync(`${folder}/ghcnd/${name}.txt.gz`));
    const real = { stations: read('ghcnd-stations'), inventory: read('ghcnd-inventory') };
    expect(selectStations(real, { state: 'MT', elements: ALL })).toHaveLength(648);
    const since = selectStations(real, { state: 'MT', elements: ALL, since: 1981 });
    expect(since).toHaveLength(142);
    expect(since).toContain('USC00241044');
  });
});
