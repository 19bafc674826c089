import { impliedHalfLife, middleHalfLife, soilOf, yearsOf } from './dissipation.ts';
import { figuresOf } from './figures.ts';
import { placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { bandMeets, bandRule, sayDays } from './rules.ts';

const WINTER = { from: 31, to: 198 } as const;
const WINTER_AT_MOST = impliedHalfLife(WINTER.to - WINTER.from, 0.4);

export const v30 = runCase({
  id: 'V30',
  source: {
    title: 'Persistence of imazamethabenz-methyl in soils after autumn and spring applications to wheat',
    publisher: 'Weed Research',
    year: 1997,
  },
  measured:
    'imazamethabenz-methyl, Nova Scotia sands and sandy loams: half gone 3-4 weeks after October use, 2.5 weeks after June use; over 60 % of the rest lost over winter, in part by leaching',
  assumptions: [
    `sandy loam; weather at ${placeName('ottawa')}: for October the years with 105-180 mm in the 30 d after, for June all`,
    'applied 15 October and 15 June; winter from 15 November to 1 May; half-life from the catalogue, which rests on other sources',
  ],
  needsRecords: true,
  checks: {
    october: { measured: 'October: 21-28 d', ...bandRule, recorded: 'not agreed' },
    june: { measured: 'June: 17.5 d', ...bandRule, recorded: 'not agreed' },
    winter: {
      measured: `winter: half-life ${WINTER_AT_MOST.toFixed(0)} d or less`,
      ...bandRule,
      recorded: 'not agreed',
    },
  },
  why: 'slower than the field at all three: twofold in June, more in cold soil, where the default warmth response leaves little and leaching, named by the source, is not in the model',
  async run(places) {
    const climate = await places.climate('ottawa');
    const { response, halfLife } = figuresOf('imazamethabenz-methyl');
    const layer = soilOf('sandy loam');
    const autumn = yearsOf(climate, {
      layer,
      response,
      month: 10,
      day: 15,
      days: WINTER.to,
      rain: { overDays: 30, fromMm: 105, toMm: 180 },
    });
    const summer = yearsOf(climate, { layer, response, month: 6, day: 15, days: 30 });
    const october = middleHalfLife(autumn, halfLife, 0, 28);
    const june = middleHalfLife(summer, halfLife, 0, 18);
    const winter = middleHalfLife(autumn, halfLife, WINTER.from, WINTER.to);
    return {
      october: {
        model: `October ${sayDays(october)} (${autumn.length} years)`,
        agrees: bandMeets(october, 21, 28),
      },
      june: { model: `June ${sayDays(june)}`, agrees: bandMeets(june, 17.5) },
      winter: { model: `winter ${sayDays(winter)}`, agrees: bandMeets(winter, 0, WINTER_AT_MOST) },
    };
  },
});
