import { middleHalfLife, soilOf, yearsOf } from './dissipation.ts';
import { defaultResponse, figuresOf } from './figures.ts';
import { placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { bandMeets, bandRule, sayDays } from './rules.ts';

const DAYS = 60;
const MEASURED_DAYS = 27;

export const v27 = runCase({
  id: 'V27',
  source: {
    title: 'Thesis on flumioxazin and indaziflam in pecan',
    publisher: 'University of Georgia',
    year: 2021,
  },
  measured: 'flumioxazin, Georgia pecan orchard: half-life 27 d',
  assumptions: [
    `weather of all years at ${placeName('greer')}; applied 1 April, followed for ${DAYS} d; loam`,
    'half-life from the catalogue, which rests on another source; the default warmth response, as the catalogue’s own comes from this thesis',
  ],
  needsRecords: true,
  checks: { halfLife: { measured: 'half-life 27 d', ...bandRule, recorded: 'agreed' } },
  why: 'inside the range, on the short side',
  async run(places) {
    const years = yearsOf(await places.climate('greer'), {
      layer: soilOf(),
      response: defaultResponse,
      month: 4,
      day: 1,
      days: DAYS,
    });
    const days = middleHalfLife(years, figuresOf('flumioxazin').halfLife, 0, DAYS);
    return { halfLife: { model: sayDays(days), agrees: bandMeets(days, MEASURED_DAYS) } };
  },
});
