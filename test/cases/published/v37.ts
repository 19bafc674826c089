import { middleHalfLife, soilOf, yearsOf } from './dissipation.ts';
import { figuresOf } from './figures.ts';
import { latitudeOf, placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { bandMeets, bandRule, sayDays } from './rules.ts';
import { withWater } from './setWater.ts';

const DAYS = 100;
const MEASURED_DAYS = 70;
/** 40 mm every 10th day. */
const WATER = { from: { month: 5, day: 15 }, days: DAYS, everyDays: 10, totalMm: 400, besideRain: true };

export const v37 = runCase({
  id: 'V37',
  source: {
    title: 'Atrazine dissipation in irrigated sorghum cropping in southern New South Wales',
    publisher: 'Weed Research',
    year: 1981,
  },
  measured: 'atrazine 2.5 and 10 kg/ha, irrigated clay loam: half-life 70 d at both doses in both years',
  assumptions: [
    `weather of all years at ${placeName('grandJunction')}, whose hot dry summers stand in: 15 May there for 15 November`,
    'clay loam; 40 mm of irrigation every 10th day beside the rain (the amount is not given); followed for 100 d',
    'half-life from the catalogue, which rests on another source',
  ],
  needsRecords: true,
  checks: { halfLife: { measured: 'half-life 70 d', ...bandRule, recorded: 'not agreed' } },
  why: 'too fast by far in warm irrigated soil: the field took 70 d where the catalogue’s 29 d become 15; of the published half-lives only the longest, 146 d, would reach it',
  async run(places) {
    const { response, halfLife } = figuresOf('atrazine');
    const climate = withWater(await places.climate('grandJunction'), latitudeOf('grandJunction'), WATER);
    const years = yearsOf(climate, { layer: soilOf('clay loam'), response, month: 5, day: 15, days: DAYS });
    const days = middleHalfLife(years, halfLife, 0, DAYS);
    return { halfLife: { model: `${sayDays(days)}`, agrees: bandMeets(days, MEASURED_DAYS) } };
  },
});
