import { harmOf, sayOdds } from './harm.ts';
import { placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { harmedRule, saysHarmed, unharmedRule } from './rules.ts';

export const v21 = runCase({
  id: 'V21',
  source: {
    title: 'Effects of tillage on trifluralin residue carryover injury to corn',
    publisher: 'Weed Science',
    year: 1989,
  },
  measured:
    'trifluralin 1.1, 2.2, 4.5 kg/ha, Iowa, corn a year later: 0, 8, 24 % stunting; yield down 8 and 16 % at 4.5 kg/ha',
  assumptions: [
    `weather of all years at ${placeName('milwaukee')}, some 400 to 500 km off; applied 1 May, corn 12 months later; loam`,
    'interval, top rate and half-life as the tool takes them',
    'the middle dose is not judged: 8 % stunting without loss of yield is neither harm nor none',
  ],
  needsRecords: true,
  checks: {
    low: { measured: '1.1 kg/ha: no stunting', ...unharmedRule, recorded: 'not agreed' },
    high: { measured: '4.5 kg/ha: 24 % stunting and loss of yield', ...harmedRule, recorded: 'agreed' },
  },
  why: 'the high dose is right. The tool takes 18 months, which the label keeps for dry zones, and so warns at the use rate too; the wetter zone’s 12 months are a condition that this computation does not weigh',
  async run(places) {
    const climate = await places.climate('milwaukee');
    const ask = (doseGramsPerHa: number) =>
      harmOf(climate, {
        active: 'trifluralin',
        crop: 'corn',
        doseGramsPerHa,
        appliedOn: '2000-05-01',
        sownAfterMonths: 12,
      });
    const [low, high] = [ask(1100), ask(4500)];
    return {
      low: {
        model: `1.1 kg, interval ${low.intervalWords}: ${sayOdds(low.oddsAtPlanting)}`,
        agrees: !saysHarmed(low.oddsAtPlanting),
      },
      high: { model: `4.5 kg: ${sayOdds(high.oddsAtPlanting)}`, agrees: saysHarmed(high.oddsAtPlanting) },
    };
  },
});
