import type { DateStyle } from './dates.ts';
import { switchDates, useDates } from './useDates.ts';

const NAMES: Record<DateStyle, string> = { us: 'Month names', iso: 'ISO dates' };

/** Switches between dates in words and ISO dates everywhere at once. */
export function DatesSwitch() {
  const { style } = useDates();
  return (
    <fieldset class="switch">
      <legend class="unseen">Dates</legend>
      {(['us', 'iso'] as const).map((name) => (
        <button
          key={name}
          type="button"
          aria-pressed={style === name}
          data-testid={`dates-${name}`}
          onClick={() => switchDates(name)}
        >
          {NAMES[name]}
        </button>
      ))}
    </fieldset>
  );
}
