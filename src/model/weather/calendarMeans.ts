import { LEAP_SLOT, SLOTS } from './calendarSlot.ts';

/**
 * Mean of the present values of each calendar date over the whole record. [unit of the values]
 * 29 February falls back on 28 February where it has no value of its own; a date without any value is NaN.
 *
 * @param values NaN where missing
 * @param slots calendar slot of each value
 */
export function calendarMeans(values: Float64Array, slots: Uint16Array): Float64Array {
  const means = windowMeans(values, slots, 0);
  if (Number.isNaN(means[LEAP_SLOT])) means[LEAP_SLOT] = means[LEAP_SLOT - 1];
  return means;
}

/**
 * Mean of all present values whose calendar date lies within `halfWidth` days of each calendar date,
 * over the whole record. [unit of the values]
 */
export function windowMeans(values: Float64Array, slots: Uint16Array, halfWidth: number): Float64Array {
  const sums = new Float64Array(SLOTS);
  const counts = new Float64Array(SLOTS);
  for (let i = 0; i < values.length; i++) {
    if (Number.isNaN(values[i])) continue;
    sums[slots[i]] += values[i];
    counts[slots[i]]++;
  }
  const means = new Float64Array(SLOTS);
  for (let slot = 0; slot < SLOTS; slot++) {
    let sum = 0;
    let count = 0;
    for (let offset = -halfWidth; offset <= halfWidth; offset++) {
      const near = (slot + offset + SLOTS) % SLOTS;
      sum += sums[near];
      count += counts[near];
    }
    means[slot] = count > 0 ? sum / count : Number.NaN;
  }
  return means;
}
