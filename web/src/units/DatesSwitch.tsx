import { Switch } from '../shell/Switch.tsx';
import type { DateStyle } from './dates.ts';
import { switchDates, useDates } from './useDates.ts';

const NAMES: Record<DateStyle, string> = { us: 'Month names', iso: 'ISO dates' };

/** Switches between dates in words and ISO dates everywhere at once. */
export function DatesSwitch() {
  const { style } = useDates();
  return (
    <Switch legend="Dates" choices={['us', 'iso']} chosen={style} choose={switchDates} testId="dates">
      {(name) => NAMES[name]}
    </Switch>
  );
}
