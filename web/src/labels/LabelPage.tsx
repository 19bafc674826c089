import type { LabelEntry } from '../api/contract.ts';
import { KeptPage } from '../keep/KeptPage.tsx';
import type { Units } from '../units/units.ts';
import { LabelForm } from './LabelForm.tsx';

/** Words for the parts of an entry. */
const PART_NAMES = {
  name: 'Product',
  actives: 'Actives, rates in g/ha',
  intervals: 'Intervals',
  labelVersion: 'Version of the label',
  enteredOn: 'Read on',
  note: 'Remark',
};

/** One product as its label has it, to be changed. */
export function LabelPage({ id, units }: { id: string; units: Units }) {
  return (
    <KeptPage<LabelEntry>
      shelf="/api/labels"
      id={id}
      units={units}
      noun="label entry"
      list={{ path: '/labels', title: 'Your labels' }}
      names={PART_NAMES}
      lede={({ actives }) => actives.map(({ name }) => name).join(' + ')}
      removed={<p class="note">This entry is removed; “Bring the change back” brings it back.</p>}
      testIds={{ page: 'label-page', remove: 'remove-label' }}
    >
      {(form) => <LabelForm {...form} />}
    </KeptPage>
  );
}
