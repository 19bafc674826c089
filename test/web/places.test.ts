import { describe, expect, it } from 'vitest';
import { catalogueAddress, readCatalogueAddress } from '../../web/src/catalogue/catalogueAddress.ts';
import { halfLifeShare } from '../../web/src/catalogue/halfLifeScale.ts';
import { type LadderEntry, rungsOf } from '../../web/src/catalogue/ladder.ts';
import { placeOf } from '../../web/src/shell/places.ts';
import { parsePlace } from '../../web/src/weather/parsePlace.ts';
import {
  nearQuery,
  readWeatherAddress,
  sayPoint,
  weatherAddress,
} from '../../web/src/weather/weatherAddress.ts';

describe('addresses of places', () => {
  it('tells the places apart', () => {
    expect(
      [
        '/',
        '/compare',
        '/crops',
        '/region',
        '/weather',
        '/catalogue',
        '/catalogue/2,4-D',
        '/weather/x',
        '/other',
      ].map(placeOf),
    ).toEqual([
      'field',
      'compare',
      'crops',
      'region',
      'weather',
      'catalogue',
      'catalogue',
      'nowhere',
      'nowhere',
    ]);
  });

  it.each([
    { station: 'USC00241044', place: null, elevationM: null },
    { station: null, place: { kind: 'point', latitudeDeg: 45.68, longitudeDeg: -111.05 }, elevationM: 1490 },
    { station: null, place: { kind: 'county', county: 'Doña Ana, NM' }, elevationM: null },
  ] as const)('writes and reads the weather address of %o', (asked) => {
    const { search, pathname } = new URL(weatherAddress(asked), 'http://localhost');
    expect(pathname).toBe('/weather');
    expect(readWeatherAddress(search)).toEqual(asked);
  });

  it('takes no point that is none', () => {
    expect(readWeatherAddress('?at=north').place).toBeNull();
    expect(readWeatherAddress('?at=95,-100').place).toBeNull();
    expect(readWeatherAddress('?at=45').place).toBeNull();
  });

  it.each([
    { active: null, crop: null, country: 'US' },
    { active: '2,4-D', crop: null, country: 'CA' },
    { active: 'imazamox', crop: 'dry bean', country: 'US' },
    { active: null, crop: 'lentil', country: 'US' },
  ] as const)('writes and reads the catalogue address of %o', (asked) => {
    const { search, pathname } = new URL(catalogueAddress(asked), 'http://localhost');
    expect(readCatalogueAddress(pathname, search)).toEqual(asked);
  });

  it('asks the server around a place', () => {
    expect(nearQuery({ kind: 'county', county: 'Gallatin, MT' }, 1500)).toBe(
      '/api/weather/near?county=Gallatin%2C+MT&elevation=1500',
    );
  });
});

describe('parsePlace', () => {
  const point = (latitudeDeg: number, longitudeDeg: number) => ({
    value: { kind: 'point', latitudeDeg, longitudeDeg },
  });
  it.each([
    ['45.68, -111.05', point(45.68, -111.05)],
    ['45.68 -111.05', point(45.68, -111.05)],
    ['45.68° N, 111.05° W', point(45.68, -111.05)],
    ['33.9 S; 18.4 E', point(-33.9, 18.4)],
    [' Gallatin, MT ', { value: { kind: 'county', county: 'Gallatin, MT' } }],
    ['30031', { value: { kind: 'county', county: '30031' } }],
  ])('reads “%s”', (text, expected) => {
    expect(parsePlace(text)).toEqual(expected);
  });

  it.each([
    ['', /county, or latitude/],
    ['95, -111', /poles/],
    ['45, -211', /out of range/],
    ['45.68, -111.05, 1500', /in degrees/],
  ])('refuses “%s” with a reason', (text, reason) => {
    const read = parsePlace(text);
    expect('problem' in read && read.problem).toMatch(reason);
  });

  it('says a point back', () => {
    expect(sayPoint(45.684, -111.05)).toBe('45.68° N, 111.05° W');
  });
});

describe('rungs of the ladder', () => {
  const entry = (name: string, months: number | null, more: Partial<LadderEntry> = {}): LadderEntry => ({
    ...{
      name,
      href: '',
      months,
      days: months === null ? null : 0,
      interval: months === null ? null : `${months} months`,
    },
    ...{ fromMemory: false, fallBack: null, bioassay: false, atLeast: false },
    ...more,
  });

  it('go from short to long, the named first, those without an interval last', () => {
    const rungs = rungsOf([
      entry('oats', null),
      entry('pea', 9, { fallBack: 'a wider row' }),
      entry('wheat', 0),
      entry('rye', 9),
      entry('canola', 18),
    ]);
    expect(rungs.map(({ interval }) => interval)).toEqual(['0 months', '9 months', '18 months', null]);
    expect(rungs[1].entries.map(({ name }) => name)).toEqual(['rye', 'pea']);
    expect(rungs.map(({ share }) => share)).toEqual([0, 0.5, 1, 0]);
  });

  it('stand on a scale that rises with the half-life and ends at its ends', () => {
    expect(halfLifeShare(0.1)).toBe(0);
    expect(halfLifeShare(5000)).toBe(1);
    expect(halfLifeShare(30)).toBeGreaterThan(halfLifeShare(7));
  });
});
