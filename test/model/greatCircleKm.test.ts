import { expect, it } from 'vitest';
import { OutOfRangeError } from '../../src/errors.ts';
import { greatCircleKm } from '../../src/model/place/greatCircleKm.ts';

const at = (latitudeDeg: number, longitudeDeg: number) => ({ latitudeDeg, longitudeDeg });

it('is a quarter of the way round from the equator to the pole and along the equator', () => {
  const quarter = (Math.PI / 2) * 6371;
  expect(greatCircleKm(at(0, 0), at(90, 0))).toBeCloseTo(quarter, 6);
  expect(greatCircleKm(at(0, -45), at(0, 45))).toBeCloseTo(quarter, 6);
  expect(greatCircleKm(at(0, 0), at(0, 180))).toBeCloseTo(2 * quarter, 6);
});

it('is one degree of arc along a meridian, the shorter way over the date line, and nothing to itself', () => {
  expect(greatCircleKm(at(45, -110), at(46, -110))).toBeCloseTo((Math.PI / 180) * 6371, 6);
  expect(greatCircleKm(at(0, 179), at(0, -179))).toBeCloseTo((2 * Math.PI * 6371) / 180, 6);
  expect(greatCircleKm(at(45, -110), at(45, -110))).toBe(0);
});

it('refuses a point that is not on the Earth', () => {
  expect(() => greatCircleKm(at(91, 0), at(0, 0))).toThrow(OutOfRangeError);
  expect(() => greatCircleKm(at(0, 0), at(0, 181))).toThrow(OutOfRangeError);
  expect(() => greatCircleKm(at(Number.NaN, 0), at(0, 0))).toThrow(OutOfRangeError);
});
