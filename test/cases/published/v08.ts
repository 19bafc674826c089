import { type HarmQuestion, harmOf, sayOdds } from './harm.ts';
import { placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { harmedRule, saysHarmed, unharmedRule } from './rules.ts';

const sugarbeetAfter = (active: string, doseGramsPerHa: number, sownAfterMonths: number): HarmQuestion => ({
  active,
  crop: 'sugarbeet',
  doseGramsPerHa,
  appliedOn: '2000-06-01',
  sownAfterMonths,
});

export const v08 = runCase({
  id: 'V08',
  source: {
    title: 'Response of sugarbeet to herbicide residues in soil',
    publisher: 'Weed Technology',
    year: 1991,
  },
  measured:
    'sugarbeet in Michigan: imazethapyr 90 g/ha 54 % injury at two years, chlorimuron-ethyl 20-80 g/ha 38-66 % at two years, clomazone 1.1-2.2 kg/ha none at one year',
  assumptions: [
    `weather of all years at ${placeName('milwaukee')}, across the lake; applied 1 June; loam; no pH term, as no pH is given`,
    'intervals, top rates and half-lives as the tool takes them; for clomazone the label’s line for crops it does not name',
  ],
  needsRecords: true,
  checks: {
    imazethapyr: { measured: '90 g/ha: hurt at two years', ...harmedRule, recorded: 'agreed' },
    chlorimuronTop: {
      measured: 'chlorimuron-ethyl 80 g/ha: hurt at two years',
      ...harmedRule,
      recorded: 'not agreed',
    },
    chlorimuronLow: {
      measured: 'chlorimuron-ethyl 20 g/ha: hurt at two years',
      ...harmedRule,
      recorded: 'not agreed',
    },
    clomazoneLow: {
      measured: 'clomazone 1.1 kg/ha: not hurt at one year',
      ...unharmedRule,
      recorded: 'agreed',
    },
    clomazoneTop: {
      measured: 'clomazone 2.2 kg/ha: not hurt at one year',
      ...unharmedRule,
      recorded: 'agreed',
    },
    order: {
      measured: 'imazethapyr at two years worse than clomazone at one',
      criterion: 'higher odds for imazethapyr at 24 months than for either dose of clomazone at 12',
      fair: 'the contrast of the two is the main finding and needs no threshold',
      recorded: 'agreed',
    },
  },
  why: 'imazethapyr, clomazone and their order are right. Two years hold most of the breakdown that a 30-month interval counts on, so chlorimuron-ethyl comes out under even odds (the tool would still warn: its limit is 0.10); alkaline soil would lengthen it, but no pH is given',
  async run(places) {
    const climate = await places.climate('milwaukee');
    const ask = (...question: Parameters<typeof sugarbeetAfter>) =>
      harmOf(climate, sugarbeetAfter(...question));
    const imazethapyr = ask('imazethapyr', 90, 24);
    const chlorimuron = [ask('chlorimuron-ethyl', 80, 24), ask('chlorimuron-ethyl', 20, 24)];
    const clomazone = [ask('clomazone', 1100, 12), ask('clomazone', 2200, 12)];
    const said = (name: string, { intervalWords, oddsAtPlanting }: typeof imazethapyr) =>
      `${name}, interval ${intervalWords}: ${sayOdds(oddsAtPlanting)}`;
    const harmed = (name: string, got: typeof imazethapyr) => ({
      model: said(name, got),
      agrees: saysHarmed(got.oddsAtPlanting),
    });
    const unharmed = (name: string, got: typeof imazethapyr) => ({
      model: said(name, got),
      agrees: !saysHarmed(got.oddsAtPlanting),
    });
    const safest = Math.max(...clomazone.map(({ oddsAtPlanting }) => oddsAtPlanting));
    return {
      imazethapyr: harmed('imazethapyr', imazethapyr),
      chlorimuronTop: harmed('chlorimuron-ethyl 80 g', chlorimuron[0]),
      chlorimuronLow: harmed('chlorimuron-ethyl 20 g', chlorimuron[1]),
      clomazoneLow: unharmed('clomazone 1.1 kg', clomazone[0]),
      clomazoneTop: unharmed('clomazone 2.2 kg', clomazone[1]),
      order: {
        model: `${imazethapyr.oddsAtPlanting.toFixed(2)} against ${safest.toFixed(2)}`,
        agrees: imazethapyr.oddsAtPlanting > safest,
      },
    };
  },
});
