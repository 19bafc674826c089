import { Switch } from '../shell/Switch.tsx';
import { MEASURE_NAMES, MEASURES, type Measure } from './measures.ts';

/** What the map and the order of the table speak of. */
export function MeasureSwitch({ show, choose }: { show: Measure; choose: (measure: Measure) => void }) {
  return (
    <Switch
      legend="What the map shows"
      choices={MEASURES}
      chosen={show}
      choose={choose}
      look="measures"
      testId="show"
    >
      {(measure) => MEASURE_NAMES[measure]}
    </Switch>
  );
}
