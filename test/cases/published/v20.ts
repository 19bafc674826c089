import { harmOf, sayOdds } from './harm.ts';
import { placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { harmedRule, saysHarmed } from './rules.ts';

export const v20 = runCase({
  id: 'V20',
  source: {
    title: 'Sulfentrazone carryover to vegetables and cotton',
    publisher: 'Weed Technology',
    year: 2010,
  },
  measured:
    'sulfentrazone 210 g/ha, North Carolina, cotton a year later: 14-18 % injury, yield down 32 % in one of two years',
  assumptions: [
    `weather of all years at ${placeName('greer')}; applied 15 May, cotton 12 months later; loam; no pH term, as the catalogue has only its direction`,
    'interval, top rate and half-life as the tool takes them',
  ],
  needsRecords: true,
  checks: { cotton: { measured: 'cotton injured in both years', ...harmedRule, recorded: 'not agreed' } },
  why: 'a narrow miss: two thirds of the label’s time at three quarters of the rate; the tool would still warn (its limit is 0.10)',
  async run(places) {
    const { oddsAtPlanting, intervalWords } = harmOf(await places.climate('greer'), {
      active: 'sulfentrazone',
      crop: 'cotton',
      doseGramsPerHa: 210,
      appliedOn: '2000-05-15',
      sownAfterMonths: 12,
    });
    return {
      cotton: {
        model: `interval ${intervalWords}: ${sayOdds(oddsAtPlanting)}`,
        agrees: saysHarmed(oddsAtPlanting),
      },
    };
  },
});
