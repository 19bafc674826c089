import { hectaresFromAcres } from '../../../src/units.ts';
import type { Example, FieldRecord } from '../api/contract.ts';
import { freeId } from '../keep/freeId.ts';
import { emptyField, emptyTreatment } from './emptyField.ts';

/** The invented field of the worked question, as a field of its own. */
export function demoField({ question, farm }: Example, taken: readonly string[]): FieldRecord {
  const { appliedOn, residual, crop, plantOn } = question;
  return {
    ...emptyField(freeId(`${farm.name} ${farm.field}`, taken), farm.field, `${farm.name} (invented)`),
    areaHa: hectaresFromAcres(farm.acres),
    station: question.station,
    soilClass: question.soilClass,
    treatments: [{ ...emptyTreatment('after-harvest', appliedOn), residual }],
    plans: [{ id: freeId(crop, []), crop, plantOn, oddsLimit: question.oddsLimit ?? 0.1 }],
    note: `${farm.note}: for trying things out.`,
  };
}
