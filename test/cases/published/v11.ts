import { middleShareLeft, soilOf, yearsOf } from './dissipation.ts';
import { figuresOf } from './figures.ts';
import { harmOf, sayOdds } from './harm.ts';
import { placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { harmedRule, saysHarmed, unharmedRule } from './rules.ts';

const MONTH_DAYS = 365.25 / 12;
const days = (months: number) => Math.round(months * MONTH_DAYS);
const APPLIED = { month: 2, day: 1 } as const;

export const v11 = runCase({
  id: 'V11',
  source: {
    title: 'Persistence of sulfonylurea herbicides in a Texas clay loam (title shortened)',
    publisher: 'Weed Technology',
    year: 1988,
  },
  measured:
    'chlorsulfuron 34 g/ha, sorghum: no injury at 16 months at pH 6.5; injury up to 25 months at pH 7.5 and above',
  assumptions: [
    `weather of all years at ${placeName('portal')} for semi-arid Texas; applied 1 February; clay loam`,
    'half-life, warmth response and pH slope from the catalogue, none of them from this source; pH 7.5 for “7.5 and above”',
    'in the last two checks the tool’s own interval, which is the longest its source gives for any pH',
  ],
  needsRecords: true,
  checks: {
    residue: {
      measured: 'harm at pH 7.5 some time up to 25 months, none at pH 6.5 at 16 months',
      criterion: 'at 25 months pH 7.5 still holds at least the share of the dose that pH 6.5 holds at 16',
      fair: 'that share was harmless, so the alkaline soil must hold more to do harm; no interval enters',
      recorded: 'agreed',
    },
    acid: { measured: 'pH 6.5: no injury at 16 months', ...unharmedRule, recorded: 'not agreed' },
    alkaline: { measured: 'pH 7.5: injury up to 25 months', ...harmedRule, recorded: 'agreed' },
  },
  why: 'the pH slope alone parts the two soils as the trial did. The tool takes 48 months, the longest its source gives for any pH, and so warns at pH 6.5 as well, where nothing was hurt',
  async run(places) {
    const climate = await places.climate('portal');
    const layer = soilOf('clay loam');
    const { response, halfLife, phFactorAt } = figuresOf('chlorsulfuron');
    const years = yearsOf(climate, { layer, response, ...APPLIED, days: days(25) });
    const acidLeft = middleShareLeft(years, halfLife * phFactorAt(6.5), days(16));
    const alkalineLeft = middleShareLeft(years, halfLife * phFactorAt(7.5), days(25));
    const ask = (soilPh: number, sownAfterMonths: number) =>
      harmOf(climate, {
        active: 'chlorsulfuron',
        crop: 'sorghum',
        doseGramsPerHa: 34,
        appliedOn: '2000-02-01',
        sownAfterMonths,
        siteFactor: phFactorAt(soilPh),
        layer,
      });
    const acid = ask(6.5, 16);
    const alkaline = ask(7.5, 25);
    const percent = (share: number) => (100 * share).toPrecision(2);
    return {
      residue: {
        model: `${percent(alkalineLeft)} % left at pH 7.5 and 25 months, ${percent(acidLeft)} % at pH 6.5 and 16`,
        agrees: alkalineLeft >= acidLeft,
      },
      acid: {
        model: `pH 6.5, interval ${acid.intervalWords}: ${sayOdds(acid.oddsAtPlanting)}`,
        agrees: !saysHarmed(acid.oddsAtPlanting),
      },
      alkaline: {
        model: `pH 7.5: ${sayOdds(alkaline.oddsAtPlanting)}`,
        agrees: saysHarmed(alkaline.oddsAtPlanting),
      },
    };
  },
});
