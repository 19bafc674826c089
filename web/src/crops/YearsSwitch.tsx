import { ThirdMark } from '../answer/ThirdMark.tsx';
import { YEARS, type Years } from './cropsAddress.ts';

const NAMES: Record<Years, string> = { dry: 'Dry years', all: 'All years', wet: 'Wet years' };

/** Which years the grid speaks of. */
export function YearsSwitch({ years, choose }: { years: Years; choose: (years: Years) => void }) {
  return (
    <fieldset class="years-switch">
      <legend class="unseen">Years</legend>
      {YEARS.map((name) => (
        <button
          key={name}
          type="button"
          aria-pressed={years === name}
          data-testid={`years-${name}`}
          onClick={() => choose(name)}
        >
          {name !== 'all' && <ThirdMark third={name} />}
          {NAMES[name]}
        </button>
      ))}
    </fieldset>
  );
}
