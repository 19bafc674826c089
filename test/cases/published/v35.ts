import { unrunCase } from './publishedCase.ts';

export const v35 = unrunCase({
  id: 'V35',
  source: {
    title:
      'Effect of tillage practice on the persistence of atrazine in two contrasting soils in northern New South Wales',
    publisher: 'Australian Journal of Experimental Agriculture 29(6), 849-853',
    year: 1989,
  },
  measured:
    'atrazine 3.2 and 1.8 kg/ha, two clays: 0.11 µg/g and no injury to wheat at pH 5.7, 0.61 µg/g and injury at pH 7.5',
  why: 'dates of both treatments and rain were not to be seen, and the catalogue has only the direction of pH for atrazine',
});
