import type { ActiveRecord } from '../schema/activeRecord.ts';
import type { Active } from '../schema/catalogue.ts';
import type { PhResponse } from '../schema/phResponse.ts';
import { catalogueFault } from './parseTable.ts';

/** Days are kept to a tenth, as the sources give them. [1/d] */
const PER_DAY = 10;

const MEAN_CAUTION =
  'no source gives a typical half-life: the geometric mean of the shortest and the longest stands for it';

/**
 * An active as the program uses it: where no typical half-life is given, it is the geometric mean of the published
 * range, marked "computed" and told among the cautions; where no half-life is given at all, there is none.
 * @throws {SourceFailedError} CATALOGUE_FAULTY where the range has one end only
 */
export function completeActive(
  record: ActiveRecord,
  ph: PhResponse | null,
  place: { readonly file: string; readonly line: number },
): Active {
  const { fieldHalfLifeDays: life, provenance } = record;
  if (life === null) return { ...record, fieldHalfLifeDays: null, ph };
  if (life.typical !== null) return { ...record, fieldHalfLifeDays: { ...life, typical: life.typical }, ph };
  const { low, high } = life;
  if (low === null || high === null) {
    throw catalogueFault(
      place.file,
      place.line,
      'half_life_typical_days',
      'both ends of the range are needed',
    );
  }
  const sources = [...(provenance.halfLifeLow?.sources ?? []), ...(provenance.halfLifeHigh?.sources ?? [])];
  return {
    ...record,
    fieldHalfLifeDays: { typical: Math.round(Math.sqrt(low * high) * PER_DAY) / PER_DAY, low, high },
    provenance: { ...provenance, halfLifeTypical: { mark: 'computed', sources: [...new Set(sources)] } },
    cautions: [...record.cautions, MEAN_CAUTION],
    ph,
  };
}
