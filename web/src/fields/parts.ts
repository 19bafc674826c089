import type { FieldRecord } from '../api/contract.ts';
import type { KeptForm } from '../keep/KeptPage.tsx';

/** What every part of the field's form is given. */
export type PartProps = Omit<KeptForm<FieldRecord>, 'kept'>;

/** Words for the parts of a field. */
export const PART_NAMES: Readonly<Record<string, string>> = {
  farm: 'Farm',
  name: 'Name',
  country: 'Country',
  areaHa: 'Size',
  place: 'Place',
  station: 'Weather station',
  soilClass: 'Soil',
  sandPercent: 'Sand',
  clayPercent: 'Clay',
  organicMatterPercent: 'Organic matter',
  coverFraction: 'Ground covered',
  soilPh: 'Soil pH',
  phNote: 'Note on the pH',
  treatments: 'What was sprayed',
  gauge: 'Rain gauge',
  irrigation: 'Irrigation',
  tillage: 'Tillage',
  plans: 'Crops that may follow',
  evidence: 'Soil tests and bioassays',
  outcomes: 'What became of the crops',
  note: 'Remark',
};
