import { pairHorizon } from '../analysis/pairSeason.ts';
import { type SharedSeason, type TraceSet, traceSet } from '../analysis/seasonTraceSet.ts';
import type { StationClimate } from '../analysis/stationClimate.ts';
import type { ControlWeeks } from '../analysis/weedControl.ts';
import type { Comparison } from '../schema/comparison.ts';
import { carryingApplications } from './fieldTreatments.ts';
import type { KnownSeasons } from './pairAnswers.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';
import { seasonQuestionOf } from './seasonQuestionOf.ts';

/** Seasons held at once: each has the traces of all its years, some 300 kB while a season is under way. */
const HELD = 8;
/** What a season may gather before it is worked out anew, in pairs on bare soil of some 4 kB each. */
const MOST_GATHERED = 2000;
/** What a pair with spray on leaves, or with several treatments, counts for: it keeps a course for each year. */
const OTHER_THAN_PLAIN = 100;
/** Horizons are rounded up to whole years, so that crops with longer and shorter labels share a season. [d] */
const HORIZON_STEP_DAYS = 366;

/** What questions of one season share. */
export interface SeasonInCommon {
  readonly set: TraceSet;
  readonly known: KnownSeasons;
  /** Weeks of control by what they hang on; they hang on no crop. */
  readonly weeks: Map<string, ControlWeeks>;
  /** Odds that rain washes the spray in, by planting day; they hang on no crop either. */
  readonly activations: Map<number, NonNullable<Comparison['activation']>>;
}

/** Seasons of questions that come one after the other: equal ones are worked out once. */
export interface SharedSeasons {
  /** @param all questions of one field and spray date, at least one; they differ in residual, crop and planting date */
  of(all: readonly ResolvedQuestion[], climate: StationClimate, lastPlantDay: number): SeasonInCommon;
}

/**
 * Remembers the last few seasons. Questions share one where station, spray date, soil, as-of day, odds limit,
 * outlook and assumptions are the same; residual, crop and planting date may differ. A shared season gives the same
 * figures, to the last bit, as one of its own.
 */
export function sharedSeasons(): SharedSeasons {
  const held = new Map<string, SeasonInCommon & { readonly climate: StationClimate; gathered: number }>();
  return {
    of(all, climate, lastPlantDay) {
      const shared = sharedSeasonOf(all, climate, lastPlantDay);
      const key = keyOf(shared, all[0]);
      const found = held.get(key);
      const gathers = all.reduce((sum, one) => sum + (isPlain(one) ? 1 : OTHER_THAN_PLAIN), 0);
      if (found?.climate === climate && found.gathered + gathers <= MOST_GATHERED) {
        found.gathered += gathers;
        return found;
      }
      const season = {
        climate,
        set: traceSet(climate, shared),
        known: new Map(),
        weeks: new Map(),
        activations: new Map(),
        gathered: gathers,
      };
      held.delete(key);
      held.set(key, season);
      const oldest = held.keys().next().value;
      if (held.size > HELD && oldest !== undefined) held.delete(oldest);
      return season;
    },
  };
}

/** One treatment on bare soil. */
const isPlain = (resolved: ResolvedQuestion): boolean =>
  carryingApplications(resolved).length <= 1 && resolved.application.canopyFraction === 0;

/** What a season's traces hang on. */
function sharedSeasonOf(
  all: readonly ResolvedQuestion[],
  { series }: StationClimate,
  lastPlantDay: number,
): SharedSeason {
  const longest = Math.max(...all.map(({ application }) => pairHorizon(application, lastPlantDay)));
  return {
    ...seasonQuestionOf(all[0], series),
    appliedDay: all[0].application.appliedDay,
    horizonDays: Math.ceil(longest / HORIZON_STEP_DAYS) * HORIZON_STEP_DAYS,
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
