import { unrunCase } from './publishedCase.ts';

export const v28 = unrunCase({
  id: 'V28',
  source: {
    title:
      'Research update series, article 5: residual soybean herbicides, cereal rye and radish cover crops',
    publisher: 'University of Wisconsin-Madison',
    year: 2021,
  },
  measured: 'cereal rye and radish after residual soybean programmes, Wisconsin and Nebraska: low risk',
  why: 'doses, dates and weather of the programmes were not to be seen',
});
