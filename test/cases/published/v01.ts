import { fractionLeft, moistureResponse } from '../../../src/index.ts';
import { defaultResponse } from './figures.ts';
import { runCase } from './publishedCase.ts';

/** Imazaquin in the laboratory, air-dry against field capacity. */
const DAYS = 100;
const MOIST_HALF_LIFE_DAYS = 17.5;
const AIR_DRY = 0;

export const v01 = runCase({
  id: 'V01',
  source: {
    title: 'Effect of wetting and drying cycles on bioavailable imazaquin',
    publisher: 'Weed Science',
    year: 1996,
  },
  measured:
    'imazaquin, laboratory: half-life 17-18 d at field capacity, next to no loss in 100 d of air-dry soil',
  assumptions: [
    'moist half-life 17.5 d, the source’s own: only the answer to drying is under test',
    'default moisture response, exponent 0.5',
    'the wetting and drying cycles are left out: how far the soil dried in them is not visible',
  ],
  needsRecords: false,
  checks: {
    airDry: {
      measured: 'no measurable loss over 100 d air-dry',
      criterion: 'less than 10 % lost',
      fair: 'a residue analysis would hardly tell a smaller loss from none',
      recorded: 'agreed',
    },
  },
  why: 'by construction: the response was chosen knowing this fact, so it shows no more than that the fact is kept',
  async run() {
    const speed = moistureResponse(AIR_DRY, defaultResponse.moistureExponent);
    const lost = 1 - fractionLeft(DAYS * speed, MOIST_HALF_LIFE_DAYS);
    return { airDry: { model: `${(100 * lost).toFixed(0)} % lost in ${DAYS} d`, agrees: lost < 0.1 } };
  },
});
