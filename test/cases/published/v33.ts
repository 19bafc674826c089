import { unrunCase } from './publishedCase.ts';

export const v33 = unrunCase({
  id: 'V33',
  source: {
    title:
      "Imazethapyr recropping recommendations for canola are suitable for Australia's neutral-alkaline soils",
    publisher: 'Australian agronomy conference',
    year: 2001,
  },
  measured:
    'imazethapyr, Victoria, sodic clay: canola stunted or lower after one and two years, good after three',
  why: 'dose and rain were not to be seen, and no Australian record is at hand',
});
