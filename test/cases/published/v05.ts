import { middleHalfLife, middleShareLeft, soilOf, yearsOf } from './dissipation.ts';
import { figuresOf } from './figures.ts';
import { latitudeOf, placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { withWater } from './setWater.ts';
import { residueNgPerG } from './soilMass.ts';

const WATER_MM = [200, 300, 400, 500] as const;
const SEASON_DAYS = 123;
const SAMPLED_AFTER_DAYS = 345;
const DOSES = [260, 1050] as const;
const DEPTH_CM = 15;

export const v05 = runCase({
  id: 'V05',
  source: {
    title: 'Persistence of imazamethabenz in wheat-potato rotation, Aberdeen, Idaho',
    publisher: 'Weed Technology',
    year: null,
  },
  measured:
    'imazamethabenz 0.26-1.05 kg/ha with 20, 30, 40, 50 cm of water: faster loss with each step; under 10 ng/g left after 338-351 d',
  assumptions: [
    `temperatures and winter of ${placeName('bozeman')}, all years`,
    'the water takes the place of rain from 1 May to 31 August, in equal weekly falls; applied 1 May; loam',
    `sampled at 345 d in the top ${DEPTH_CM} cm at 1.35 g/cm3`,
  ],
  needsRecords: true,
  checks: {
    order: {
      measured: 'the rate constant rose from each water level to the next',
      criterion: 'the model’s half-life over the season falls with every step of water',
      fair: 'the order is all that the source gives; no size is asked for',
      recorded: 'agreed',
    },
    residue: {
      measured: 'under 10 ng/g after 338-351 d at every dose and water level',
      criterion: 'under 10 ng/g in the middle year and median soil at the top dose and the least water',
      fair: 'the source states it for all of them, so the hardest pair must hold',
      recorded: 'not agreed',
    },
  },
  why: 'the order holds, and so does the residue of the low dose; the top dose leaves up to three times the 10 ng/g, so the half-life taken is too long for this site or its lower layers lose more',
  async run(places) {
    const climate = await places.climate('bozeman');
    const { response, halfLife } = figuresOf('imazamethabenz-methyl');
    const courses = WATER_MM.map((totalMm) =>
      yearsOf(
        withWater(climate, latitudeOf('bozeman'), {
          from: { month: 5, day: 1 },
          days: SEASON_DAYS,
          everyDays: 7,
          totalMm,
        }),
        { layer: soilOf(), response, month: 5, day: 1, days: SAMPLED_AFTER_DAYS },
      ),
    );
    const halfLives = courses.map((years) => middleHalfLife(years, halfLife, 0, SEASON_DAYS));
    const left = courses.map((years) => middleShareLeft(years, halfLife, SAMPLED_AFTER_DAYS));
    const [low, high] = DOSES.map((dose) => left.map((share) => share * residueNgPerG(dose, DEPTH_CM)));
    return {
      order: {
        model: `half-lives ${halfLives.map((days) => days.toFixed(1)).join(', ')} d`,
        agrees: halfLives.slice(1).every((days, step) => days < halfLives[step]),
      },
      residue: {
        model: `${low[3].toFixed(0)}-${low[0].toFixed(0)} ng/g after 0.26 kg/ha, ${high[3].toFixed(0)}-${high[0].toFixed(0)} ng/g after 1.05 kg/ha`,
        agrees: Math.max(...high) < 10,
      },
    };
  },
});
