import { quantile } from '../odds/quantile.ts';

/** Names of the rules by which a day's values look wrong. */
export const IMPLAUSIBLE_RULES = [
  'rain far above the rest',
  'same rain days running',
  'maximum below minimum',
  'temperature spike',
  'same temperatures days running',
] as const;
export type ImplausibleRule = (typeof IMPLAUSIBLE_RULES)[number];

/** A day whose values look wrong, by index in the record. */
export interface ImplausibleDay {
  readonly day: number;
  readonly rule: ImplausibleRule;
  /** What stands there: rain [mm] or temperature [°C]; for a run, its value; for swapped temperatures, the maximum. */
  readonly value: number;
  /** What it was held against, in the same unit; for a run, its length [d]. */
  readonly against: number;
}

/** Days needed before the 99.9th percentile of rain says anything. [d] */
const LEAST_RAIN_DAYS = 3650;
const RAIN_PERCENTILE = 0.999;
const RAIN_FACTOR = 3;
/** Equal falls of at least this much are looked at. [mm] */
const RUN_RAIN_MM = 5;
const RUN_RAIN_DAYS = 4;
const SPIKE_C = 25;
const RUN_TEMPERATURE_DAYS = 6;

/**
 * Days whose values look wrong, in order of date. Nothing is dropped for it: the user decides.
 *
 * Equation   rain > 3 × the record's 99.9th percentile (all days, type 7; at least 3650 days of rain)
 *            the same rain of 5 mm or more on 4 or more days running (its first day is named)
 *            daily maximum < daily minimum
 *            a maximum, or a minimum, 25 °C or more above, or below, both its neighbours' (spike)
 *            maximum and minimum both unchanged over 6 or more days running (its first day is named)
 * Symbols    columns NaN where missing [mm, °C]
 * Valid      raw daily values, before anything is filled
 * Source     rules of our own, after the kinds of checks that the public record's quality flags name
 * Checked    test/model/implausibleDays.test.ts
 */
export function implausibleDays(
  rainMm: Float64Array,
  maxTempC: Float64Array,
  minTempC: Float64Array,
): ImplausibleDay[] {
  const found: ImplausibleDay[] = [];
  const measured = rainMm.filter((rain) => !Number.isNaN(rain));
  const limitMm =
    measured.length >= LEAST_RAIN_DAYS
      ? RAIN_FACTOR * quantile(measured, RAIN_PERCENTILE)
      : Number.POSITIVE_INFINITY;
  for (let day = 0; day < rainMm.length; day++) {
    if (limitMm > 0 && rainMm[day] > limitMm)
      found.push({ day, rule: 'rain far above the rest', value: rainMm[day], against: limitMm });
    if (maxTempC[day] < minTempC[day])
      found.push({ day, rule: 'maximum below minimum', value: maxTempC[day], against: minTempC[day] });
    const spike = spikeAgainst(maxTempC, day) ?? spikeAgainst(minTempC, day);
    if (spike) found.push({ day, rule: 'temperature spike', ...spike });
  }
  const sameRain = (day: number) => rainMm[day] >= RUN_RAIN_MM && rainMm[day] === rainMm[day - 1];
  for (const { first, days } of runs(rainMm.length, sameRain, RUN_RAIN_DAYS))
    found.push({ day: first, rule: 'same rain days running', value: rainMm[first], against: days });
  const sameTemperatures = (day: number) =>
    maxTempC[day] === maxTempC[day - 1] && minTempC[day] === minTempC[day - 1];
  for (const { first, days } of runs(maxTempC.length, sameTemperatures, RUN_TEMPERATURE_DAYS))
    found.push({ day: first, rule: 'same temperatures days running', value: maxTempC[first], against: days });
  return found.sort((a, b) => a.day - b.day);
}

/** The spike of one temperature column on a day with the nearer neighbour's value, or null. */
function spikeAgainst(tempC: Float64Array, day: number): { value: number; against: number } | null {
  const above = tempC[day] - Math.max(tempC[day - 1], tempC[day + 1]);
  if (above >= SPIKE_C) return { value: tempC[day], against: tempC[day] - above };
  const below = Math.min(tempC[day - 1], tempC[day + 1]) - tempC[day];
  if (below >= SPIKE_C) return { value: tempC[day], against: tempC[day] + below };
  return null;
}

/** Runs of at least `least` days in which every day but the first is like the one before. */
function runs(
  days: number,
  likeBefore: (day: number) => boolean,
  least: number,
): { first: number; days: number }[] {
  const found: { first: number; days: number }[] = [];
  for (let first = 0; first < days; ) {
    let next = first + 1;
    while (next < days && likeBefore(next)) next++;
    if (next - first >= least) found.push({ first, days: next - first });
    first = next;
  }
  return found;
}
