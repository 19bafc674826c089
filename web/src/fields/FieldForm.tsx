import { Part } from '../keep/Part.tsx';
import { EvidenceBlanks } from '../question/EvidenceBlanks.tsx';
import { SubjectOf } from '../question/subject.tsx';
import { today } from './nextPlan.ts';

import { Outcomes } from './Outcomes.tsx';
import { PlaceAndSoil } from './PlaceAndSoil.tsx';
import { Plans } from './Plans.tsx';
import type { PartProps } from './parts.ts';
import { Tillage } from './Tillage.tsx';
import { Treatments } from './Treatments.tsx';
import { WeatherEntries } from './WeatherEntries.tsx';

/** Everything that is known of a field, in parts. */
export function FieldForm(props: PartProps) {
  const { record, change, open } = props;
  const waits = (...fields: string[]) =>
    Object.keys(open.typed).some((typed) => fields.includes(typed.split('.')[0]));
  const { treatments, plans, gauge, irrigation, tillage, evidence, outcomes } = record;
  return (
    <SubjectOf of={record} set={change}>
      <form class="field-form" aria-label="The field" onSubmit={(event) => event.preventDefault()}>
        <Part
          title="Place and soil"
          startOpen={record.station === null || waits(...PLACE_FIELDS)}
          testId="part-place"
        >
          <PlaceAndSoil {...props} />
        </Part>
        <Part
          title="What was sprayed"
          count={treatments.length}
          startOpen={treatments.length === 0 || waits('treatments')}
          testId="part-treatments"
        >
          <Treatments {...props} />
        </Part>
        <Part
          title="Crops that may follow"
          count={plans.length}
          startOpen={plans.length === 0 || waits('plans')}
          testId="part-plans"
        >
          <Plans {...props} />
        </Part>
        <Part
          title="Gauge and irrigation"
          count={gauge.length + irrigation.length}
          startOpen={waits('gauge', 'irrigation')}
          testId="part-weather"
        >
          <WeatherEntries {...props} />
        </Part>
        <Part title="Tillage" count={tillage.length} startOpen={waits('tillage')} testId="part-tillage">
          <Tillage {...props} />
        </Part>
        <Part
          title="Soil tests and bioassays"
          count={evidence.length}
          startOpen={waits('evidence')}
          testId="part-evidence"
        >
          <EvidenceBlanks on={today()} />
        </Part>
        <Part
          title="What became of the crops"
          count={outcomes.length}
          startOpen={waits('outcomes')}
          testId="part-outcomes"
        >
          <Outcomes {...props} />
        </Part>
      </form>
    </SubjectOf>
  );
}

const PLACE_FIELDS = [
  'name',
  'farm',
  'areaHa',
  'place',
  'station',
  'sandPercent',
  'clayPercent',
  'organicMatterPercent',
  'coverFraction',
  'soilPh',
  'phNote',
  'note',
];
