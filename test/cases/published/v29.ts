import { middleHalfLife, soilOf, yearsOf } from './dissipation.ts';
import { figuresOf } from './figures.ts';
import { placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { bandMeets, bandRule, sayDays } from './rules.ts';

const DAYS = 30;
const AT_MOST_DAYS = 10;

export const v29 = runCase({
  id: 'V29',
  source: {
    title: 'Amicarbazone and other Group 5 herbicides: dissipation in Tennessee',
    publisher: 'Weed Technology',
    year: 2024,
  },
  measured: 'amicarbazone, atrazine, metribuzin, Tennessee, warm with enough rain: half-lives under 10 d',
  assumptions: [
    `weather of all years at ${placeName('greer')}; applied 15 May, followed for ${DAYS} d; loam`,
    'half-lives from the catalogue, which rest on other sources; it does not hold amicarbazone',
  ],
  needsRecords: true,
  checks: {
    atrazine: { measured: 'atrazine under 10 d', ...bandRule, recorded: 'not agreed' },
    metribuzin: { measured: 'metribuzin under 10 d', ...bandRule, recorded: 'agreed' },
  },
  why: 'metribuzin is inside the range; atrazine is lost more slowly than measured; earlier use speeds its loss, and the history of the plots is not given',
  async run(places) {
    const climate = await places.climate('greer');
    const judged = (active: string) => {
      const { response, halfLife } = figuresOf(active);
      const years = yearsOf(climate, { layer: soilOf(), response, month: 5, day: 15, days: DAYS });
      const days = middleHalfLife(years, halfLife, 0, DAYS);
      return { model: `${active} ${sayDays(days)}`, agrees: bandMeets(days, 0, AT_MOST_DAYS) };
    };
    return { atrazine: judged('atrazine'), metribuzin: judged('metribuzin') };
  },
});
