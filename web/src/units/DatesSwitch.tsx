import { Switch } from '../shell/Switch.tsx';
import type { DateStyle } from './dates.ts';
import { switchDates, useDates } from './useDates.ts';

/** Names of the styles, and a date in each that stands for its name on a phone. */
const NAMES: Record<DateStyle, { readonly words: string; readonly sample: string }> = {
  us: { words: 'Month names', sample: 'May 10' },
  iso: { words: 'ISO dates', sample: '05-10' },
};

/** Switches between dates in words and ISO dates everywhere at once. */
export function DatesSwitch() {
  const { style } = useDates();
  return (
    <Switch legend="Dates" choices={['us', 'iso']} chosen={style} choose={switchDates} testId="dates">
      {(name) => (
        <>
          <span class="desk-words">{NAMES[name].words}</span>
          <span class="phone-words"> {NAMES[name].sample}</span>
        </>
      )}
    </Switch>
  );
}
