import { fileURLToPath } from 'node:url';
import {
  type AnswerDeps,
  type Application,
  assumptionsSchema,
  createClimateCache,
  createDemoReader,
  loadCatalogue,
  parseIsoDate,
  prepareSeries,
  readDataFolder,
  type SeasonQuestion,
  stationClimate,
  topsoilLayer,
} from '../../src/index.ts';

/** What the examples of doc comments take for granted. */

/** The demo's reader, record, gapless series and climate. */
export const weather = createDemoReader();
export const record = await weather.record('demo-invented');
export const series = prepareSeries(record);
export const assumptions = assumptionsSchema.parse({});
export const climate = stationClimate(series, 46, assumptions);

/** The program's own catalogue, and what answering needs. */
export const catalogue = loadCatalogue(readDataFolder(new URL('../../data', import.meta.url)));
export const version = 'example';
export const deps: AnswerDeps = { version, catalogue, climates: createClimateCache(weather) };

/** Loam with 2 % organic matter under stubble, and an active's usual response. */
export const layer = topsoilLayer({ textureClass: 'loam' }, 2, 0.6);
export const response: Application['response'] = {
  q10: 2.58,
  moisture: 'dryness',
  moistureExponent: 0.5,
  snowStopsMm: 5,
};

/** An interval of 4 months from 14 August, planting on 10 May. */
export const season: SeasonQuestion = {
  layer,
  applications: [
    {
      ...{ appliedDay: parseIsoDate('2026-08-14'), interval: { months: 4, days: 0 }, load: 1 },
      ...{ canopyFraction: 0, halfLife: 9, siteFactor: 1, response, group: 'any' },
    },
  ],
  plantDay: parseIsoDate('2027-05-10'),
  oddsLimit: 0.1,
  base: {},
  restOfSeasonRain: 1,
  assumptions,
};

/** A small file with the record of one station. */
export const recordFile = fileURLToPath(new URL('../fixtures/weather/TST00000001.dly', import.meta.url));

/** The date axis of a chart, and the dates marked on it. */
export const ruler = {
  ...{ fromMs: Date.parse('2026-08-01'), toMs: Date.parse('2027-08-01') },
  ...{ widthPx: 600, leftPx: 40, rightPx: 20 },
};
export const marks = { plantOn: '2027-05-10', labelDate: '2026-12-14', clearDate: '2027-06-04' };
