import { MissingDataError } from '../errors.ts';
import type { FieldPlan, FieldRecord } from '../schema/fieldRecord.ts';
import type { AskedQuestion } from '../schema/question.ts';
import type { Sheet } from '../schema/sheet.ts';
import type { StationExtent } from '../schema/weather.ts';
import { type AnswerDeps, answerField } from './answerField.ts';
import { fieldQuestion } from './fieldQuestion.ts';
import { sayIn } from './say.ts';
import { sheetOf } from './sheet.ts';

/**
 * The page for the grower and the file, of one planned crop of a kept field, with farm, field and size on it.
 *
 * @param planId null where the field has one planned crop only
 * @throws {MissingDataError} PLAN_UNKNOWN
 * @throws {InvalidInputError} SHEET_UNCONFIRMED; and what {@link fieldQuestion} and {@link answerField} throw
 */
export async function fieldSheet(
  record: FieldRecord,
  planId: string | null,
  stations: readonly StationExtent[],
  deps: AnswerDeps,
): Promise<Sheet> {
  const question = plannedQuestion(record, planId, stations);
  return sheetOf(await answerField(question, deps, { season: true }), sayIn(deps.wording), record);
}

/**
 * The question about one planned crop of a kept field.
 * @param planId null where the field has one planned crop only
 * @throws {MissingDataError} PLAN_UNKNOWN; and what {@link fieldQuestion} throws
 */
export function plannedQuestion(
  record: FieldRecord,
  planId: string | null,
  stations: readonly StationExtent[],
): AskedQuestion {
  const station = stations.find(({ id }) => id === record.station) ?? null;
  return fieldQuestion(record, planOf(record, planId), station);
}

function planOf({ id, plans }: FieldRecord, planId: string | null): FieldPlan {
  const found = planId === null && plans.length === 1 ? plans[0] : plans.find((plan) => plan.id === planId);
  if (found !== undefined) return found;
  const known = plans.map((plan) => `${plan.id} (${plan.crop} on ${plan.plantOn})`);
  throw new MissingDataError(
    'PLAN_UNKNOWN',
    planId === null
      ? `The field "${id}" has ${plans.length} planned crops; a sheet is about one.`
      : `The field "${id}" has no planned crop "${planId}".`,
    {
      hint:
        known.length === 0 ? 'Enter the crop that is to follow, and when.' : `Name one: ${known.join(', ')}.`,
      details: { field: 'plan', known: plans.map((plan) => plan.id) },
    },
  );
}
