import { expect, it } from 'vitest';
import { PART_NAMES } from '../../web/src/fields/parts.ts';
import { differences } from '../../web/src/keep/differences.ts';
import { typedDates } from '../../web/src/units/dates.ts';

const here = {
  areaHa: 64.75,
  coverFraction: 0.6,
  gauge: [{ date: '2026-09-03', mm: 12.7 }],
  treatments: [
    {
      id: 'one',
      appliedOn: '2026-08-14',
      residual: 'atrazine',
      rateGramsPerHa: 1120,
      zones: [{ name: 'rows', overlapFactor: 2 }],
    },
  ],
};
const there = { ...here, areaHa: 32, coverFraction: 0.3, gauge: [], treatments: [] };

it('says the two versions of a field in the units and dates of the reader', () => {
  const rows = (units: 'us' | 'metric') =>
    differences(here, there, PART_NAMES, { units, dates: typedDates(units === 'us' ? 'us' : 'iso') }).map(
      ({ part, mine, theirs }) => [part, mine, theirs],
    );
  expect(rows('us')).toEqual([
    ['Size', '160 acres', '79.07 acres'],
    ['Ground covered', '60 %', '30 %'],
    ['Rain gauge', 'September 3, 2026, 0.5 in', 'nothing of its own'],
    ['What was sprayed', 'August 14, 2026, atrazine, 15.99 oz/acre, Zones: rows, 2', 'nothing of its own'],
  ]);
  expect(rows('metric')).toEqual([
    ['Size', '64.75 ha', '32 ha'],
    ['Ground covered', '60 %', '30 %'],
    ['Rain gauge', '2026-09-03, 12.7 mm', 'nothing of its own'],
    ['What was sprayed', '2026-08-14, atrazine, 1120 g/ha, Zones: rows, 2', 'nothing of its own'],
  ]);
});
