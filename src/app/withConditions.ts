import { isoDateOf } from '../calendar.ts';
import { sayInterval } from '../catalogue/intervalLength.ts';
import { titleOf } from '../catalogue/titleOf.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { Clause, TracedClause } from '../schema/clauses.ts';
import type { LabelCondition } from '../schema/labelCondition.ts';
import type { Provenance } from '../schema/provenance.ts';
import { conditionName, conditionWords, intervalsInWords } from './conditionWords.ts';
import { oncePerZone, type TakenClause } from './oncePerZone.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';
import type { Say } from './say.ts';
import { otherwiseOf, type SettledQuestion, settleConditions } from './settleConditions.ts';
import type { StationWeather } from './stationWeather.ts';

/** A settled question with its conditions as answers tell them. */
export interface ConditionedQuestion extends Omit<SettledQuestion, 'judged'> {
  readonly conditions: readonly LabelCondition[];
}

/** {@link settleConditions}, and the conditions in words. @throws {InvalidInputError} DATE_OUTSIDE_RECORD */
export function withConditions(
  asked: ResolvedQuestion,
  weather: StationWeather,
  catalogue: Catalogue,
  say: Say,
): ConditionedQuestion {
  const { judged, ...settled } = settleConditions(asked, weather, catalogue);
  const taken = judged.map((one) => ({ ...one, alsoIfMet: [] }));
  return { ...settled, conditions: oncePerZone(taken).map((one) => conditionOf(one, catalogue, say)) };
}

/** Mark and sources of a clause of the catalogue; null for one of the user's own label. */
const provenanceOf = (clause: Clause | TracedClause): Provenance | null =>
  'mark' in clause && 'sources' in clause ? (clause as TracedClause) : null;

function conditionOf(
  { judged, setsDate, alsoIfMet }: TakenClause,
  { sources }: Catalogue,
  say: Say,
): LabelCondition {
  const { clause, state, odds, range, amountMm, requiredMm, byDay, intervalIfMet, intervalIfNot } = judged;
  const traced = provenanceOf(clause);
  const titles = traced?.sources.map((id) => titleOf(id, sources));
  return {
    kind: clause.kind,
    name: conditionName(judged),
    text: conditionWords(judged, say, alsoIfMet),
    state,
    oddsMet: odds,
    range,
    amountMm,
    requiredMm,
    byDate: byDay === null ? null : isoDateOf(byDay),
    intervalIfMet: intervalsInWords([intervalIfMet, ...alsoIfMet]),
    intervalIfNot: intervalIfNot && sayInterval(intervalIfNot),
    otherwise: otherwiseOf(clause),
    setsDate,
    source: titles?.join('; ') ?? null,
    mark: traced?.mark ?? 'own label',
  };
}
