import { type Question, questionSchema } from './question.ts';

/** A column of a list of fields. */
export interface BatchColumn {
  /** Name in the head of the file. */
  readonly name: string;
  /** Field of the question that it sets; absent for what belongs to the list itself. */
  readonly field?: keyof Question;
  readonly number: boolean;
  readonly description: string;
  readonly needed: boolean;
  /** What the template writes. */
  readonly sample: string;
}

const column = (
  name: string,
  field: keyof Question,
  sample: string,
  kind: 'number' | 'text' = 'text',
  needed = false,
): BatchColumn => ({
  name,
  field,
  number: kind === 'number',
  needed,
  sample,
  description: questionSchema.shape[field].meta()?.description ?? '',
});

/** All columns that a list of fields may have; others are kept as they are. */
export const BATCH_COLUMNS: readonly BatchColumn[] = [
  {
    name: 'field',
    number: false,
    needed: false,
    sample: 'North quarter',
    description: 'Your name for the field',
  },
  {
    name: 'acres',
    number: true,
    needed: false,
    sample: '160',
    description: 'Area [acres]; or give hectares',
  },
  { name: 'hectares', number: true, needed: false, sample: '', description: 'Area [ha]; or give acres' },
  column('station', 'station', 'demo-invented', 'text', true),
  column('residual', 'residual', 'flumioxazin', 'text', true),
  column('crop', 'crop', 'lentil', 'text', true),
  column('applied_on', 'appliedOn', '2026-08-14', 'text', true),
  column('plant_on', 'plantOn', '2027-05-10', 'text', true),
  column('as_of', 'asOf', ''),
  column('soil_class', 'soilClass', 'loam'),
  column('sand_percent', 'sandPercent', '', 'number'),
  column('clay_percent', 'clayPercent', '', 'number'),
  column('organic_matter_percent', 'organicMatterPercent', '2', 'number'),
  column('soil_ph', 'soilPh', '', 'number'),
  column('cover_fraction', 'coverFraction', '0.6', 'number'),
  column('rate_fraction', 'rateFraction', '1', 'number'),
  column('overlap_factor', 'overlapFactor', '1', 'number'),
  column('canopy_fraction', 'canopyFraction', '0', 'number'),
  column('interval', 'interval', ''),
  column('label_entry', 'labelEntry', ''),
  column('half_life_days', 'halfLifeDays', '', 'number'),
  column('country', 'country', 'US'),
  column('odds_limit', 'oddsLimit', '0.1', 'number'),
  column('latitude_deg', 'latitudeDeg', '', 'number'),
];
