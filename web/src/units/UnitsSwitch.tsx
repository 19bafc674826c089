import { Switch } from '../shell/Switch.tsx';
import type { Units } from './units.ts';

const NAMES: Record<Units, string> = { us: 'US units', metric: 'Metric' };

/** Switches between inches and millimetres everywhere at once. */
export function UnitsSwitch({ units, onChange }: { units: Units; onChange: (units: Units) => void }) {
  return (
    <Switch legend="Units" choices={['us', 'metric']} chosen={units} choose={onChange} testId="units">
      {(name) => NAMES[name]}
    </Switch>
  );
}
