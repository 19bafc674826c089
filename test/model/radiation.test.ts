import { describe, expect, it } from 'vitest';
import { dayOfYear } from '../../src/model/calendar/dayOfYear.ts';
import { clearSkyRadiation } from '../../src/model/radiation/clearSkyRadiation.ts';
import { daylightHours } from '../../src/model/radiation/daylightHours.ts';
import { extraterrestrialRadiation } from '../../src/model/radiation/extraterrestrialRadiation.ts';
import { inverseRelativeDistance } from '../../src/model/radiation/inverseRelativeDistance.ts';
import { solarDeclination } from '../../src/model/radiation/solarDeclination.ts';
import { sunsetHourAngle } from '../../src/model/radiation/sunsetHourAngle.ts';
import fc from '../fastCheck.ts';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

describe('sunset hour angle', () => {
  it('is clamped to the polar day and the polar night', () => {
    expect(daylightHours(sunsetHourAngle(radians(75), solarDeclination(172)))).toBe(24);
    expect(sunsetHourAngle(radians(75), solarDeclination(355))).toBe(0);
    expect(extraterrestrialRadiation(75, 355)).toBe(0);
    expect(extraterrestrialRadiation(90, 172)).toBeGreaterThan(40);
  });

  it('is a quarter turn at the equator all year', () => {
    for (const day of [1, 80, 172, 366]) {
      expect(sunsetHourAngle(0, solarDeclination(day))).toBeCloseTo(Math.PI / 2, 12);
    }
  });
});

describe('radiation', () => {
  it('stays between 0 and 50 MJ at every latitude on every day', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -90, max: 90, noNaN: true }),
        fc.integer({ min: 1, max: 366 }),
        (latitude, day) => {
          const radiation = extraterrestrialRadiation(latitude, day);
          expect(radiation).toBeGreaterThanOrEqual(0);
          expect(radiation).toBeLessThan(50);
          expect(clearSkyRadiation(radiation, 300)).toBeLessThanOrEqual(radiation);
        },
      ),
    );
  });

  it('refuses what is not a place or a day', () => {
    expect(() => extraterrestrialRadiation(91, 100)).toThrow('latitudeDeg is 91; it must be from -90 to 90');
    expect(() => extraterrestrialRadiation(45, 0)).toThrow('dayOfYear is 0');
    expect(() => inverseRelativeDistance(367)).toThrow('dayOfYear is 367');
    expect(() => solarDeclination(Number.NaN)).toThrow('dayOfYear is NaN');
    expect(() => sunsetHourAngle(2, 0)).toThrow('latitudeRad is 2');
    expect(() => daylightHours(-0.1)).toThrow('sunsetHourAngleRad is -0.1');
    expect(() => clearSkyRadiation(30, 9000)).toThrow('elevationM is 9000');
  });
});

describe('dayOfYear', () => {
  it('counts every date of four centuries without a gap', () => {
    for (let year = 1800; year <= 2200; year++) {
      const start = Date.UTC(year, 0, 1);
      const length = Math.round((Date.UTC(year + 1, 0, 1) - start) / 86_400_000);
      for (let offset = 0; offset < length; offset++) {
        const date = new Date(start + offset * 86_400_000);
        const counted = dayOfYear(year, date.getUTCMonth() + 1, date.getUTCDate());
        if (counted !== offset + 1) expect.fail(`${date.toISOString()} counted as ${counted}`);
      }
    }
    expect(dayOfYear(2000, 12, 31)).toBe(366);
    expect(dayOfYear(1900, 12, 31)).toBe(365);
  });

  it.each([
    [2021, 2, 29],
    [2021, 13, 1],
    [2021, 0, 1],
    [2021, 4, 31],
    [2021, 4, 0],
    [2021, 4, 1.5],
  ])('refuses %d-%d-%d', (year, month, day) => {
    expect(() => dayOfYear(year, month, day)).toThrow('is not a date');
  });
});
