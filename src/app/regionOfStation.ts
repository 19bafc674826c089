import { forgetRuns } from '../analysis/breakdownRecord.ts';
import { lastDateBefore, nextDate } from '../analysis/calendarDates.ts';
import { hasReached } from '../analysis/hasReached.ts';
import { type AgainstYears, againstYears, regionSeason, summerOf } from '../analysis/regionSeason.ts';
import { type StationClimate, stationClimate } from '../analysis/stationClimate.ts';
import { isoDateOf } from '../calendar.ts';
import { DrywakeError, MissingDataError } from '../errors.ts';
import { reusedColumns } from '../model/run/columns.ts';
import { topsoilLayer } from '../model/water/topsoilLayer.ts';
import { prepareSeries } from '../model/weather/prepareSeries.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import { ABSENT } from '../schema/codes.ts';
import type { CountingWindow } from '../schema/countingWindow.ts';
import type { RegionFigures, RegionQuestion, RegionRow } from '../schema/region.ts';
import { DEFAULT_ORGANIC_MATTER_PERCENT } from '../schema/soil.ts';
import type { DailySeries, StationRecord } from '../schema/weather.ts';
import type { LentRecord } from './lentTemperatures.ts';
import { type ResolvedQuestion, resolveQuestion } from './resolveQuestion.ts';
import { seasonQuestionOf } from './seasonQuestionOf.ts';

/** A region's question, looked up once for all stations. */
export interface ResolvedRegion {
  readonly question: RegionQuestion;
  readonly resolved: ResolvedQuestion;
  readonly countingWindows: readonly CountingWindow[];
}

/** Looks up what all stations share. @throws {InvalidInputError | MissingDataError} as `resolveQuestion` does */
export function resolveRegion(question: RegionQuestion, catalogue: Catalogue): ResolvedRegion {
  const { states: _, box: __, soilByStation: ___, ...asked } = question;
  const resolved = resolveQuestion(
    { ...asked, station: 'any', fillFromNeighbours: false, gauge: [], irrigation: [], evidence: [] },
    catalogue,
  );
  const { country } = question;
  const countingWindows = catalogue.countingWindows.filter(
    (rule) => rule.country === country && rule.thresholdMm !== null,
  );
  return { question, resolved, countingWindows };
}

/** One station's row; what keeps it from answering is told in the row. Pure. */
export function regionOfStation(
  { record, temperatureStation }: LentRecord,
  region: ResolvedRegion,
): RegionRow {
  const { station, firstDay, rainTenthsMm } = record;
  const { question } = region;
  const lastDay = firstDay + rainTenthsMm.length - 1;
  const row = {
    station: station.id,
    name: station.name,
    latitudeDeg: station.latitudeDeg,
    longitudeDeg: station.longitudeDeg,
    elevationM: station.elevationM,
    invented: station.invented,
    soilClass:
      ownSoil(question, station.id) ??
      question.soilClass ??
      (question.sandPercent === undefined ? 'loam' : 'sand and clay as given'),
    firstDate: isoDateOf(firstDay),
    lastDate: isoDateOf(lastDay),
    rainPercent: shareWithRain(rainTenthsMm) * 100,
    temperatureStation,
  };
  try {
    if (station.latitudeDeg === null) {
      throw new MissingDataError('LATITUDE_MISSING', 'The record does not say where the station lies.');
    }
    const climate = climateOf(record, station.latitudeDeg, question);
    const notNow = whyNotNow(question, climate.series);
    try {
      const figures = figuresOf(climate, region, notNow === null);
      return { ...row, figures, code: null, reason: null, notNow };
    } finally {
      forgetRuns(climate);
    }
  } catch (error) {
    if (!(error instanceof DrywakeError)) throw error;
    return { ...row, figures: null, code: error.code, reason: error.message, notNow: null };
  }
}

/** Memory for one station after the other: fresh columns for each would cost as much as the runs that fill them. */
const columns = reusedColumns();

/** The climate of a record, whose columns hold until the next one is asked for. */
function climateOf(record: StationRecord, latitudeDeg: number, { assume }: RegionQuestion): StationClimate {
  columns.reset();
  return stationClimate(prepareSeries(record, undefined, columns), latitudeDeg, assume, columns);
}

function shareWithRain(rainTenthsMm: Int32Array): number {
  let days = 0;
  for (let day = 0; day < rainTenthsMm.length; day++) if (rainTenthsMm[day] !== ABSENT) days++;
  return rainTenthsMm.length === 0 ? 0 : days / rainTenthsMm.length;
}

function whyNotNow({ asOf, appliedOn }: RegionQuestion, { firstDay, days }: DailySeries): string | null {
  if (asOf === undefined) return 'No as-of day is asked for.';
  if (asOf < appliedOn) return 'The as-of day lies before the application.';
  const lastDate = isoDateOf(firstDay + days - 1);
  if (asOf > lastDate) return `The record ends on ${lastDate}.`;
  return appliedOn < isoDateOf(firstDay) ? `The record begins on ${isoDateOf(firstDay)}.` : null;
}

function figuresOf(climate: StationClimate, region: ResolvedRegion, now: boolean): RegionFigures {
  const { question, resolved } = region;
  const { series, warmRain } = climate;
  const own = ownSoil(question, series.station.id);
  const layer =
    own === undefined
      ? resolved.layer
      : topsoilLayer(
          { textureClass: own },
          question.organicMatterPercent ?? DEFAULT_ORGANIC_MATTER_PERCENT,
          question.coverFraction,
        );
  const asked = now ? resolved : { ...resolved, question: { ...resolved.question, asOf: undefined } };
  const season = { ...seasonQuestionOf(asked, series), layer };
  const odds = regionSeason(climate, season);
  const { appliedDay } = resolved.application;
  const dateAt = (offset: number) => isoDateOf(appliedDay + offset);
  const asOfDay = season.asOfDay ?? null;
  const rainSums = runningSum(series.rainMm);
  const summer = summerOf(resolved.application);
  const through = (day: number) => (asOfDay === null ? day : Math.min(day, asOfDay));
  const clear = odds.clearOffset === null ? null : Math.ceil(odds.clearOffset);
  return {
    years: odds.years,
    labelDate: dateAt(odds.labelOffset),
    oddsNormal: odds.oddsNormal,
    oddsNow: odds.oddsNow,
    oddsRange: odds.range,
    labelTooShortShare: odds.labelTooShortShare,
    clearDate: clear === null ? null : dateAt(clear),
    daysAfterLabel: clear === null ? null : clear - odds.labelOffset,
    summerRain: told(againstYears(climate, rainSums, summer.from, through(summer.to), season.base)),
    warmRain:
      asOfDay === null ? null : told(againstYears(climate, warmRain, appliedDay, asOfDay, season.base)),
    counted: region.countingWindows.flatMap((rule) => counted(rule, climate, rainSums, appliedDay, asOfDay)),
  };
}

const told = (sum: AgainstYears | null): RegionFigures['summerRain'] =>
  sum && {
    fromDate: isoDateOf(sum.firstDay),
    throughDate: isoDateOf(sum.lastDay),
    mm: sum.mm,
    normalMm: sum.normalMm,
    percentOfNormal: sum.normalMm > 0 ? (sum.mm / sum.normalMm) * 100 : null,
    years: sum.years,
  };

/** A published sum against the rain of its window; none where the record does not hold the window. */
function counted(
  { id, region, from, to, thresholdMm }: CountingWindow,
  { series, windows }: StationClimate,
  rainSums: Float64Array,
  appliedDay: number,
  asOfDay: number | null,
): RegionFigures['counted'] {
  if (from === null || to === null || thresholdMm === null || asOfDay === null) return [];
  const end = nextDate(to, appliedDay);
  const first = lastDateBefore(from, end) - series.firstDay;
  const last = Math.min(end, asOfDay) - series.firstDay;
  if (last < first || !windows.usable(first, last - first + 1)) return [];
  const sumMm = rainSums[last + 1] - rainSums[first];
  const complete = asOfDay >= end;
  return [
    {
      id,
      region,
      thresholdMm,
      sumMm,
      complete,
      under: hasReached(sumMm, thresholdMm) ? false : complete ? true : null,
    },
  ];
}

function runningSum(values: Float64Array): Float64Array {
  const sums = columns.take(values.length + 1);
  sums[0] = 0;
  for (let i = 0; i < values.length; i++) sums[i + 1] = sums[i] + values[i];
  return sums;
}

/** The soil given for a station; a station may be called what every object has, such as "constructor". */
const ownSoil = ({ soilByStation }: Pick<ResolvedRegion['question'], 'soilByStation'>, id: string) =>
  Object.hasOwn(soilByStation, id) ? soilByStation[id] : undefined;
