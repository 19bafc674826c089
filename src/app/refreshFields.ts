import type { BroughtUp, FieldAnswer, Refresh } from '../schema/fieldAnswer.ts';
import type { FieldPlan, FieldRecord } from '../schema/fieldRecord.ts';
import type { FieldsStore } from '../store/fieldsStore.ts';
import { answerChanges, largestFirst, lastAnswerOf } from './answerChanges.ts';
import type { AnswerDeps } from './answerField.ts';
import { bringUp, type NewerWeather, NOT_ASKED } from './bringUp.ts';
import { fieldAnswers } from './fieldAnswers.ts';
import { modelOf } from './modelOf.ts';
import { type Say, sayIn } from './say.ts';

/** What a refresh works with. */
export interface RefreshDeps {
  readonly store: Pick<FieldsStore, 'fields' | 'lastAnswers' | 'keepAnswers'>;
  readonly answer: AnswerDeps;
  readonly weather: NewerWeather;
  /** The time, as an ISO text. */
  now(): string;
}

/**
 * Answers every planned crop of every field again, tells what has changed since the last time, and keeps the answers for
 * the next. A plan without an answer this time keeps its last one.
 * @param fetchNewer whether to ask the public records service for newer weather first
 */
export async function refreshFields(fetchNewer: boolean, deps: RefreshDeps): Promise<Refresh> {
  const { store, weather } = deps;
  const say = sayIn(deps.answer.wording);
  const at = deps.now();
  const { kept } = await store.fields.list();
  const records = kept.map(({ record }) => record);
  const brought: BroughtUp = fetchNewer ? await bringUp(stationsOf(records), weather) : NOT_ASKED;
  const stations = await weather.stations();
  const before = new Map(
    (await store.lastAnswers()).map((one) => [keyOf(one.fieldId, one.planId), one.answer] as const),
  );
  const model = modelOf(deps.answer.version);
  const result: Refresh = { at, weather: brought, answered: 0, changes: [], problems: [], model };
  const answers: Parameters<FieldsStore['keepAnswers']>[0] = [];
  for (const record of records) {
    const given = await fieldAnswers(record, stations, deps.answer);
    for (const [index, plan] of record.plans.entries()) {
      const ids = { fieldId: record.id, planId: plan.id };
      const was = before.get(keyOf(record.id, plan.id));
      const { problem, ...answer }: FieldAnswer = given[index];
      if (problem !== undefined) {
        result.problems.push({ ...ids, problem });
        if (was !== undefined) answers.push({ ...ids, answer: was });
        continue;
      }
      const is = lastAnswerOf(answer, plan, at.slice(0, 10));
      result.answered++;
      answers.push({ ...ids, answer: is });
      if (was !== undefined)
        result.changes.push(...answerChanges(ids, placeWords(record, plan, say), was, is, answer, say));
    }
  }
  await store.keepAnswers(answers);
  return { ...result, changes: largestFirst(result.changes) };
}

const keyOf = (fieldId: string, planId: string): string => `${fieldId} ${planId}`;

const stationsOf = (records: readonly FieldRecord[]): string[] =>
  [...new Set(records.flatMap(({ station }) => station ?? []))].sort();

const placeWords = ({ farm, name }: FieldRecord, { crop, plantOn }: FieldPlan, { dates }: Say): string =>
  `${farm === '' ? name : `${farm}, ${name}`}, ${crop} on ${dates.full(plantOn)}`;
