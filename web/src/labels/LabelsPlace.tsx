import { decodedPart } from '../shell/decodedPart.ts';
import { useLocation } from '../shell/places.ts';
import { useUnits } from '../units/useUnits.ts';
import { LabelListPage } from './LabelListPage.tsx';
import { LabelPage } from './LabelPage.tsx';
import '../style/fields.css';

/** The user's own label entries: all of them, or one. */
export function LabelsPlace() {
  const { path } = useLocation();
  const units = useUnits();
  const id = decodedPart(path.split('/')[2] ?? '');
  return id === '' ? <LabelListPage units={units} /> : <LabelPage key={id} id={id} units={units} />;
}
