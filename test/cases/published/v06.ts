import { harmOf, sayOdds } from './harm.ts';
import { placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { harmedRule, saysHarmed } from './rules.ts';

export const v06 = runCase({
  id: 'V06',
  source: {
    title: 'Crop response to carryover of mesotrione residues in the field',
    publisher: 'Weed Technology',
    year: 2013,
  },
  measured: 'mesotrione at the label rate and above, Ontario: sugarbeet lost up to 100 % about a year later',
  assumptions: [
    `weather of all years at ${placeName('ottawa')}; applied 1 June; loam; sugarbeet sown 12 months later`,
    'label rate; interval and half-life as the tool takes them; no pH term, as the catalogue has only its direction',
    'the contrast of the two years is left out: neither rain nor pH is given',
  ],
  needsRecords: true,
  checks: { sugarbeet: { measured: 'sugarbeet hurt a year later', ...harmedRule, recorded: 'agreed' } },
  why: 'right, but an easy test: the crop is sown when a third of the label’s time is still to run',
  async run(places) {
    const { oddsAtPlanting, intervalWords } = harmOf(await places.climate('ottawa'), {
      active: 'mesotrione',
      crop: 'sugarbeet',
      appliedOn: '2000-06-01',
      sownAfterMonths: 12,
    });
    return {
      sugarbeet: {
        model: `interval ${intervalWords}: ${sayOdds(oddsAtPlanting)}`,
        agrees: saysHarmed(oddsAtPlanting),
      },
    };
  },
});
