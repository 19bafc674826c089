import { unrunCase } from './publishedCase.ts';

export const v34 = unrunCase({
  id: 'V34',
  source: {
    title:
      'Crop damage caused by residual acetolactate synthase herbicides in the soils of south-eastern Australia',
    publisher: 'Australian Journal of Experimental Agriculture 46(10), 1323-1331',
    year: 2006,
  },
  measured:
    'five Group 2 actives in five trials: all lasted longer with rain below average, sulfonylureas longer in alkaline soil, imazethapyr longer in clay',
  why: 'directions only: neither rain nor times were to be seen, and the model holds these directions by construction',
});
