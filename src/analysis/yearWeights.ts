import { InvalidInputError } from '../errors.ts';
import { outlookWeights } from '../model/years/outlookWeights.ts';
import type { HistoricalYear } from './historicalYears.ts';
import type { StationClimate } from './stationClimate.ts';

/** A seasonal outlook: chances of the thirds [0-1] and the window they speak of [day numbers, last day included]. */
export interface OutlookQuestion {
  readonly below: number;
  readonly near: number;
  readonly above: number;
  readonly fromDay?: number;
  readonly toDay?: number;
}

/**
 * Weights of the years, in their order: all one without an outlook, else by each year's own rain over the
 * outlook's window, which by default runs from the first application to the day before planting.
 *
 * @throws {InvalidInputError} OUTLOOK_WINDOW where the window is empty or no year's record holds it
 */
export function yearWeights(
  { series }: StationClimate,
  years: readonly HistoricalYear[],
  plantOffset: number,
  firstDay: number,
  outlook?: OutlookQuestion,
): Float64Array {
  if (!outlook) return new Float64Array(years.length).fill(1);
  const from = outlook.fromDay === undefined ? 0 : outlook.fromDay - firstDay;
  const to = outlook.toDay === undefined ? plantOffset - 1 : outlook.toDay - firstDay;
  const held = years.every(({ start }) => start + from >= 0 && start + to < series.days);
  if (to < from || !held) {
    throw new InvalidInputError(
      'OUTLOOK_WINDOW',
      to < from
        ? 'The outlook window ends before it begins.'
        : 'The outlook window reaches beyond the record of the years used.',
      { hint: 'Give a window within a few months of the season asked about, first day first.' },
    );
  }
  const rainMm = years.map(({ start }) => {
    let sum = 0;
    for (let day = start + from; day <= start + to; day++) sum += series.rainMm[day];
    return sum;
  });
  return outlookWeights(rainMm, outlook);
}
