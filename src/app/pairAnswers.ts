import { type PairSeason, pairHorizon, pairSeason } from '../analysis/pairSeason.ts';
import type { SharedSeason, TraceSet } from '../analysis/seasonTraceSet.ts';
import { traceSet } from '../analysis/seasonTraceSet.ts';
import type { StationClimate } from '../analysis/stationClimate.ts';
import { isoDateOf } from '../calendar.ts';
import { DrywakeError } from '../errors.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { Unjudged } from '../schema/comparison.ts';
import type { Question } from '../schema/question.ts';
import type { StationWeather } from './climateCache.ts';
import { carriesOver, type ResolvedQuestion, resolveQuestion } from './resolveQuestion.ts';
import { seasonQuestionOf } from './seasonQuestionOf.ts';
import { withConditions } from './withConditions.ts';

/** What a question of a comparison does not hold: it asks of one treatment by itself. */
export const NOTHING_BESIDE = { evidence: [], otherTreatments: [], zones: [] } satisfies Partial<Question>;

/** A pair of residual and crop that can be judged; without a season where no carryover is modelled. */
export interface JudgedPair {
  readonly resolved: ResolvedQuestion;
  readonly season: PairSeason | null;
  readonly labelDate: string;
}

/** What is missing before a pair can be judged: told, not thrown. */
const TOLD = ['INTERVAL_MISSING', 'HALF_LIFE_MISSING', 'TOO_FEW_YEARS'] as const;

/** Runs work; what only says that a pair cannot be judged comes back as words. */
export function judgedOrTold<T>(name: string, work: () => T): T | Unjudged {
  try {
    return work();
  } catch (error) {
    const code = error instanceof DrywakeError ? TOLD.find((one) => one === error.code) : undefined;
    if (code === undefined) throw error;
    return { name, code, reason: (error as DrywakeError).message };
  }
}

export const isUnjudged = (one: object): one is Unjudged => 'reason' in one;

/** Resolves questions by name; those that cannot be are told apart. */
export function resolveAll(
  questions: readonly { readonly name: string; readonly question: Question }[],
  catalogue: Catalogue,
): { resolved: ResolvedQuestion[]; unjudged: Unjudged[] } {
  const all = questions.map(({ name, question }) =>
    judgedOrTold(name, () => resolveQuestion(question, catalogue)),
  );
  return {
    resolved: all.filter((one): one is ResolvedQuestion => !isUnjudged(one)),
    unjudged: all.filter(isUnjudged),
  };
}

/** The questions with the intervals that their labels' conditions leave, as a single answer has them. */
export const conditionedAll = (
  all: readonly ResolvedQuestion[],
  weather: StationWeather,
  catalogue: Catalogue,
): ResolvedQuestion[] => all.map((one) => withConditions(one, weather, catalogue).resolved);

/** The season that all of some questions share: they differ in residual, crop and planting date only. */
export const sharedSeason = (
  all: readonly ResolvedQuestion[],
  { climate }: StationWeather,
  lastPlantDay: number,
): TraceSet => traceSet(climate, sharedSeasonOf(all, climate, lastPlantDay));

/** What a season's traces hang on. */
export const sharedSeasonOf = (
  all: readonly ResolvedQuestion[],
  { series }: StationClimate,
  lastPlantDay: number,
): SharedSeason => ({
  ...seasonQuestionOf(all[0], series),
  appliedDay: all[0].application.appliedDay,
  horizonDays: Math.max(...all.map(({ application }) => pairHorizon(application, lastPlantDay))),
});

/** Seasons of pairs by their application: crops with the same interval share one. */
export type KnownSeasons = Map<string, PairSeason>;

/** Prepares the answers of a pair. */
export function judgePair(
  resolved: ResolvedQuestion,
  set: TraceSet,
  weather: StationWeather,
  known: KnownSeasons,
): JudgedPair {
  const { interval, application } = resolved;
  return {
    resolved,
    labelDate: isoDateOf(application.appliedDay + interval.lengthDays),
    season: carriesOver(resolved) ? seasonOf(resolved, set, weather, known) : null,
  };
}

function seasonOf(
  resolved: ResolvedQuestion,
  set: TraceSet,
  { climate }: StationWeather,
  known: KnownSeasons,
): PairSeason {
  const { application } = resolved;
  const { months, days } = application.interval;
  const key = JSON.stringify({ ...application, interval: [months, days] });
  const season = known.get(key) ?? pairSeason(set, application, seasonQuestionOf(resolved, climate.series));
  known.set(key, season);
  return season;
}

/** ISO date of an offset from the application; null stays null. */
export const dateOfOffset = ({ application }: ResolvedQuestion, offset: number | null): string | null =>
  offset === null ? null : isoDateOf(application.appliedDay + offset);
