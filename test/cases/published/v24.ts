import { impliedHalfLife, middleHalfLife, soilOf, yearsOf } from './dissipation.ts';
import { figuresOf } from './figures.ts';
import { placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { bandMeets, bandRule, sayDays } from './rules.ts';

const SEASON_DAYS = 140;
const DAY_60 = impliedHalfLife(60, 0.1);
const SEASON = impliedHalfLife(SEASON_DAYS, 0.02);

export const v24 = runCase({
  id: 'V24',
  source: {
    title: 'Band-applied atrazine in soil',
    publisher: 'Journal of Environmental Quality 29(4), 1291-1297',
    year: 2000,
  },
  measured: 'atrazine, Minnesota, 240 mm of rain by day 60: 90 % gone then, 98 % by the end of the season',
  assumptions: [
    `the years at ${placeName('milwaukee')} whose first 60 d brought 216-264 mm; applied 10 May; season end after ${SEASON_DAYS} d; loam`,
    `the losses stand for half-lives of ${DAY_60.toFixed(0)} and ${SEASON.toFixed(0)} d`,
  ],
  needsRecords: true,
  checks: {
    day60: { measured: `half-life ${DAY_60.toFixed(0)} d over 60 d`, ...bandRule, recorded: 'agreed' },
    season: { measured: `half-life ${SEASON.toFixed(0)} d over the season`, ...bandRule, recorded: 'agreed' },
  },
  why: 'inside the range at both dates: slower than measured at 60 d, faster by the end',
  async run(places) {
    const { response, halfLife } = figuresOf('atrazine');
    const years = yearsOf(await places.climate('milwaukee'), {
      layer: soilOf(),
      response,
      month: 5,
      day: 10,
      days: SEASON_DAYS,
      rain: { overDays: 60, fromMm: 216, toMm: 264 },
    });
    const day60 = middleHalfLife(years, halfLife, 0, 60);
    const season = middleHalfLife(years, halfLife, 0, SEASON_DAYS);
    return {
      day60: {
        model: `${sayDays(day60)} over 60 d (${years.length} years)`,
        agrees: bandMeets(day60, DAY_60),
      },
      season: { model: `${sayDays(season)} over the season`, agrees: bandMeets(season, SEASON) },
    };
  },
});
