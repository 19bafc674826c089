import { DayAmountsBlank } from '../question/DayAmountsBlank.tsx';
import type { PartProps } from './parts.ts';

/** What the field's own gauge caught and what was given to it. */
export function WeatherEntries({ record, change }: PartProps) {
  return (
    <div class="blank-grid">
      <DayAmountsBlank
        field="gauge"
        label="Your own rain gauge"
        amounts={record.gauge}
        mostMm={2000}
        remark="Takes the place of the station’s rain."
        commit={(gauge) => change({ gauge })}
      />
      <DayAmountsBlank
        field="irrigation"
        label="Irrigation"
        amounts={record.irrigation}
        mostMm={500}
        remark="Adds to the rain."
        commit={(irrigation) => change({ irrigation })}
      />
    </div>
  );
}
