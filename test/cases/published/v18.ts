import { unrunCase } from './publishedCase.ts';

export const v18 = unrunCase({
  id: 'V18',
  source: {
    title: 'Movement and persistence of picloram in soil (Osborne clay, Manitoba)',
    publisher: 'Weed Science',
    year: null,
  },
  measured:
    'picloram 70 and 350 g/ha, each applied twice, Manitoba clay: 32 % of the higher dose left after two years, none found of the lower',
  why: 'dates of the second treatment and of sampling were not to be seen; any first-order model leaves one share of both doses',
});
