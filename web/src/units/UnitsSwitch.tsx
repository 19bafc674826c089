import { Switch } from '../shell/Switch.tsx';
import type { Units } from './units.ts';

/** Switches between inches and millimetres everywhere at once. */
export function UnitsSwitch({ units, onChange }: { units: Units; onChange: (units: Units) => void }) {
  return (
    <Switch legend="Units" choices={['us', 'metric']} chosen={units} choose={onChange} testId="units">
      {(name) =>
        name === 'us' ? (
          <>
            US<span class="desk-words"> units</span>
          </>
        ) : (
          'Metric'
        )
      }
    </Switch>
  );
}
