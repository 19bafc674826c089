import type { FieldRecord } from '../api/contract.ts';
import { KeptPage } from '../keep/KeptPage.tsx';
import { areaText, type Units } from '../units/units.ts';
import { FieldForm } from './FieldForm.tsx';
import { PlanAnswers } from './PlanAnswers.tsx';
import { PART_NAMES } from './parts.ts';

/** One field: how its next crops stand, and everything that is known of it, to be changed. */
export function FieldPage({ id, units }: { id: string; units: Units }) {
  return (
    <KeptPage<FieldRecord>
      shelf="/api/fields"
      id={id}
      units={units}
      noun="field"
      list={{ path: '/fields', title: 'All fields' }}
      names={PART_NAMES}
      lede={({ farm, areaHa }) =>
        [farm, areaHa === null ? '' : areaText(areaHa, units)].filter(Boolean).join(', ')
      }
      removed={
        <div class="note">
          <p class="note-title">This field is removed.</p>
          <p>“Bring the change back”, or a look under the removed fields of the list, brings it back.</p>
        </div>
      }
      testIds={{ page: 'field-page', remove: 'remove-field' }}
    >
      {({ kept, ...form }) => (
        <>
          <PlanAnswers id={id} kept={kept} units={units} />
          <FieldForm {...form} />
        </>
      )}
    </KeptPage>
  );
}
