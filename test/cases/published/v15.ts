import { harmOf, sayOdds } from './harm.ts';
import { placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { harmedRule, saysHarmed } from './rules.ts';

export const v15 = runCase({
  id: 'V15',
  source: {
    title: 'Fomesafen injury to corn',
    publisher: 'University of Tennessee crop news',
    year: 2012,
  },
  measured:
    'fomesafen, Tennessee, dry summer and autumn of 2011, corn in 2012 before 10 months were over: up to 70 % of the stand lost in overlaps',
  assumptions: [
    `the dry third of the years at ${placeName('greer')}; applied 20 June, corn sown 9 months later; loam`,
    'overlap = twice the top rate; interval and half-life as the tool takes them',
  ],
  needsRecords: true,
  checks: { overlap: { measured: 'corn lost in overlaps', ...harmedRule, recorded: 'agreed' } },
  why: 'right for the overlap in dry years, by a small margin',
  async run(places) {
    const { thirds, intervalWords } = harmOf(await places.climate('greer'), {
      active: 'fomesafen',
      crop: 'corn',
      times: 2,
      appliedOn: '2000-06-20',
      sownAfterMonths: 9,
    });
    const [{ odds }] = thirds;
    return {
      overlap: {
        model: `2×, interval ${intervalWords}, dry third: ${sayOdds(odds)}`,
        agrees: saysHarmed(odds),
      },
    };
  },
});
