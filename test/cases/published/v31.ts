import { breakdownRecord, dayNumberOf, type StationClimate, stationClimate } from '../../../src/index.ts';
import { assumptions } from '../seasonOf.ts';
import { soilOf } from './dissipation.ts';
import { figuresOf } from './figures.ts';
import { runCase } from './publishedCase.ts';
import { bandMeets, bandRule } from './rules.ts';

/** Season of 1989 as the source gives it. */
const SEASON = { days: 153, rainMm: 129, everyDays: 5, minTempC: 2.7, maxTempC: 23.2 } as const;
const LATITUDE_DEG = -31.5;
const MEASURED = { low: 12, high: 28 } as const;
const SITES_PH = [4.9, 5.8, 6.5] as const;

export const v31 = runCase({
  id: 'V31',
  source: {
    title:
      'Sulfonylurea herbicides applied to acidic sandy soils: movement, persistence and activity within the growing season',
    publisher: 'Australian Journal of Agricultural Research 43(5), 1157-1167',
    year: 1992,
  },
  measured:
    'chlorsulfuron and triasulfuron, Western Australian sandy loam, pH 4.9, limed 6.5, second site 5.8; 129 mm June-October 1989, 2.7-23.2 °C: half-life 12-28 d',
  assumptions: [
    `each day from 1 June to 31 October runs from 2.7 to 23.2 °C; the 129 mm come in equal falls every 5th day; latitude ${LATITUDE_DEG}°; layer half empty at the start`,
    'chlorsulfuron only, with the catalogue’s half-life, warmth response and pH slope: the slope of triasulfuron rests on this source',
    'the wetter 1990 season is left out: only two of its months are given',
  ],
  needsRecords: false,
  checks: {
    halfLives: {
      measured: '12-28 d over both sites and both actives',
      criterion: `for each of the three pH values: ${bandRule.criterion}`,
      fair: bandRule.fair,
      recorded: 'agreed',
    },
  },
  why: 'inside the range at all three pH values, at pH 6.5 barely',
  async run() {
    const { response, halfLife, phFactorAt } = figuresOf('chlorsulfuron');
    const { sums } = breakdownRecord(season(), soilOf('sandy loam'), response, assumptions);
    const halfLives = SITES_PH.map(
      (soilPh) => (SEASON.days * halfLife * phFactorAt(soilPh)) / sums[SEASON.days],
    );
    return {
      halfLives: {
        model: `${halfLives.map((days) => days.toFixed(0)).join(', ')} d at pH ${SITES_PH.join(', ')}`,
        agrees: halfLives.every((days) => bandMeets(days, MEASURED.low, MEASURED.high)),
      },
    };
  },
});

function season(): StationClimate {
  const { days, everyDays } = SEASON;
  const fallMm = SEASON.rainMm / Math.ceil(days / everyDays);
  const series = {
    station: {
      id: 'v31',
      name: 'Season of case V31',
      latitudeDeg: LATITUDE_DEG,
      longitudeDeg: null,
      elevationM: null,
      invented: true,
    },
    firstDay: dayNumberOf(1989, 6, 1),
    days,
    rainMm: Float64Array.from({ length: days }, (_, day) => (day % everyDays === 0 ? fallMm : 0)),
    maxTempC: new Float64Array(days).fill(SEASON.maxTempC),
    minTempC: new Float64Array(days).fill(SEASON.minTempC),
    rainOrigin: new Uint8Array(days),
    tempOrigin: new Uint8Array(days),
  };
  return stationClimate(series, LATITUDE_DEG, assumptions);
}
