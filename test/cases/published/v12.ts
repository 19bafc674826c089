import { median } from '../../../src/index.ts';
import { soilOf, yearsOf } from './dissipation.ts';
import { figuresOf } from './figures.ts';
import { placeName } from './places.ts';
import { runCase } from './publishedCase.ts';

const DAYS = 1096;
const SOILS = [
  { soilPh: 7.4, layer: soilOf('sandy loam', 4.5) },
  { soilPh: 6.5, layer: soilOf('clay loam', 5.3) },
] as const;
/** Bounds of the ratio of times to safety that whole years allow: sunflower 4 and 3, canola 3 and 3, flax 2 and 1. */
const RATIO = { low: 1.0, high: 1.5 } as const;

export const v12 = runCase({
  id: 'V12',
  source: {
    title:
      'Residual effects of triasulfuron (title paraphrased) and chlorsulfuron on spring-sown rotational crops',
    publisher: 'Weed Science',
    year: 1991,
  },
  measured:
    'triasulfuron 22 g/ha, Manitoba: years to no symptom at pH 7.4 and pH 6.5: sunflower 4 and 3, canola 3 and 3, flax 2 and 1, field pea 1 and 1',
  assumptions: [
    `weather of all years at ${placeName('saskatoon')}; applied 1 June; sandy loam with 4.5 % and clay loam with 5.3 % organic matter`,
    'pH slope from the catalogue, whose two sources are not this one',
    'a crop bears the same residue in both soils',
  ],
  needsRecords: true,
  checks: {
    ratio: {
      measured:
        'whole years bound the ratio of the two times: at most 1.5 (canola), at least 1.0 (flax, sunflower)',
      criterion: `the model's ratio of the times to one residue lies from ${RATIO.low.toFixed(1)} to ${RATIO.high}`,
      fair: '“n years” means between n − 1 and n; the ratio is the narrowest that all four crops allow',
      recorded: 'not agreed',
    },
  },
  why: 'the slope of 2.1 for each unit of pH is too steep for this pair; the 1.29 that one laboratory found for chlorsulfuron would give 1.4, inside the range',
  async run(places) {
    const climate = await places.climate('saskatoon');
    const { response, halfLife, phFactorAt } = figuresOf('triasulfuron');
    const [alkaline, acid] = SOILS.map(({ soilPh, layer }) => {
      const years = yearsOf(climate, { layer, response, month: 6, day: 1, days: DAYS });
      return (DAYS * halfLife * phFactorAt(soilPh)) / median(years.map((course) => course(DAYS)));
    });
    const ratio = alkaline / acid;
    return {
      ratio: {
        model: `ratio ${ratio.toFixed(2)} (half-lives ${alkaline.toFixed(0)} and ${acid.toFixed(0)} d)`,
        agrees: ratio >= RATIO.low && ratio <= RATIO.high,
      },
    };
  },
});
