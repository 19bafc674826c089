import type { RestrictedUse } from '../api/contract.ts';
import { TextBlank } from '../question/TextBlank.tsx';
import { Fold } from '../shell/Fold.tsx';
import { recordAddress } from './fieldsAddress.ts';

interface RecordBlanksProps {
  readonly field: string;
  readonly fieldId: string;
  readonly treatmentId: string;
  readonly record: RestrictedUse;
  readonly commit: (record: RestrictedUse) => void;
}

/** The blanks of the record, in the order in which it is printed. */
const LINES: readonly { key: keyof RestrictedUse; label: string; most: number; remark?: string }[] = [
  { key: 'productName', label: 'Product name as on the label', most: 120 },
  { key: 'registrationNumber', label: 'Federal registration number as on the label', most: 40 },
  {
    key: 'totalAmount',
    label: 'Total amount of product applied',
    most: 60,
    remark: 'With its unit, such as 3.5 gal.',
  },
  {
    key: 'location',
    label: 'Location',
    most: 300,
    remark: 'County, range, township and section, or a map system, or the legal description.',
  },
  { key: 'site', label: 'Crop, commodity, stored product or site', most: 120 },
  { key: 'applicator', label: 'Certified applicator', most: 120 },
  { key: 'certificateNumber', label: 'Certification number', most: 60 },
  { key: 'time', label: 'Time of application', most: 5, remark: 'On the clock of 24 hours, such as 07:30.' },
  { key: 'customerName', label: 'Customer, where applied for hire', most: 120 },
  { key: 'customerAddress', label: 'Address of the customer', most: 300 },
];

/** What a federal restricted-use record asks for beyond the treatment itself. */
export function RecordBlanks({ field, fieldId, treatmentId, record, commit }: RecordBlanksProps) {
  return (
    <div class="wide">
      <Fold title="Record of a restricted-use application">
        {() => (
          <>
            <p class="small">
              The United States ask for it after every application of a restricted-use product. Date and size
              come from the treatment.
            </p>
            <div class="blank-grid">
              {LINES.map(({ key, label, most, remark }) => (
                <TextBlank
                  key={key}
                  field={`${field}.${key}`}
                  label={label}
                  value={record[key]}
                  most={most}
                  remark={remark}
                  commit={(text) => commit({ ...record, [key]: text === '' ? undefined : text })}
                />
              ))}
            </div>
            <p class="do-row">
              <a href={recordAddress(fieldId, treatmentId)} data-testid="record-link">
                The record on one page, to print
              </a>
            </p>
          </>
        )}
      </Fold>
    </div>
  );
}
