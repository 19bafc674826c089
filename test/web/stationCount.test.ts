import { expect, it } from 'vitest';
import { stationCount } from '../../web/src/weather/stationWords.ts';

const stations = (real: number, invented: number, example = true) => [
  ...(example ? [{ id: 'demo-invented', invented: true }] : []),
  ...Array.from({ length: real }, (_, index) => ({ id: `real-${index}`, invented: false })),
  ...Array.from({ length: invented }, (_, index) => ({ id: `made-${index}`, invented: true })),
];

it.each([
  [stations(0, 0), /^Only the invented record of the worked example is here\. Drop/],
  [stations(0, 0, false), /^No record is here\. Drop/],
  [
    stations(0, 3),
    /^Only invented records are here: 3 other invented records and the invented one of the worked example\. Drop/,
  ],
  [stations(1, 0), /^One station of daily weather, beside the invented one of the worked example\. Tap/],
  [
    stations(1200, 1),
    /^1,200 stations of daily weather, beside 1 other invented record and the invented one of the worked example\. Tap/,
  ],
])('what is here is told as it is', (list, words) => {
  expect(stationCount(list)).toMatch(words);
});
