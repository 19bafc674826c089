import { impliedHalfLife, middleHalfLife, soilOf, yearsOf } from './dissipation.ts';
import { figuresOf } from './figures.ts';
import { placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { bandMeets, bandRule, sayDays } from './rules.ts';
import { residueNgPerG } from './soilMass.ts';

/** Full dose in the sampled depth, and what was found. [ng/g] */
const FULL = residueNgPerG(1120, 15);
const MONTH = impliedHalfLife(30, 93 / FULL);
const YEAR_AT_MOST = impliedHalfLife(365, 5 / FULL);

export const v19 = runCase({
  id: 'V19',
  source: {
    title: 'Picloram persistence in semiarid rangeland soils',
    publisher: 'journal not noted',
    year: null,
  },
  measured: 'picloram 1.12 kg/ha, Texas rangeland, top 15 cm: 93 ng/g at 30 d, under 5 ng/g at one year',
  assumptions: [
    `weather of all years at ${placeName('portal')}; applied 1 May; loam at 1.35 g/cm3`,
    `the whole dose on the soil, ${FULL.toFixed(0)} ng/g at the start: the residues then stand for half-lives of ${MONTH.toFixed(0)} d and at most ${YEAR_AT_MOST.toFixed(0)} d`,
  ],
  needsRecords: true,
  checks: {
    month: { measured: `half-life ${MONTH.toFixed(0)} d over 30 d`, ...bandRule, recorded: 'not agreed' },
    year: {
      measured: `half-life ${YEAR_AT_MOST.toFixed(0)} d or less over a year`,
      ...bandRule,
      recorded: 'not agreed',
    },
  },
  why: 'range plants, light, leaching and a thirsty canopy are not in the model, and the stand-in’s May is dry, which a Texas May is not: with the rain of Norman, Oklahoma, instead the figures are 74 and 87 d, and the second would agree',
  async run(places) {
    const { response, halfLife } = figuresOf('picloram');
    const years = yearsOf(await places.climate('portal'), {
      layer: soilOf(),
      response,
      month: 5,
      day: 1,
      days: 365,
    });
    const month = middleHalfLife(years, halfLife, 0, 30);
    const year = middleHalfLife(years, halfLife, 0, 365);
    return {
      month: { model: `${sayDays(month)} over 30 d`, agrees: bandMeets(month, MONTH) },
      year: { model: `${sayDays(year)} over a year`, agrees: bandMeets(year, 0, YEAR_AT_MOST) },
    };
  },
});
