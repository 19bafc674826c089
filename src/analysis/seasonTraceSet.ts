import { demandBreakdownDays } from '../model/odds/demand.ts';
import { type BreakdownResponse, responseKey } from '../model/run/breakdownSums.ts';
import { irrigationCourse } from '../model/weather/ownRecords.ts';
import { type BreakdownRecord, breakdownRecord } from './breakdownRecord.ts';
import { type HistoricalYear, historicalYears } from './historicalYears.ts';
import type { SeasonQuestion } from './seasonQuestion.ts';
import type { StationClimate } from './stationClimate.ts';
import { seasonTraces, type Trace } from './traces.ts';

/** The courses of one season, shared by all residuals, crops and dates that are asked about it. */
export interface TraceSet {
  readonly climate: StationClimate;
  /** Days from the application that are observed. */
  readonly observedDays: number;
  record(response: BreakdownResponse): BreakdownRecord;
  /** The usable years of a window; the same years are the same list. @throws {MissingDataError} TOO_FEW_YEARS */
  years(windowDays: number): readonly HistoricalYear[];
  /** Demand of an interval over some years; residuals that break down alike share it. [breakdown days] */
  demand(response: BreakdownResponse, years: readonly HistoricalYear[], intervalDays: number): number;
  /** The traces of some years, up to the set's horizon. */
  traces(response: BreakdownResponse, years: readonly HistoricalYear[]): readonly Trace[];
}

/** What all questions of a set have in common. */
export type SharedSeason = Pick<
  SeasonQuestion,
  'layer' | 'asOfDay' | 'base' | 'restOfSeasonRain' | 'irrigation' | 'assumptions'
> & {
  readonly appliedDay: number;
  /** Days from the application to follow [d]. */
  readonly horizonDays: number;
};

/** Prepares the traces of a season; each response and year is run once, when it is first asked for. */
export function traceSet(climate: StationClimate, shared: SharedSeason): TraceSet {
  const { layer, appliedDay, assumptions, horizonDays } = shared;
  const observedDays = Math.max(0, (shared.asOfDay ?? appliedDay - 1) - appliedDay + 1);
  const options = {
    start: appliedDay - climate.series.firstDay,
    observedDays,
    restOfSeasonRain: shared.restOfSeasonRain,
    irrigation: irrigationCourse(shared.irrigation ?? [], appliedDay, horizonDays),
    horizonDays,
    meltMmPerDegreeDay: assumptions.meltMmPerDegreeDay,
    basis: assumptions,
  };
  const records = new Map<string, BreakdownRecord>();
  const known = new Map<string, Map<number, Trace>>();
  const byList = new Map<readonly HistoricalYear[], Map<string, Trace[]>>();
  const record = (response: BreakdownResponse) => {
    const key = responseKey(response);
    const found = records.get(key) ?? breakdownRecord(climate, layer, response, assumptions);
    records.set(key, found);
    return found;
  };
  const demands = new Map<readonly HistoricalYear[], Map<string, number>>();
  const demandOf = (response: BreakdownResponse, wanted: readonly HistoricalYear[], intervalDays: number) => {
    const { labelSums } = record(response);
    return demandBreakdownDays(
      wanted.map(({ start }) => labelSums[start + intervalDays] - labelSums[start]),
      intervalDays,
      assumptions.demandFloorFraction,
    );
  };
  const byWindow = new Map<number, readonly HistoricalYear[]>();
  const byYears = new Map<string, readonly HistoricalYear[]>();
  const years = (windowDays: number) => {
    const found = byWindow.get(windowDays);
    if (found) return found;
    const usable = historicalYears(climate, appliedDay, windowDays, shared.base);
    const key = usable.map(({ year }) => year).join(' ');
    const same = byYears.get(key) ?? usable;
    byYears.set(key, same);
    byWindow.set(windowDays, same);
    return same;
  };
  return {
    climate,
    observedDays,
    record,
    years,
    demand(response, wanted, intervalDays) {
      const ofList = demands.get(wanted) ?? new Map<string, number>();
      demands.set(wanted, ofList);
      const key = `${responseKey(response)} ${intervalDays}`;
      const demand = ofList.get(key) ?? demandOf(response, wanted, intervalDays);
      ofList.set(key, demand);
      return demand;
    },
    traces(response, wanted) {
      const key = responseKey(response);
      const ofList = byList.get(wanted) ?? new Map<string, Trace[]>();
      byList.set(wanted, ofList);
      const ready = ofList.get(key);
      if (ready) return ready;
      const byStart = known.get(key) ?? new Map<number, Trace>();
      known.set(key, byStart);
      const missing = wanted.filter(({ start }) => !byStart.has(start));
      const run = seasonTraces(climate, record(response), layer, response, missing, options);
      for (const [index, { start }] of missing.entries()) byStart.set(start, run[index]);
      const traces = wanted.flatMap(({ start }) => byStart.get(start) ?? []);
      ofList.set(key, traces);
      return traces;
    },
  };
}
