import type { Units } from './units.ts';

const NAMES: Record<Units, string> = { us: 'US units', metric: 'Metric' };

/** Switches between inches and millimetres everywhere at once. */
export function UnitsSwitch({ units, onChange }: { units: Units; onChange: (units: Units) => void }) {
  return (
    <fieldset class="switch">
      <legend class="unseen">Units</legend>
      {(['us', 'metric'] as const).map((name) => (
        <button
          key={name}
          type="button"
          aria-pressed={units === name}
          data-testid={`units-${name}`}
          onClick={() => onChange(name)}
        >
          {NAMES[name]}
        </button>
      ))}
    </fieldset>
  );
}
