import { middleHalfLife, soilOf, yearsOf } from './dissipation.ts';
import { figuresOf } from './figures.ts';
import { latitudeOf, placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { UNSEEN_CHANGE, unchangedRule } from './rules.ts';
import { withWater } from './setWater.ts';

/** Full water of an irrigated summer, assumed, and the share that the driest plots got in 2015. */
const FULL_MM = 500;
const SHORT_SHARE = 0.78;
const SUMMER_DAYS = 92;
const UNCHANGED = ['atrazine', 'pyroxasulfone', 'saflufenacil', 'trifluralin', 'pendimethalin'] as const;
const LONGER = 'imazethapyr';

export const v04 = runCase({
  id: 'V04',
  source: {
    title: 'Reduced irrigation impact on soil-applied herbicide dissipation and rotational crop response',
    publisher: 'Weed Technology',
    year: 2023,
  },
  measured:
    'Wyoming, full water against 78 % of it: five actives did not last longer, only imazethapyr did (this ending is from memory)',
  assumptions: [
    `temperatures of ${placeName('bozeman')}, all years; rain from 1 June to 31 August replaced by a fall every 5th day`,
    `full water ${FULL_MM} mm over those 92 d, short water ${SHORT_SHARE} of it; applied 1 June; loam`,
    'half-lives over the 92 d; each active’s own warmth and moisture response from the catalogue',
  ],
  needsRecords: true,
  checks: {
    unchanged: {
      measured: 'five actives lasted no longer with 22 % less water',
      ...unchangedRule,
      recorded: 'agreed',
    },
    imazethapyr: {
      measured: 'imazethapyr lasted longer with 22 % less water',
      criterion: `the model's half-life of imazethapyr grows by a factor of ${UNSEEN_CHANGE} or more`,
      fair: 'the trial saw it, so it was at least that large',
      recorded: 'not agreed',
    },
  },
  why: 'both amounts of water fill the top layer at every fall, so nothing changes; the moisture response was chosen knowing this case. Nothing in the catalogue sets imazethapyr apart from the other five, and that part of the finding is from memory',
  async run(places) {
    const climate = await places.climate('bozeman');
    const summer = (totalMm: number) =>
      withWater(climate, latitudeOf('bozeman'), {
        from: { month: 6, day: 1 },
        days: SUMMER_DAYS,
        everyDays: 5,
        totalMm,
      });
    const full = summer(FULL_MM);
    const short = summer(SHORT_SHARE * FULL_MM);
    const growth = (active: string): number => {
      const { response, halfLife } = figuresOf(active);
      const stretch = { layer: soilOf(), response, month: 6, day: 1, days: SUMMER_DAYS };
      const [wet, dry] = [full, short].map((water) =>
        middleHalfLife(yearsOf(water, stretch), halfLife, 0, SUMMER_DAYS),
      );
      return dry / wet;
    };
    const worst = Math.max(...UNCHANGED.map(growth));
    const own = growth(LONGER);
    return {
      unchanged: { model: `half-lives × ${worst.toFixed(2)} at most`, agrees: worst < UNSEEN_CHANGE },
      imazethapyr: { model: `imazethapyr × ${own.toFixed(2)}`, agrees: own >= UNSEEN_CHANGE },
    };
  },
});
