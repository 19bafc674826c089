import { middleShareLeft, soilOf, yearsOf } from './dissipation.ts';
import { figuresOf } from './figures.ts';
import { placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { residueNgPerG } from './soilMass.ts';

const DOSE_GRAMS_PER_HA = 40;
const SOIL_PH = 8.0;
const DEPTH_CM = 10;
/** Levels that another source (that of V32) calls toxic to legumes and oilseeds. [ng/g] */
const TOXIC_NG_PER_G = { lowest: 0.1, highest: 0.4 } as const;
const YEAR_DAYS = 365.25;

export const v09 = runCase({
  id: 'V09',
  source: {
    title:
      'Chlorsulfuron persistence and response of nine rotational crops in alkaline soils of southern Alberta',
    publisher: 'Weed Technology',
    year: 1990,
  },
  measured: 'chlorsulfuron 40 g/ha at pH 8.0: lentil safe after seven years or more, canola after three',
  assumptions: [
    `weather of all years at ${placeName('saskatoon')}; applied 1 June; loam with 2.1 % organic matter`,
    'half-life, warmth response and pH slope from the catalogue, none of them from this source',
    `residue in the top ${DEPTH_CM} cm at 1.35 g/cm3, held against 0.1-0.4 ng/g from the source of V32; no label interval is used, as labels ask for a bioassay`,
    'only Lethbridge at its top dose: no years are at hand for the second site, pH 7.4, or the lower doses',
  ],
  needsRecords: true,
  checks: {
    lentil: {
      measured: 'lentil not yet safe six years on',
      criterion: 'at six years the median soil still holds 0.1 ng/g or more',
      fair: 'the lowest level called toxic must be exceeded while the most sensitive crop is hurt',
      recorded: 'not agreed',
    },
    canola: {
      measured: 'canola yielded in full after three years',
      criterion: 'at three years the median soil holds 0.4 ng/g or less',
      fair: 'the highest level called toxic must not be exceeded where an oilseed yields in full; it keeps the first check from passing by mere slowness',
      recorded: 'not agreed',
    },
  },
  why: 'loses too fast for lentil, which the model would clear in the fifth year, and leaves twice the residue that canola is taken to bear at three: no one half-life and one threshold fit both crops',
  async run(places) {
    const { response, halfLife, phFactorAt } = figuresOf('chlorsulfuron');
    const siteHalfLife = halfLife * phFactorAt(SOIL_PH);
    const days = (count: number) => Math.round(count * YEAR_DAYS);
    const years = yearsOf(await places.climate('saskatoon'), {
      layer: soilOf('loam', 2.1),
      response,
      month: 6,
      day: 1,
      days: days(6),
    });
    const residue = (count: number) =>
      middleShareLeft(years, siteHalfLife, days(count)) * residueNgPerG(DOSE_GRAMS_PER_HA, DEPTH_CM);
    return {
      lentil: {
        model: `${residue(6).toFixed(2)} ng/g at six years`,
        agrees: residue(6) >= TOXIC_NG_PER_G.lowest,
      },
      canola: {
        model: `${residue(3).toFixed(2)} ng/g at three years`,
        agrees: residue(3) <= TOXIC_NG_PER_G.highest,
      },
    };
  },
});
