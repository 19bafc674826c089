import { MissingDataError } from '../errors.ts';
import type { FieldRecord } from '../schema/fieldRecord.ts';
import type { LabelEntry } from '../schema/labelEntry.ts';
import type { ApplicationRecord } from '../schema/restrictedUse.ts';
import type { Say } from './say.ts';

/** What to know about these records, in own words after 7 CFR 110.3. */
const NOTES = [
  'Federal rules of the United States ask for this record of every application of a restricted-use product, within 14 days, and for it to be kept for 2 years.',
  'Whoever applies for hire gives the customer a copy within 30 days. States and other countries may ask for more: their rules govern.',
  'Whether a product is restricted stands on its label; Drywake does not decide it.',
];

/**
 * The record of a restricted-use application, as far as it is filled in.
 * @param entry the user's own label entry that the treatment names, where it is kept
 * @throws {MissingDataError} TREATMENT_UNKNOWN
 */
export function applicationRecord(
  field: FieldRecord,
  treatmentId: string,
  entry: LabelEntry | null,
  say: Say,
): ApplicationRecord {
  const treatment = field.treatments.find(({ id }) => id === treatmentId);
  if (treatment === undefined) {
    const known = field.treatments.map(({ id }) => id);
    throw new MissingDataError('TREATMENT_UNKNOWN', `The field has no treatment "${treatmentId}".`, {
      hint: known.length > 0 ? `It has ${known.join(', ')}.` : 'No treatment of it is entered yet.',
      details: { field: 'treatment', known },
    });
  }
  const { record = {} } = treatment;
  const areaHa = treatment.areaHa ?? field.areaHa;
  const line = (label: string, value: string | null | undefined, required = true) => ({
    label,
    value: value === undefined || value === null || value.trim() === '' ? null : value,
    required,
  });
  const lines = [
    line('Product name', record.productName ?? entry?.name),
    line('Federal registration number', record.registrationNumber),
    line('Total amount of product applied', record.totalAmount),
    line('Location', record.location),
    line('Size of area treated', areaHa === null ? null : say.area(areaHa)),
    line('Crop, commodity, stored product or site', record.site),
    line('Date of application', say.dates.full(treatment.appliedOn)),
    line('Certified applicator', record.applicator),
    line('Certification number', record.certificateNumber),
    line('Time of application', record.time, false),
    line('Customer', record.customerName, false),
    line('Address of the customer', record.customerAddress, false),
  ];
  return {
    field: field.farm === '' ? field.name : `${field.farm}, ${field.name}`,
    treatmentId,
    lines,
    missing: lines.filter(({ required, value }) => required && value === null).map(({ label }) => label),
    notes: NOTES,
  };
}
