import { beforeAll, describe, expect, it } from 'vitest';
import { findCounty } from '../../src/app/findCounty.ts';
import type { County } from '../../src/schema/place.ts';
import { readUsCounties } from '../../src/source/usCounties.ts';
import { refusalOf } from '../refusal.ts';

let counties: County[];
beforeAll(async () => {
  counties = await readUsCounties();
});
const fipsOf = (text: string) => findCounty(counties, text).fips;
const refused = (text: string) => refusalOf(Promise.resolve().then(() => findCounty(counties, text)));

describe('the counties', () => {
  it('are all there, each with a state and a middle', () => {
    expect(counties.length).toBeGreaterThan(3100);
    expect(new Set(counties.map(({ fips }) => fips)).size).toBe(counties.length);
    expect(new Set(counties.map(({ fullName }) => fullName)).size).toBe(counties.length);
    for (const { state, latitudeDeg, longitudeDeg } of counties) {
      expect(state).toMatch(/^[A-Z]{2}$/);
      expect(Math.abs(latitudeDeg)).toBeLessThan(72);
      expect(Math.abs(longitudeDeg)).toBeLessThanOrEqual(180);
    }
  });

  it('have their middle where it belongs, across the date line too', () => {
    const gallatin = findCounty(counties, '30031');
    expect(gallatin.latitudeDeg).toBeCloseTo(45.54, 1);
    expect(gallatin.longitudeDeg).toBeCloseTo(-111.17, 1);
    const aleutians = findCounty(counties, 'Aleutians West, AK');
    expect(aleutians.latitudeDeg).toBeGreaterThan(51);
    expect(aleutians.latitudeDeg).toBeLessThan(54);
    expect(aleutians.longitudeDeg).toBeLessThan(-165);
  });
});

describe('findCounty', () => {
  it.each([
    ['Gallatin, MT', '30031'],
    ['gallatin county, montana', '30031'],
    ['St. Louis city, MO', '29510'],
    ['Saint Louis County, Missouri', '29189'],
    ['Carson City, NV', '32510'],
    ['Dona Ana, NM', '35013'],
    ['La Salle Parish, LA', '22059'],
    ['James City, VA', '51095'],
    ['Richmond city, VA', '51760'],
    ['Yoakum, TX', '48501'],
  ])('reads %s', (text, fips) => {
    expect(fipsOf(text)).toBe(fips);
  });

  it('refuses a name that fits several places, with the choices', async () => {
    const twins = await refused('St Louis, MO');
    expect(twins.code).toBe('COUNTY_AMBIGUOUS');
    expect(twins.details.choices).toEqual(['St. Louis County, MO', 'St. Louis city, MO']);
    const states = await refused('Gallatin');
    expect(states.message).toContain('3 places');
    expect(states.details.choices).toEqual(['Gallatin, IL', 'Gallatin, KY', 'Gallatin, MT']);
  });

  it('offers what is like a misspelt name, and refuses an unknown state', async () => {
    const misspelt = await refused('Galatin, MT');
    expect(misspelt.code).toBe('COUNTY_UNKNOWN');
    expect(misspelt.hint).toContain('Gallatin, MT');
    expect((await refused('Gallatin, Nowhere')).message).toContain('"Nowhere" is no state');
    expect((await refused('Xyzzyqux, MT')).hint).toContain('with its state');
  });
});
