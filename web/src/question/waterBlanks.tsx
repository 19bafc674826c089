import { DayAmountsBlank } from './DayAmountsBlank.tsx';
import type { DayAmount } from './dayAmounts.ts';

interface WaterProps {
  readonly amounts: readonly DayAmount[];
  readonly commit: (amounts: DayAmount[]) => void;
}

/** What the field's own gauge caught. */
export function GaugeBlank(water: WaterProps) {
  return (
    <DayAmountsBlank {...water} field="gauge" mostMm={2000} remark="Takes the place of the station’s rain." />
  );
}

/** What was given to the field. */
export function IrrigationBlank(water: WaterProps) {
  return <DayAmountsBlank {...water} field="irrigation" mostMm={500} remark="Adds to the rain." />;
}
