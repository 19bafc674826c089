import { type SharedSeason, type TraceSet, traceSet } from '../analysis/seasonTraceSet.ts';
import type { StationClimate } from '../analysis/stationClimate.ts';
import type { KnownSeasons } from './pairAnswers.ts';
import { sharedSeasonOf } from './pairAnswers.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';

/** Seasons held at once: each has the traces of all its years, some 300 kB while a season is under way. */
const HELD = 8;

/** What questions of one season share. */
export interface SeasonInCommon {
  readonly set: TraceSet;
  readonly known: KnownSeasons;
}

/** Seasons of questions that come one after the other: equal ones are worked out once. */
export interface SharedSeasons {
  of(resolved: ResolvedQuestion, climate: StationClimate): SeasonInCommon;
}

/**
 * Remembers the last few seasons. Questions share one where station, spray date, soil, as-of day, horizon, odds limit,
 * outlook and assumptions are the same; residual, crop and planting date may differ. A shared season gives the same
 * figures, to the last bit, as one of its own.
 */
export function sharedSeasons(): SharedSeasons {
  const held = new Map<string, SeasonInCommon & { readonly climate: StationClimate }>();
  return {
    of(resolved, climate) {
      const shared = sharedSeasonOf([resolved], climate, resolved.plantDay);
      const key = keyOf(shared, resolved);
      const found = held.get(key);
      if (found?.climate === climate) return found;
      const season = { climate, set: traceSet(climate, shared), known: new Map() };
      held.delete(key);
      held.set(key, season);
      const oldest = held.keys().next().value;
      if (held.size > HELD && oldest !== undefined) held.delete(oldest);
      return season;
    },
  };
}

function keyOf(shared: SharedSeason, { question }: ResolvedQuestion): string {
  const { layer, asOfDay, base, restOfSeasonRain, irrigation, assumptions, appliedDay, horizonDays } = shared;
  const { station, oddsLimit, outlook } = question;
  return JSON.stringify([
    ...[station, appliedDay, asOfDay, horizonDays, oddsLimit, restOfSeasonRain],
    ...[layer, base, irrigation, assumptions, outlook],
  ]);
}
