import { harmOf, sayOdds } from './harm.ts';
import { placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { harmedRule, saysHarmed } from './rules.ts';

/** Four times the rate before emergence, 210 g/ha. */
const DOSE_GRAMS_PER_HA = 840;

export const v07 = runCase({
  id: 'V07',
  source: {
    title: 'Mesotrione soil residues and rotational vegetable crops in Ohio',
    publisher: 'Crop Protection',
    year: 2007,
  },
  measured:
    'mesotrione at four times the rate, Ohio: snap bean yield down by 60 % and 31 % at two sites after 12 months',
  assumptions: [
    `weather of all years at ${placeName('milwaukee')}, some 400 to 550 km off; applied 1 June; loam`,
    `${DOSE_GRAMS_PER_HA} g/ha against the catalogue’s top rate; interval and half-life as the tool takes them`,
  ],
  needsRecords: true,
  checks: { snapBean: { measured: 'snap bean hurt at both sites', ...harmedRule, recorded: 'agreed' } },
  why: 'right, but an easy test: four times the rate, and a third of the label’s time still to run',
  async run(places) {
    const { oddsAtPlanting, intervalWords } = harmOf(await places.climate('milwaukee'), {
      active: 'mesotrione',
      crop: 'snap bean',
      doseGramsPerHa: DOSE_GRAMS_PER_HA,
      appliedOn: '2000-06-01',
      sownAfterMonths: 12,
    });
    return {
      snapBean: {
        model: `interval ${intervalWords}: ${sayOdds(oddsAtPlanting)}`,
        agrees: saysHarmed(oddsAtPlanting),
      },
    };
  },
});
