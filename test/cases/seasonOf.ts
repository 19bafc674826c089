import {
  type Application,
  assumptionsSchema,
  createFileReader,
  type Interval,
  isoDateOf,
  parseIsoDate,
  prepareSeries,
  type SeasonOdds,
  type SeasonQuestion,
  type StationClimate,
  seasonOdds,
  stationClimate,
  topsoilLayer,
} from '../../src/index.ts';

export const assumptions = assumptionsSchema.parse({});

/** A field half-life of 60 days, full rate on bare soil, default responses. */
export const plainApplication: Application = {
  appliedDay: parseIsoDate('2020-08-10'),
  interval: { months: 9, days: 0 },
  load: 1,
  canopyFraction: 0,
  halfLife: 0.5 * 60,
  siteFactor: 1,
  response: { q10: 2.58, moisture: 'dryness', moistureExponent: 0.5, snowStopsMm: 5 },
  group: 'any',
};

/** A question on loam with 2 % organic matter under stubble, 1981-2018, odds limit 0.10. */
export const plainQuestion: SeasonQuestion = {
  layer: topsoilLayer({ textureClass: 'loam' }, 2, 0.6),
  applications: [plainApplication],
  plantDay: parseIsoDate('2021-05-10'),
  oddsLimit: 0.1,
  base: { from: 1981, to: 2018 },
  restOfSeasonRain: 1,
  assumptions,
};

export interface PlainCase {
  readonly appliedOn?: string;
  readonly interval: Interval;
  readonly plantOn: string;
  readonly over?: Partial<SeasonQuestion>;
}

/** Answers the plain question with another date, interval or whatever `over` changes. */
export function answer(
  climate: StationClimate,
  { appliedOn = '2020-08-10', interval, plantOn, over }: PlainCase,
): SeasonOdds {
  return seasonOdds(climate, {
    ...plainQuestion,
    applications: [{ ...plainApplication, appliedDay: parseIsoDate(appliedOn), interval }],
    plantDay: parseIsoDate(plantOn),
    ...over,
  });
}

/** Date of an offset from the first application; null stays null. */
export const dateAt = (odds: SeasonOdds, offset: number | null): string | null =>
  offset === null ? null : isoDateOf(odds.firstDay + offset);

/** Climate of one real station read straight from its file. */
export async function climateOf(
  folder: string,
  station: string,
  latitudeDeg: number,
): Promise<StationClimate> {
  const record = await createFileReader([folder]).record(station);
  return stationClimate(prepareSeries(record), latitudeDeg, assumptions);
}
