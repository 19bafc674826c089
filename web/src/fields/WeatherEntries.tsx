import { GaugeBlank, IrrigationBlank } from '../question/waterBlanks.tsx';
import type { PartProps } from './parts.ts';

/** What the field's own gauge caught and what was given to it. */
export function WeatherEntries({ record, change }: PartProps) {
  return (
    <div class="blank-grid">
      <GaugeBlank amounts={record.gauge} commit={(gauge) => change({ gauge })} />
      <IrrigationBlank amounts={record.irrigation} commit={(irrigation) => change({ irrigation })} />
    </div>
  );
}
