import { impliedHalfLife, middleHalfLife, soilOf, yearsOf } from './dissipation.ts';
import { figuresOf } from './figures.ts';
import { placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { bandMeets, bandRule, sayDays } from './rules.ts';

const SEASON_DAYS = 112;
const SEASON = impliedHalfLife(SEASON_DAYS, 0.3);

export const v36 = runCase({
  id: 'V36',
  source: {
    title:
      'Persistence and simulation of cyanazine, metribuzin and atrazine in Regina heavy clay (title not visible)',
    publisher: 'a Canadian journal',
    year: 1981,
  },
  measured:
    'atrazine and metribuzin 1 kg/ha in June, Saskatchewan heavy clay: about 30 % left at the end of the season, nothing below 10 cm',
  assumptions: [
    `weather of all years at ${placeName('saskatoon')}; clay; applied 10 June, season end 30 September`,
    `30 % left stands for a half-life of ${SEASON.toFixed(0)} d; half-lives from the catalogue, which rest on other sources; it does not hold cyanazine`,
  ],
  needsRecords: true,
  checks: {
    atrazine: { measured: `atrazine ${SEASON.toFixed(0)} d`, ...bandRule, recorded: 'not agreed' },
    metribuzin: { measured: `metribuzin ${SEASON.toFixed(0)} d`, ...bandRule, recorded: 'not agreed' },
  },
  why: 'too fast by two and three times: the catalogue’s 29 and 19 d come from one Kansas table; another gives 61 and 40 d, which would fit',
  async run(places) {
    const climate = await places.climate('saskatoon');
    const judged = (active: string) => {
      const { response, halfLife } = figuresOf(active);
      const years = yearsOf(climate, {
        layer: soilOf('clay'),
        response,
        month: 6,
        day: 10,
        days: SEASON_DAYS,
      });
      const days = middleHalfLife(years, halfLife, 0, SEASON_DAYS);
      return { model: `${active} ${sayDays(days)}`, agrees: bandMeets(days, SEASON) };
    };
    return { atrazine: judged('atrazine'), metribuzin: judged('metribuzin') };
  },
});
