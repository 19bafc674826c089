import { unrunCase } from './publishedCase.ts';

export const v22 = unrunCase({
  id: 'V22',
  source: {
    title: 'Dissipation of imazapyr, flumetsulam and thifensulfuron in soil',
    publisher: 'Weed Research 37, 381-389',
    year: 1997,
  },
  measured:
    'three actives, New Zealand silt loam, 208 or 283 mm in four months: two of them washed below 25 cm under both amounts',
  why: 'the finding is movement, which the model does not hold; no half-life by water amount was to be seen',
});
