import { TEMP_CALENDAR_MEAN, TEMP_INTERPOLATED } from '../../schema/codes.ts';
import { calendarMeans } from './calendarMeans.ts';
import { calendarSlots } from './calendarSlot.ts';

/** Longest gap that is bridged by a straight line. [d] */
const MAX_INTERPOLATED_DAYS = 7;

/**
 * Fills the gaps of one temperature column in place and marks what it did. [°C]
 *
 * Equation   gap up to 7 days with neighbours on both sides: straight line between them;
 *            any other gap: mean of that calendar date over the record
 * Valid      a record with at least one value on every calendar date that has a long gap; a date that
 *            never has a value stays NaN
 * Source     rule of our own (model decisions in DEVELOPERS.md)
 */
export function fillTemperature(tempC: Float64Array, firstDay: number, origin: Uint8Array): void {
  let calendar: { readonly slots: Uint16Array; readonly means: Float64Array } | undefined;
  for (let first = 0; first < tempC.length; first++) {
    if (!Number.isNaN(tempC[first])) continue;
    let next = first;
    while (next < tempC.length && Number.isNaN(tempC[next])) next++;
    const length = next - first;
    if (length <= MAX_INTERPOLATED_DAYS && first > 0 && next < tempC.length) {
      const before = tempC[first - 1];
      const step = (tempC[next] - before) / (length + 1);
      for (let k = 0; k < length; k++) {
        tempC[first + k] = before + step * (k + 1);
        origin[first + k] = Math.max(origin[first + k], TEMP_INTERPOLATED);
      }
    } else {
      calendar ??= calendarOf(tempC, firstDay);
      const { slots, means } = calendar;
      for (let day = first; day < next; day++) {
        tempC[day] = means[slots[day]];
        origin[day] = TEMP_CALENDAR_MEAN;
      }
    }
    first = next;
  }
}

/** Dates and their means: only a record with long gaps asks for them. */
function calendarOf(tempC: Float64Array, firstDay: number) {
  const slots = calendarSlots(firstDay, tempC.length);
  return { slots, means: calendarMeans(tempC, slots) };
}
