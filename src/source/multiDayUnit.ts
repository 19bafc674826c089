import type { UnitSystem } from '../schema/readOptions.ts';
import type { UnitEvidence } from './unitEvidence.ts';

/** How totals of several days are written in a file whose rain is in mm or inches. */
export interface MultiDayFinding {
  /** True where the totals stayed in tenths of mm. */
  readonly inTenths: boolean;
  /** What to say about it; null where there are none, or nothing to tell. */
  readonly note: string | null;
}

/** Whole numbers needed before their wholeness counts: by chance one total in ten is whole. */
const ENOUGH_WHOLE = 4;
/** A total of several days is some rainy days' rain; read in the wrong unit it is ten times that or more. */
const TOO_MANY_RAINY_DAYS = 4;

/**
 * Tells whether the multi-day totals of a file stayed in tenths of mm while its rain was turned into mm or inches, as
 * one public service does. The sizes decide, as its papers do not say: totals in mm or inches have decimals like the
 * rain, and amount to a few rainy days' rain.
 */
export function multiDayUnit(evidence: UnitEvidence, units: UnitSystem): MultiDayFinding {
  const totals = evidence.multiDay.filter(({ value }) => value > 0);
  if (units === 'tenths' || totals.length === 0) return { inTenths: false, note: null };
  const name = units === 'us' ? 'in' : 'mm';
  const withDecimals = totals.filter(({ text }) => text.includes('.')).length;
  if (withDecimals > 0) return { inTenths: false, note: null };
  const middle = median(totals.map(({ value }) => value));
  const rainyDay = evidence.rain.wet > 0 ? evidence.rain.wetSum / evidence.rain.wet : Number.NaN;
  const sizes = `all whole, in the middle ${middle} where a rainy day has ${rainyDay.toFixed(units === 'us' ? 2 : 1)} ${name}`;
  const many = `${totals.length} ${totals.length === 1 ? 'total' : 'totals'} of several days`;
  if (totals.length >= ENOUGH_WHOLE || middle >= TOO_MANY_RAINY_DAYS * rainyDay) {
    return { inTenths: true, note: `${many} read in tenths of mm although rain is in ${name}: ${sizes}` };
  }
  return { inTenths: false, note: `${many} read in ${name} like the rain: ${sizes}` };
}

function median(values: number[]): number {
  const sorted = values.sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
}
