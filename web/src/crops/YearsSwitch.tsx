import { ThirdMark } from '../answer/ThirdMark.tsx';
import { Switch } from '../shell/Switch.tsx';
import { YEARS, type Years } from './cropsAddress.ts';

const NAMES: Record<Years, string> = { dry: 'Dry years', all: 'All years', wet: 'Wet years' };

/** Which years the grid speaks of. */
export function YearsSwitch({ years, choose }: { years: Years; choose: (years: Years) => void }) {
  return (
    <Switch legend="Years" choices={YEARS} chosen={years} choose={choose} look="years-switch" testId="years">
      {(name) => (
        <>
          {name !== 'all' && <ThirdMark third={name} />}
          {NAMES[name]}
        </>
      )}
    </Switch>
  );
}
