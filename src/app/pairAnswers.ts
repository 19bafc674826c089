import { applicationKey } from '../analysis/applications.ts';
import { fieldSeason } from '../analysis/fieldSeason.ts';
import { type PairSeason, pairSeason } from '../analysis/pairSeason.ts';
import type { TraceSet } from '../analysis/seasonTraceSet.ts';
import { isoDateOf } from '../calendar.ts';
import { DrywakeError } from '../errors.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { Unjudged } from '../schema/comparison.ts';
import type { LabelEntry } from '../schema/labelEntry.ts';
import type { Question } from '../schema/question.ts';
import { fieldPartOf } from './fieldPart.ts';
import { carryingApplications, fieldLabelDay } from './fieldTreatments.ts';
import {
  conditionedTreatment,
  type OtherQuestion,
  type TreatmentWithOthers,
  withOthers,
} from './preparedTreatments.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';
import { NEUTRAL } from './say.ts';
import { seasonQuestionOf } from './seasonQuestionOf.ts';
import { settleConditions } from './settleConditions.ts';
import type { StationWeather } from './stationWeather.ts';

/** What a question about many pairs does not hold. */
export const NOTHING_FOUND = { evidence: [], zones: [] } satisfies Partial<Question>;

/** A treatment and a crop to be judged together, and what the pair is called in a list. */
export interface Pair {
  readonly name: string;
  readonly question: Question;
  /** The user's own label entry that the treatment goes by; null where the catalogue counts. */
  readonly entry: LabelEntry | null;
}

/** A pair of residual and crop that can be judged; without a season where no carryover is modelled. */
export interface JudgedPair {
  readonly resolved: ResolvedQuestion;
  readonly season: PairSeason | null;
  readonly labelDate: string;
}

/** What is missing before a pair can be judged: told, not thrown. */
const TOLD = ['INTERVAL_MISSING', 'HALF_LIFE_MISSING', 'TOO_FEW_YEARS', 'CROP_UNKNOWN'] as const;

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

/** A pair with all that its labels say in its weather. */
export interface ResolvedPair {
  readonly pair: Pair;
  readonly resolved: ResolvedQuestion;
}

/**
 * Looks pairs up, each with the field's other treatments; those that cannot be judged are told apart.
 * @param pairs questions that differ in residual and crop alone
 */
export function resolveAll(
  pairs: readonly Pair[],
  others: readonly OtherQuestion[],
  weather: StationWeather,
  catalogue: Catalogue,
): { resolved: ResolvedPair[]; unjudged: Unjudged[] } {
  if (pairs.length === 0) return { resolved: [], unjudged: [] };
  const ofField = fieldPartOf(pairs[0].question);
  const all = pairs.map((pair) =>
    judgedOrTold(pair.name, () => withOthers(pair.question, pair.entry, others, catalogue, ofField)),
  );
  return {
    resolved: all.flatMap((one, index) =>
      isUnjudged(one) ? [] : [{ pair: pairs[index], resolved: settled(one, weather, catalogue) }],
    ),
    unjudged: all.filter(isUnjudged),
  };
}

/** A treatment with the interval that its conditions leave; of a treatment alone they are not put into words. */
const settled = (
  treatment: TreatmentWithOthers,
  weather: StationWeather,
  catalogue: Catalogue,
): ResolvedQuestion =>
  treatment.beside.length === 0
    ? settleConditions(treatment.main.resolved, weather, catalogue).resolved
    : conditionedTreatment(treatment, weather, catalogue, NEUTRAL).resolved;

/** Seasons of pairs by their applications: crops with the same intervals share one. */
export type KnownSeasons = Map<string, PairSeason>;

/** Prepares the answers of a pair. */
export function judgePair(
  resolved: ResolvedQuestion,
  set: TraceSet,
  weather: StationWeather,
  known: KnownSeasons,
): JudgedPair {
  return {
    resolved,
    labelDate: isoDateOf(fieldLabelDay(resolved)),
    season: carryingApplications(resolved).length > 0 ? seasonOf(resolved, set, weather, known) : null,
  };
}

/** One application of the shared season goes over its traces; several, or one of another day, have a season of their own. */
function seasonOf(
  resolved: ResolvedQuestion,
  set: TraceSet,
  { climate }: StationWeather,
  known: KnownSeasons,
): PairSeason {
  const applications = carryingApplications(resolved);
  const key = applications.map(applicationKey).join(', ');
  const found = known.get(key);
  if (found !== undefined) return found;
  const asked = seasonQuestionOf(resolved, climate.series);
  const [first, ...more] = applications;
  const isShared = more.length === 0 && first.appliedDay === resolved.application.appliedDay;
  const season = isShared ? pairSeason(set, first, asked) : fieldSeason(climate, asked);
  known.set(key, season);
  return season;
}

/** ISO date of an offset of a season; null stays null. */
export const dateOfOffset = ({ firstDay }: PairSeason, offset: number | null): string | null =>
  offset === null ? null : isoDateOf(firstDay + offset);
