import type { FieldRecord } from '../api/contract.ts';
import { QUESTION_DEFAULTS } from '../question/defaults.ts';

/** A field of which nothing is known yet but its name. */
export const emptyField = (id: string, name: string, farm: string): FieldRecord => ({
  id,
  farm,
  name,
  country: QUESTION_DEFAULTS.country,
  areaHa: null,
  place: null,
  station: null,
  coverFraction: QUESTION_DEFAULTS.coverFraction,
  phNote: '',
  treatments: [],
  gauge: [],
  irrigation: [],
  tillage: [],
  plans: [],
  evidence: [],
  outcomes: [],
  note: '',
});

/** A treatment of which nothing is known yet but its date. */
export const emptyTreatment = (id: string, appliedOn: string): FieldRecord['treatments'][number] => ({
  id,
  appliedOn,
  rateFraction: QUESTION_DEFAULTS.rateFraction,
  overlapFactor: QUESTION_DEFAULTS.overlapFactor,
  canopyFraction: QUESTION_DEFAULTS.canopyFraction,
  intervals: [],
  zones: [],
});
