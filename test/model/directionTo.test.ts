import { expect, it } from 'vitest';
import { COMPASS_POINTS, directionTo } from '../../src/model/place/directionTo.ts';

const at = (latitudeDeg: number, longitudeDeg: number) => ({ latitudeDeg, longitudeDeg });

it('goes round the compass', () => {
  const around = [
    ...[at(1, 0), at(1, 1), at(0, 1), at(-1, 1)],
    ...[at(-1, 0), at(-1, -1), at(0, -1), at(1, -1)],
  ];
  expect(around.map((to) => directionTo(at(0, 0), to))).toEqual(COMPASS_POINTS);
});

it('takes the short way over the date line and narrows degrees of longitude towards the pole', () => {
  expect(directionTo(at(0, 179.9), at(0, -179.9))).toBe('east');
  expect(directionTo(at(60, 10), at(60.5, 11))).toBe('north-east');
  expect(directionTo(at(60, 10), at(60.5, 10.3))).toBe('north');
});
