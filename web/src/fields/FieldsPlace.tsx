import { useLocation } from '../shell/places.ts';
import { useUnits } from '../units/useUnits.ts';
import { FieldList } from './FieldList.tsx';
import { FieldPage } from './FieldPage.tsx';
import { FieldSheetPage } from './FieldSheetPage.tsx';
import { readFieldsPath } from './fieldsAddress.ts';
import { RecordPage } from './RecordPage.tsx';
import '../style/fields.css';

/** The fields: all of them, one of them, the record of one of its treatments, or the sheet of a planned crop. */
export function FieldsPlace() {
  const { path } = useLocation();
  const units = useUnits();
  const { field, treatment, sheet } = readFieldsPath(path);
  if (field === null) return <FieldList units={units} />;
  if (treatment !== null) return <RecordPage field={field} treatment={treatment} />;
  if (sheet !== null) return <FieldSheetPage field={field} plan={sheet} units={units} />;
  return <FieldPage key={field} id={field} units={units} />;
}
