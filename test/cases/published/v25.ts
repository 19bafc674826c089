import { unrunCase } from './publishedCase.ts';

export const v25 = unrunCase({
  id: 'V25',
  source: {
    title: 'Soil pH effect on imazaquin persistence and corn',
    publisher: 'Weed Technology',
    year: 1996,
  },
  measured:
    'imazaquin, Kansas, a range of pH: corn yield cut at pH 5.1 in 1993 with 10-13 µg/kg at planting, not in 1994',
  why: 'dose and rain were not to be seen, no source gives a pH slope of imazaquin, and the nearest record lies some 400 km off',
});
